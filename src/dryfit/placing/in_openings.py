"""What stands in an opening: it fills it less its gaps, or lies in it with room to either side."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from functools import partial
from itertools import pairwise

from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.piece.declared import Amount, Contact, DeclaredPart
from dryfit.placing.gaps import apart_in, gap_at, is_sized, sides_said, state_gap
from dryfit.placing.in_rabbets import lies_in_rabbet
from dryfit.placing.opening_rows import row_axis
from dryfit.placing.positions import Face, Reason
from dryfit.placing.relations import Equal, Relation, centred
from dryfit.placing.seats import Seat, counted
from dryfit.placing.site import Site, both
from dryfit.placing.subjects import verb
from dryfit.placing.usual_gaps import list_usual_gaps, usual_apart, usual_gap

ZERO, ONE = Fraction(0), Fraction(1)
DEPTH = 1
WORDS = ("across", "front to back", "up and down")
WAYS = ("from side to side", "from front to back", "in height")

Pair = tuple[Face, Face]


@dataclass(frozen=True, slots=True)
class Filling:
    """The copies of a part in one opening; those of a row stand along `row`, in that order."""

    part: DeclaredPart
    opening: str
    seats: tuple[Seat, ...]
    row: int | None

    def bounds(self, axis: int) -> Pair:
        """Return the two faces of the opening on an axis."""
        return both(self.opening, axis)


def fillings(site: Site, part: DeclaredPart) -> Iterator[Filling]:
    """Yield the copies of a part by the openings that its line names, as many in each."""
    for contact in site.contacts(part.name, "in"):
        spaces = [host.part for host in contact.hosts if site.opening(host.part)]
        seats = site.guests(contact)
        each = len(seats) // len(spaces) if spaces else 0
        for index, space in enumerate(spaces):
            own = seats[index * each : (index + 1) * each]
            row = row_axis(part, own) if own else None
            ordered = own if row is None else sorted(own, key=lambda seat: seat.side(row))
            yield Filling(part, space, tuple(ordered), row)


def state_in_opening(site: Site, part: DeclaredPart) -> None:
    """Tell how the copies of a part stand in the openings that its line names.

    Findings: copies-and-hosts.
    """
    for contact in site.contacts(part.name, "in"):
        if part.count % len(contact.hosts or (1,)):
            _report_uneven(site, part, contact)
    for filling in fillings(site, part):
        if lies_in_rabbet(site, part, filling.opening, filling.seats):
            continue
        filled = [
            axis
            for axis in range(3)
            if (_state_row if axis == filling.row else _state_sides)(site, filling, axis)
        ]
        _list_without_gap(site, filling, filled)


def _report_uneven(site: Site, part: DeclaredPart, contact: Contact) -> None:
    openings = " and ".join(host.part for host in contact.hosts)
    many = len(contact.hosts)
    site.findings.append(
        Diagnostic(
            "copies-and-hosts",
            Severity.ERROR,
            f"{part.count} {part.written} in {openings}, but there are {many} of those",
            contact.span,
            rule="H27",
            hints=(
                Hint(f"write {counted(many, part.name)}, or a line for the {part.written} in each"),
            ),
        )
    )


def _state_sides(site: Site, filling: Filling, axis: int) -> bool:
    """Tell how far copies stand from both ends; return whether they fill it without a word."""
    part, sized = filling.part, is_sized(filling.part, axis)
    for seat in filling.seats:
        said = sides_said(site, part, seat, axis)
        for side in (-1, 1):
            gap = gap_at(part, axis, side, general=not sized)
            if gap is None and not sized and side not in said:
                gap = usual_gap(site, part, axis, side)
            if side not in said and not (gap is None and sized):
                pair = Face(filling.opening, axis, side), Face(seat.name, axis, side)
                state_gap(site, part, pair if side < 0 else pair[::-1], gap)
    if sized or gap_at(part, axis, 0, general=True) is not None:
        return False
    return not list_usual_gaps(site, part, axis)


def _state_row(site: Site, filling: Filling, axis: int) -> bool:
    """Tell the gaps of a row, as `_state_sides` does of a lone copy."""
    part, sized = filling.part, is_sized(filling.part, axis)
    faces = [both(seat.name, axis) for seat in filling.seats]
    between = [(one[1], other[0]) for one, other in pairwise(faces)]
    low, high = filling.bounds(axis)
    outer = ((low, faces[0][0]), (faces[-1][1], high))
    apart = apart_in(part, axis)
    if apart is None and sized:
        _state_equal_gaps(site, filling, between, outer)
        return False
    if apart is None and part.spread is None:
        apart = usual_apart(site, part, axis)
    for pair in between:
        state_gap(site, part, pair, apart, between=True)
    _list_apart(site, filling, apart)
    ends = [_end_gap(part, axis, side, apart) for side in (-1, 1)]
    if sized and ends == [None, None]:
        _state_row_centred(site, filling, outer)
        return False
    for side, pair, gap in zip((-1, 1), outer, ends, strict=True):
        if gap is not None or not sized:
            usual = None if sized or gap is not None else usual_gap(site, part, axis, side)
            state_gap(site, part, pair, gap if usual is None else usual)
    return not sized and None in ends and not list_usual_gaps(site, part, axis)


def _end_gap(part: DeclaredPart, axis: int, side: int, apart: Amount | None) -> Amount | None:
    # A lone gap of what has a size is that between the copies, and the ends are left over.
    everywhere = not is_sized(part, axis) or part.apart is not None
    written = gap_at(part, axis, side, general=everywhere)
    ends = part.spread.ends if part.spread else None
    if ends is None or apart is None:
        return written
    factor = {"same": ONE, "no": ZERO, "half": Fraction(1, 2)}[ends]
    return apart.times(factor)


def _state_equal_gaps(
    site: Site, filling: Filling, between: Sequence[Pair], outer: tuple[Pair, Pair]
) -> None:
    part = filling.part
    spread = part.spread
    reason = Reason(
        "spread",
        f"equal gap of {part.name}",
        f"the {len(filling.seats)} {part.written} stand at equal gaps in {filling.opening}",
        spread.span if spread else part.span,
        assumed=spread is None,
    )
    ends = (spread.ends if spread else None) or "same"
    if ends == "same":
        site.relate(Equal((outer[0], *between, outer[1]), reason))
        return
    site.relate(Equal(tuple(between), reason))
    for end in outer:
        if ends == "no":
            site.state(*end, ZERO, reason)
        else:
            site.relate(_half(end, between[0], reason))


def _half(end: Pair, whole: Pair, reason: Reason) -> Relation:
    two = 2 * ONE
    terms = ((two, end[1]), (-two, end[0]), (-ONE, whole[1]), (ONE, whole[0]))
    return Relation(terms, ZERO, reason)


def _state_row_centred(site: Site, filling: Filling, outer: tuple[Pair, Pair]) -> None:
    words = f"the {filling.part.written} stand in the middle of {filling.opening}"
    site.relate(Equal(outer, _centred_reason(filling, words)))
    axis = outer[0][0].axis
    site.assume(f"{words} {WAYS[axis]}", filling.part.span, partial(_gap_phrase, site, *outer[0]))


def _centred_reason(filling: Filling, words: str) -> Reason:
    return Reason("assumed", f"centred in {filling.opening}", words, assumed=True)


def _gap_phrase(site: Site, start: Face, end: Face) -> str | None:
    gap = site.positions.distance(start, end)
    return None if gap is None else f"gap {site.shown(abs(gap))} {WORDS[start.axis]}"


def lies_in_opening(site: Site, part: DeclaredPart) -> bool:
    """Assume that what has a size lies at the front of its opening, and midway the other ways."""
    news = False
    for filling in fillings(site, part):
        for axis in range(3):
            if axis == filling.row or not is_sized(part, axis):
                continue
            said = [_say_lies(site, filling, seat, axis) for seat in filling.seats]
            if any(said):
                _list_lies(site, filling, axis)
                news = True
    return news


def _say_lies(site: Site, filling: Filling, seat: Seat, axis: int) -> bool:
    outer, own = filling.bounds(axis), both(seat.name, axis)
    # What lies in a rabbet is told from one face of the opening before the other has its place.
    settled = any(site.positions.distance(face, own[0]) is not None for face in outer)
    if settled or sides_said(site, filling.part, seat, axis) or site.known(seat, axis, -1):
        return False
    if axis == DEPTH:
        words = f"{seat.name} lies at the front of {filling.opening}"
        reason = Reason("assumed", f"at the front of {filling.opening}", words, assumed=True)
        return site.positions.add(outer[0], own[0], ZERO, reason)
    words = f"{seat.name} lies midway in {filling.opening}"
    relation = centred(own, outer, _centred_reason(filling, words))
    if relation in site.equations.equals:
        return False
    site.relate(relation)
    return True


def _list_lies(site: Site, filling: Filling, axis: int) -> None:
    part, opening = filling.part, filling.opening
    lies = verb(part, "lies", "lie")
    if axis == DEPTH:
        text, phrase = f"{lies} at the front of {opening}", f"0 from front of {opening}"
        site.assume(text, part.span, phrase)
        return
    start, end = Face(opening, axis, -1), Face(filling.seats[0].name, axis, -1)
    text = f"{lies} midway in {opening} {WAYS[axis]}"
    site.assume(text, part.span, partial(_gap_phrase, site, start, end))


def _list_without_gap(site: Site, filling: Filling, axes: Sequence[int]) -> None:
    part = filling.part
    if not axes:
        return
    ways = " and ".join(WAYS[axis] for axis in axes)
    text = f"{verb(part, 'fills', 'fill')} {filling.opening} {ways}, with no gap"
    phrase = f"gap {', '.join(f'0 {WORDS[axis]}' for axis in axes)}" if part.gaps else "gap 0"
    site.assume(text, part.span, phrase)


def _list_apart(site: Site, filling: Filling, apart: Amount | None) -> None:
    part = filling.part
    if part.apart is not None or part.spread is not None:
        return
    said = site.shown(ZERO) if apart is None else site.said(apart)
    site.assume(f"the {part.written} stand {said} apart", part.span, f"{said} between")
