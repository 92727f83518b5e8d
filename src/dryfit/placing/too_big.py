"""What is too big for the opening that it is to stand in (TRADE H26, H31)."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.geometry.box import Box, spanning
from dryfit.piece.declared import Contact, DeclaredPart
from dryfit.placing.gaps import apart_in, gap_at, sides_said
from dryfit.placing.in_openings import DEPTH, Filling, fillings
from dryfit.placing.openings import hosts_of
from dryfit.placing.play import play_at
from dryfit.placing.positions import Face
from dryfit.placing.site import Site, both, whole

ZERO = Fraction(0)
_SIZES = ("long", "wide", "thick")
_WAYS = ("wide", "deep", "high")
_ACROSS = ("from side to side", "from front to back", "in height")


@dataclass(frozen=True, slots=True)
class _Space:
    """Where a part, or a row of `count` copies, is to go: between two faces, less its gaps."""

    part: DeclaredPart
    faces: tuple[Face, Face]
    count: int
    gaps: tuple[Fraction, ...]
    words: str

    @property
    def axis(self) -> int:
        return self.faces[0].axis


def report_too_big(site: Site, boxes: Mapping[str, Box]) -> None:
    """Report each part whose written size does not go where it is to stand with its gaps.

    In an opening, or between others without a joint.  Such a part pushes what stands round it
    asunder, and that must not be said of the overall size.  What reaches out of an opening to the
    front or the back is no concern here.  Findings: too-big-for-opening.
    """
    for part in site.parts():
        # What is inside of a pattern stands where that does, and not in the opening.
        for filling in fillings(site, part) if part.within is None else ():
            opening = site.opening(filling.opening)
            hosts = hosts_of(site, opening) if opening else ()
            around = [boxes[host.name] for host in hosts]
            for axis in (each for each in range(3) if each != DEPTH and filling.seats):
                count = len(filling.seats) if axis == filling.row else 1
                gaps = _gaps(site, filling, axis, count)
                words = f"into {filling.opening}"
                _report(site, _Space(part, both(filling.opening, axis), count, gaps, words), around)
    told: set[Contact] = set()
    parts = {part.name: part for part in site.parts()}
    for contact, low, high in site.gaps:
        # A pattern that was found room for has given its place to what is inside.
        own = parts.get(contact.guest.part)
        if (
            own is not None
            and contact.joint is None
            and contact.preposition == "between"
            and contact not in told
        ):
            told.add(contact)
            play = (play_at(own, contact, low.axis, side) for side in (-1, 1))
            gaps = tuple((each and site.amount(each)) or ZERO for each in play)
            space = _Space(own, (low, high), 1, gaps, f"between {low.owner} and {high.owner}")
            _report(site, space, [boxes[low.owner], boxes[high.owner]])


def _report(site: Site, space: _Space, around: Sequence[Box]) -> None:
    part, count, axis = space.part, space.count, space.axis
    size, room = part.sizes[part.axes.index(axis)], site.positions.distance(*space.faces)
    long = None if size is None else site.amount(size)
    if size is None or room is None or long is None:
        return
    room -= _forced_open(site, space, around)
    left = room - sum(space.gaps, ZERO)
    if count * long <= left or left <= 0:
        return
    dimension = _WAYS[axis] if part.instance else _SIZES[part.axes.index(axis)]
    shown, most = site.shown(long), site.shown(left / count)
    who = f"{count} {part.written}" if count > 1 else part.name
    goes = "do not go" if count > 1 else "does not go"
    gaps = [site.shown(gap) for gap in space.gaps]
    with_gaps = f", with gaps of {_listed(gaps)}" if any(space.gaps) else ""
    site.findings.append(
        Diagnostic(
            "too-big-for-opening",
            Severity.ERROR,
            f"{who}, {shown} {dimension}, {goes} {space.words}, where there is {site.shown(room)} "
            f"{_ACROSS[axis]}{with_gaps}: {most} is the most",
            size.span,
            rule="H26",
            figures={"size": long, "most": left / count, "opening": room},
            hints=(Hint(f"write `{most} {dimension}`, or leave it out: it is worked out"),),
        )
    )


def _listed(words: Sequence[str]) -> str:
    return " and ".join(each for each in (", ".join(words[:-1]), words[-1]) if each)


def _gaps(site: Site, filling: Filling, axis: int, count: int) -> tuple[Fraction, ...]:
    # In the order in which they lie; the lone gap of a row is that between its copies.
    part = filling.part
    everywhere = count == 1 or part.apart is not None
    said = sides_said(site, part, filling.seats[0], axis)
    low, high = (
        None if side in said else gap_at(part, axis, side, general=everywhere) for side in (-1, 1)
    )
    between = [apart_in(part, axis)] * (count - 1)
    amounts = (None if each is None else site.amount(each) for each in (low, *between, high))
    return tuple(each or ZERO for each in amounts)


def _forced_open(site: Site, space: _Space, around: Sequence[Box]) -> Fraction:
    """Return by how much the copies push what stands round them beyond the overall size."""
    axis, own = space.axis, {seat.name for seat in site.seats(space.part.name)}
    chain = site.positions.chain(*space.faces)
    total = site.positions.distance(whole(axis, -1), whole(axis, 1))
    if not around or total is None or not any(fact.start.owner in own for fact in chain):
        return ZERO
    box = spanning(tuple(around))
    return max(ZERO, -box.low[axis]) + max(ZERO, box.high[axis] - total)
