"""What is moved as one when it is fitted: a glued assembly, or the copies of a loose part."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace

from dryfit.geometry.box import Box, spanning
from dryfit.joinery.top_fixings import KINDS
from dryfit.kinds.joints import RUNNERS
from dryfit.operations.members import all_copies, outermost
from dryfit.operations.words import counted, listed
from dryfit.piece.declared import INSIDE, thing_of
from dryfit.placing.model import Assembly, Joint, Model

_STRONGEST_FIRST = (
    # What hangs on hinges is hung, whatever else it lies on.
    "hinges",
    "buttons",
    *KINDS,
    "screws",
    "shelf pins",
    "pins",
    "bolted",
    "pinned",
    "knock-down",
    "dry",
    "rest",
)


@dataclass(frozen=True, slots=True)
class LooseUnit:
    """One thing that goes to its place: its name, the words for it, and its copies.

    `onto` are the words for what it goes on, `joints` those that are closed; `kind` is what holds
    it (screws, buttons, pinned ...), or None where it stands free in an opening.  It is `under`
    another where it only goes with that, as the battens of a lid.
    """

    name: str
    words: str
    copies: tuple[str, ...]
    onto: str
    kind: str | None
    joints: tuple[Joint, ...] = ()
    glued: bool = False
    under: str | None = None

    @property
    def many(self) -> int:
        """Return how many things are laid: an assembly is one."""
        return 1 if self.glued else len(self.copies)


def box_of(copies: Iterable[str], model: Model) -> Box:
    """Return the box around copies."""
    return spanning(tuple(model.copy(name).box for name in copies))


def called(assembly: Assembly, model: Model) -> str:
    """Return the words for an assembly: one of a pattern is called as what the pattern makes."""
    _, inside, own = assembly.name.partition(INSIDE)
    if not inside:
        return _with_article(assembly.name)
    copies = all_copies(assembly, model)
    owner = thing_of(copies[0])
    whole = set(_made_by(owner, model)) == set(copies)
    return _with_article(owner) if whole else f"{_with_article(owner)}'s {own}"


def _with_article(name: str) -> str:
    # What has a number has a name: `tray 1`, not `the tray 1`.
    return name if name[-1:].isdigit() else f"the {name}"


def _made_by(owner: str, model: Model) -> tuple[str, ...]:
    """Return the copies that the use of a pattern brought."""
    begins = owner + INSIDE
    names = (copy.name for part in model.parts for copy in part.copies)
    return tuple(name for name in names if name.startswith(begins))


def fitted_units(model: Model) -> tuple[LooseUnit, ...]:
    """Return what the fittings of the model move, each once, the lower ones first."""
    closed: dict[str, list[tuple[str, Joint]]] = {}
    movers: dict[str, Assembly | None] = {}
    under: dict[str, str] = {}
    for fitting in model.fittings:
        for joint in (model.joint(name) for name in fitting.joints):
            if fitting.kind in KINDS and _only_under(joint, model):
                name = model.part_of(joint.host).name
                movers[name], under[name] = None, model.part_of(joint.guest).name
                closed.setdefault(name, []).append((fitting.kind, joint))
                continue
            mover = _mover(joint, fitting.kind, model)
            if mover is None and fitting.kind in {"buttons", *KINDS}:
                # What the buttons hold may be a member of a glued whole, as the bottom of a case.
                held = model.part(fitting.part).copies[0].name
                mover = _holding(held, joint.host, model)
                name = mover.name if mover else fitting.part
            else:
                name = mover.name if mover else model.part_of(joint.guest).name
            movers[name] = mover
            closed.setdefault(name, []).append((fitting.kind, joint))
    units = [
        replace(_unit(name, movers[name], rows, model), under=under.get(name))
        for name, rows in closed.items()
    ]
    return tuple(sorted(units, key=lambda unit: box_of(unit.copies, model).low[2]))


def _only_under(joint: Joint, model: Model) -> bool:
    """Return whether the host goes with its guest, as a batten with a lid: it holds nothing up.

    No copy of its part stands on the floor, is glued to anything, or touches another part.
    """
    part, top = model.part_of(joint.host), model.part_of(joint.guest)
    copies = {copy.name for copy in part.copies}
    floor = min(copy.box.low[2] for each in model.parts for copy in each.copies)
    meets = {
        model.part_of(other).name
        for each in model.joints
        for own, other in ((each.guest, each.host), (each.host, each.guest))
        if own in copies
    }
    held = {name for assembly in outermost(model) for name in all_copies(assembly, model)}
    stands = any(copy.box.low[2] == floor for copy in part.copies)
    return meets == {top.name} and not copies & held and not stands


def _holding(copy: str, other: str, model: Model) -> Assembly | None:
    """Return the outermost assembly that holds one copy and not the other."""
    for assembly in outermost(model):
        inside = all_copies(assembly, model)
        if copy in inside and other not in inside:
            return assembly
    return None


def _mover(joint: Joint, kind: str, model: Model) -> Assembly | None:
    """Return the assembly that is moved, or None for a loose part.

    Of two assemblies the upper one is laid on the lower one, whichever of them the line is about.
    """
    guest = _holding(joint.guest, joint.host, model)
    host = _holding(joint.host, joint.guest, model)
    if guest is None or host is None or kind not in {"screws", "rest"}:
        return guest
    own, other = (box_of(all_copies(each, model), model) for each in (guest, host))
    return host if own.low[2] < other.low[2] else guest


def _unit(
    name: str, mover: Assembly | None, rows: list[tuple[str, Joint]], model: Model
) -> LooseUnit:
    kind = min((kind for kind, _ in rows), key=_STRONGEST_FIRST.index)
    joints = tuple(joint for _, joint in rows)
    if mover is None:
        part = model.part(name)
        copies = tuple(copy.name for copy in part.copies)
        words = f"the {part.name}" if len(copies) == 1 else counted(part, len(copies))
        hosts = dict.fromkeys(model.part_of(joint.host).name for joint in joints)
        onto = listed(_part_words(host, model) for host in hosts)
        return LooseUnit(name, words, copies, onto, kind, joints)
    copies = all_copies(mover, model)
    others = dict.fromkeys(
        copy for joint in joints for copy in (joint.guest, joint.host) if copy not in copies
    )
    onto = listed(dict.fromkeys(_carrier(other, copies[0], model) for other in others))
    return LooseUnit(name, called(mover, model), copies, onto, kind, joints, glued=True)


def _carrier(copy: str, other: str, model: Model) -> str:
    assembly = _holding(copy, other, model)
    return called(assembly, model) if assembly else _part_words(model.part_of(copy).name, model)


def _part_words(name: str, model: Model) -> str:
    part = model.part(name)
    return f"the {part.name if len(part.copies) == 1 else part.written.lower()}"


def free_units(model: Model, fitted: tuple[LooseUnit, ...]) -> tuple[LooseUnit, ...]:
    """Return what stands free in an opening: doors, loose shelves, drawers, things of patterns.

    What was fitted to one of them before, such as the bottom of a drawer, goes in with it.
    """
    taken = {copy for unit in fitted for copy in unit.copies}
    found: dict[str, LooseUnit] = {}
    for unit in (*_in_openings(model), *_on_runners(model)):
        left = tuple(copy for copy in unit.copies if copy not in taken)
        if left and _within_the_rest(unit, model):
            found.setdefault(unit.name, replace(unit, copies=left))
    return tuple(sorted(found.values(), key=lambda unit: box_of(unit.copies, model).low[2]))


def _in_openings(model: Model) -> Iterator[LooseUnit]:
    for part in (each for each in model.parts if each.opening):
        opening = f"the {part.opening}"
        copies = tuple(copy.name for copy in part.copies)
        owners = dict.fromkeys(thing_of(name) for name in copies)
        if INSIDE in copies[0]:
            for owner in owners:
                yield _as_one(owner, _with_article(owner), _made_by(owner, model), opening)
            continue
        held = [each for each in outermost(model) if set(copies) & set(all_copies(each, model))]
        for each in held:
            name, whole = each.name, all_copies(each, model)
            yield _as_one(name, called(each, model), whole, opening)
        if not held:
            words = f"the {part.name}" if len(copies) == 1 else f"the {counted(part, len(copies))}"
            yield LooseUnit(part.name, words, copies, opening, None)


def _on_runners(model: Model) -> Iterator[LooseUnit]:
    """Yield the drawers that run on wooden runners, whether or not they stand in an opening."""
    for joint in (each for each in model.joints if each.kind in RUNNERS):
        held = _holding(joint.host, joint.guest, model)
        if held is not None and not any(model.part_of(c).opening for c in all_copies(held, model)):
            yield _as_one(held.name, called(held, model), all_copies(held, model), "its place")


def _as_one(name: str, words: str, copies: tuple[str, ...], opening: str) -> LooseUnit:
    return LooseUnit(name, words, copies, opening, None, glued=True)


def _within_the_rest(unit: LooseUnit, model: Model) -> bool:
    """Return whether a unit lies inside what the rest takes up: else it is what is glued there."""
    own = set(unit.copies)
    rest = [c.name for part in model.parts for c in part.copies if c.name not in own]
    if not rest:
        return False
    return box_of(rest, model).contains(box_of(unit.copies, model))
