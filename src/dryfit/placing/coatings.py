"""What is coated together, with what, and what stays bare (TRADE D5, D6)."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from fractions import Fraction

from dryfit.diagnostics import Assumption
from dryfit.piece.declared import FinishWords, Host, SurfaceWords
from dryfit.placing.model import Assembly, Coating, Joint, Part
from dryfit.placing.site import Site
from dryfit.placing.stages import copies_inside

_BROAD = frozenset({"inside", "outside", "inner", "outer", "front", "back", "top", "bottom"})


@dataclass(slots=True)
class _Board:
    """The parts, what they are glued into, and which copies have their finish so far."""

    site: Site
    parts: Sequence[Part]
    joints: Sequence[Joint]
    assemblies: Sequence[Assembly]
    inside: Mapping[str, frozenset[str]]
    early: Mapping[str, str]
    done: set[str] = field(default_factory=set)
    partly: dict[str, list[SurfaceWords]] = field(default_factory=dict)
    masked: dict[str, list[str]] = field(default_factory=dict)


def build_coatings(
    site: Site,
    parts: Sequence[Part],
    joints: Sequence[Joint],
    assemblies: Sequence[Assembly],
) -> tuple[Coating, ...]:
    """Return what is finished as one, in the order of the notes, what no line names last.

    A line that names parts goes before one that names a glue-up, and both before the finish of
    all the rest, of which wished-for parts come first.  Empty when the notes name no finish.
    """
    declared = site.declared
    board = _Board(site, parts, joints, assemblies, copies_inside(assemblies), _early(site))
    _note_bare(board)
    _note_runners(board)
    _note_bearing(board)
    named = [finish for finish in declared.finishes if finish.subjects]
    coatings: list[Coating] = []
    for finish in sorted(named, key=lambda finish: _rank(board, finish)):
        coatings += _named(board, finish)
    whole = next((finish for finish in declared.finishes if not finish.subjects), None)
    if whole is not None:
        rest = tuple(_rest(board, whole))
        coatings += rest
        _say_rest(board, whole, rest)
    return tuple(coatings)


def _early(site: Site) -> dict[str, str]:
    return {
        wish.first.subject: wish.then.subject
        for wish in site.declared.wishes
        if wish.first.verb == "finish"
        and wish.first.subject
        and wish.then.verb == "glue up"
        and wish.then.subject
    }


def _rank(board: _Board, finish: FinishWords) -> int:
    # Single surfaces first, then parts, then whole glue-ups: what is said in more detail wins.
    stages = {assembly.stage for assembly in board.assemblies}
    if finish.surfaces:
        return 0
    return 2 if any(host.part in stages for host in finish.subjects) else 1


def _note_bare(board: _Board) -> None:
    for bare in board.site.declared.bare:
        for host in bare.subjects:
            copies = [copy for _, own in _subjects(board, host) for copy in own]
            if bare.verb == "no" and not bare.surfaces:
                board.done.update(copies)
            elif bare.verb == "no":
                for copy in copies:
                    board.partly.setdefault(copy, []).extend(bare.surfaces)
            if bare.verb == "mask":
                _note_masked(board, host, copies, bare.surfaces)


def _note_runners(board: _Board) -> None:
    """Leave runners bare that no line finishes: a film sticks, wax is all they get (D10, B21)."""
    declared = board.site.declared
    named = {host.part for finish in declared.finishes for host in finish.subjects}
    guests = {joint.guest for joint in board.joints if joint.kind == "runner"}
    for part in board.parts if declared.finishes else ():
        copies = {copy.name for copy in part.copies} & guests
        if not copies or copies <= board.done or part.name in named:
            continue
        board.done.update(copies)
        board.site.assume_line(
            f"no finish goes on the {part.written}: they are waxed, the last of all",
            part.spans[0],
            f"no finish on {part.written.lower()}",
        )


def _note_bearing(board: _Board) -> None:
    """Leave the top of a runner bare on which a drawer stands: it is waxed (B21.3)."""
    declared = board.site.declared
    named = {host.part for finish in declared.finishes for host in finish.subjects}
    guests = {joint.guest for joint in board.joints if joint.kind == "bottom runner"}
    for part in board.parts if declared.finishes else ():
        copies = [copy.name for copy in part.copies if copy.name in guests]
        if not copies or part.name in named or set(copies) <= board.done:
            continue
        top = SurfaceWords(("top",), "face", every=False, span=part.spans[0])
        for copy in copies:
            board.partly.setdefault(copy, []).append(top)
        board.site.assume_line(
            f"no finish goes on the top face of the {part.written}: it is waxed, the last of all",
            part.spans[0],
            f"finish {part.written.lower()} with hard wax oil",
        )


def _note_masked(
    board: _Board, host: Host, copies: Sequence[str], surfaces: Sequence[SurfaceWords]
) -> None:
    mates = tuple(_carried_by(board, copies)) if any(s.noun == "seat" for s in surfaces) else ()
    if mates:
        # The seat of a leg is where it sits: on the underside of what it carries.
        several = {part.name: part.written for part in board.parts if len(copies) > 1}
        sit = f"{several[host.part]} sit" if host.part in several else f"{host.part} sits"
        for mate in mates:
            board.masked.setdefault(mate, []).append(f"where the {sit}")
        return
    for copy in copies:
        board.masked.setdefault(copy, []).append(_masked_words(host, surfaces))


def _carried_by(board: _Board, copies: Sequence[str]) -> Iterator[str]:
    """Yield the copies that lie against these without going into them."""
    for joint in board.joints:
        if any(joint.region.extent(axis) == 0 for axis in range(3)):
            pair = (joint.guest, joint.host)
            yield from (mate for own, mate in (pair, pair[::-1]) if own in copies)


def _masked_words(host: Host, surfaces: Iterable[SurfaceWords]) -> str:
    words = said(surfaces)
    return f"{words} of the {host.part}" if words else host.part


def _subjects(board: _Board, host: Host) -> list[tuple[str, tuple[str, ...]]]:
    """Return the names under which a part or a glue-up is coated, each with its copies."""
    for part in board.parts:
        if part.name == host.part:
            wanted = set(host.places)
            copies = tuple(copy.name for copy in part.copies if wanted <= set(copy.places))
            return [(" ".join((*host.places, part.name)), copies)]
    return [
        (assembly.name, tuple(sorted(board.inside[assembly.name])))
        for assembly in board.assemblies
        if assembly.stage == host.part
    ]


def _named(board: _Board, finish: FinishWords) -> Iterator[Coating]:
    for host in finish.subjects:
        for subject, own in _subjects(board, host):
            copies = tuple(copy for copy in own if copy not in board.done)
            if not copies:
                continue
            stage = board.early.get(host.part)
            yield _coating(board, finish, subject, copies, stage)
            if finish.surfaces:
                for copy in copies:
                    board.partly.setdefault(copy, []).extend(finish.surfaces)
            else:
                board.done.update(copies)


def _rest(board: _Board, finish: FinishWords) -> Iterator[Coating]:
    by_name = {part.name: part for part in board.parts}
    for name, stage in board.early.items():
        part = by_name.get(name)
        if part is not None:
            yield from _loose(board, finish, part, stage)
    for assembly in board.assemblies:
        if any(assembly.name in other.of for other in board.assemblies):
            continue
        copies = tuple(n for n in sorted(board.inside[assembly.name]) if n not in board.done)
        if copies:
            yield _coating(board, finish, assembly.name, copies, None)
            board.done.update(copies)
    for part in board.parts:
        if not part.made:
            yield from _loose(board, finish, part, None)


def _loose(board: _Board, finish: FinishWords, part: Part, stage: str | None) -> Iterator[Coating]:
    copies = tuple(copy.name for copy in part.copies if copy.name not in board.done)
    if copies:
        yield _coating(board, finish, part.name, copies, stage)
        board.done.update(copies)


def _coating(
    board: _Board,
    finish: FinishWords,
    subject: str,
    copies: tuple[str, ...],
    before: str | None,
) -> Coating:
    own = set(copies)
    later = _glued_later(board, own, before)
    masks: tuple[str, ...] = ()
    if before is not None:
        shut = {name for a in board.assemblies if a.name not in later for name in a.joints}
        masks = tuple(
            joint.id
            for joint in board.joints
            if joint.glued and {joint.guest, joint.host} & own and joint.id not in shut
        )
    spared = [words for copy in copies for words in board.masked.get(copy, ())]
    if not finish.surfaces:
        spared += _spared(board, subject, copies)
    return Coating(
        subject=subject,
        copies=copies,
        area=sum((_area(board, copy, finish.surfaces) for copy in copies), Fraction(0)),
        masks=masks,
        before=before,
        span=finish.span,
        products=finish.products,
        surfaces=said(finish.surfaces),
        spared=tuple(dict.fromkeys(spared)),
        glued_later=later,
    )


def _glued_later(board: _Board, own: set[str], before: str | None) -> tuple[str, ...]:
    """Return the glue-ups with these copies that come after coats which come `before` one.

    They are that one, what takes it in, and what the notes want after it; any other takes the
    copies before they are coated, since its own glue would have to hold on the coat.
    """
    wanted = [each for each in board.assemblies if before in {each.name, each.stage}]
    stages = {
        each.stage
        for each in board.assemblies
        if any(board.inside[one.name] <= board.inside[each.name] for one in wanted)
    }
    waiting = {
        wish.then.subject
        for wish in board.site.declared.wishes
        if wish.first.verb == wish.then.verb == "glue up" and wish.first.subject in stages
    }
    measured = {
        copy.name
        for part in board.parts
        for each in part.measures
        if each.stage in stages
        for copy in part.copies
    }
    return tuple(
        each.name
        for each in board.assemblies
        if board.inside[each.name] & own
        and (each.stage in stages | waiting or board.inside[each.name] & measured)
    )


def _spared(board: _Board, subject: str, copies: tuple[str, ...]) -> Iterator[str]:
    """Yield what stays bare: surfaces with a finish of their own, and where tenons stay dry."""
    part_of = {copy.name: part for part in board.parts for copy in part.copies}
    own = set(copies)

    def whose(words: str, part: Part) -> str:
        if subject.endswith(part.name) and len({part_of[name].name for name in copies}) == 1:
            return words
        named = part.name if len(part.copies) == 1 else part.written.lower()
        return f"{words} of the {named}"

    for copy in copies:
        for each in board.partly.get(copy, ()):
            if words := said((each,)):
                yield whose(words, part_of[copy])
    for joint in board.joints:
        if joint.tenon is not None and joint.tenon.floats and {joint.guest, joint.host} <= own:
            # Its other end is glued: the tenon is in its mortise for good, and no brush gets there.
            continue
        if joint.tenon is not None and not joint.glued:
            guest = part_of[joint.guest]
            if joint.guest in copies:
                yield whose("the tenons", guest)
            if joint.host in copies:
                yield f"the mortises for the {guest.name}"


def _area(board: _Board, name: str, surfaces: Sequence[SurfaceWords]) -> Fraction:
    part = next(p for p in board.parts if any(copy.name == name for copy in p.copies))
    whole = _surface(part)
    if surfaces:
        return min(whole, sum((_area_of(part, each) for each in surfaces), Fraction(0)))
    other = sum((_area_of(part, each) for each in board.partly.get(name, ())), Fraction(0))
    return max(Fraction(0), whole - other)


def _area_of(part: Part, surface: SurfaceWords) -> Fraction:
    """Return the area that words for a surface speak of, near enough for paint and minutes."""
    if surface.noun == "edge":
        return 2 * part.length * part.thickness if surface.every else part.length * part.thickness
    if surface.noun == "end":
        return part.width * part.thickness * (2 if surface.every else 1)
    broad = part.length * part.width
    return broad if _BROAD & set(surface.words) and not surface.every else 2 * broad


def _surface(part: Part) -> Fraction:
    length, width, thickness = part.length, part.width, part.thickness
    return 2 * (length * width + length * thickness + width * thickness)


def said(surfaces: Iterable[SurfaceWords]) -> str:
    """Return surfaces as a maker says them: ``the inside``, ``the top edges``; empty for all."""
    spoken = []
    for surface in surfaces:
        noun = surface.noun or ""
        if noun and surface.every:
            noun += "s"
        words = " ".join(filter(None, (*surface.words, noun)))
        spoken.append(f"{'all ' if surface.every and not surface.words else 'the '}{words}")
    return " and ".join(dict.fromkeys(spoken))


def _say_rest(board: _Board, finish: FinishWords, rest: Sequence[Coating]) -> None:
    # With one finish for everything there is nothing to tell apart.
    if len(board.site.declared.finishes) == 1 and not board.site.declared.bare:
        return
    products = " and ".join(words.product for words in finish.products)
    got = ", ".join(coating.subject for coating in rest) or "nothing"
    text = f"{products} goes on what no other line names: {got}"
    board.site.assumptions.append(Assumption(text, finish.span, None))
