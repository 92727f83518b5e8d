"""What is too big for the opening that it is to stand in."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from fractions import Fraction

from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.geometry.box import Box, spanning
from dryfit.piece.declared import Amount
from dryfit.placing.gaps import apart_in, gap_at, sides_said
from dryfit.placing.in_openings import DEPTH, Filling, fillings
from dryfit.placing.openings import hosts_of
from dryfit.placing.site import Site, both, whole

ZERO = Fraction(0)
_SIZES = ("long", "wide", "thick")
_WAYS = ("wide", "deep", "high")


def report_too_big(site: Site, boxes: Mapping[str, Box]) -> None:
    """Report each part whose written size does not go into its opening with its gaps.

    Such a part pushes what stands round it asunder, and that must not be said of the overall size.
    What reaches out to the front or the back is no concern here.  Findings: too-big-for-opening.
    """
    # What is inside of a pattern stands where that does, and not in the opening.
    for part in (each for each in site.parts() if each.within is None):
        for filling in fillings(site, part):
            for axis in (each for each in range(3) if each != DEPTH):
                size = part.sizes[part.axes.index(axis)]
                if size is not None and filling.seats:
                    _report(site, filling, axis, size, boxes)


def _report(
    site: Site, filling: Filling, axis: int, size: Amount, boxes: Mapping[str, Box]
) -> None:
    part, opening = filling.part, filling.opening
    count = len(filling.seats) if axis == filling.row else 1
    room, long = site.positions.distance(*both(opening, axis)), site.amount(size)
    gaps = _gaps(site, filling, axis, count)
    if room is None or long is None:
        return
    room -= _forced_open(site, filling, axis, boxes)
    left = room - sum(gaps, ZERO)
    if count * long <= left or left <= 0:
        return
    dimension = _WAYS[axis] if part.instance else _SIZES[part.axes.index(axis)]
    shown, most = site.shown(long), site.shown(left / count)
    who = f"{count} {part.written}" if count > 1 else part.name
    goes = "do not go" if count > 1 else "does not go"
    with_gaps = f", with gaps of {_listed([site.shown(gap) for gap in gaps])}" if any(gaps) else ""
    site.findings.append(
        Diagnostic(
            "too-big-for-opening",
            Severity.ERROR,
            f"{who}, {shown} {dimension}, {goes} into {opening}, which is {site.shown(room)} "
            f"{_WAYS[axis]}{with_gaps}: {most} is the most",
            size.span,
            rule="H26",
            figures={"size": long, "most": left / count, "opening": room},
            hints=(Hint(f"write `{most} {dimension}`, or leave it out: it is worked out"),),
        )
    )


def _listed(words: Sequence[str]) -> str:
    return " and ".join(each for each in (", ".join(words[:-1]), words[-1]) if each)


def _gaps(site: Site, filling: Filling, axis: int, count: int) -> list[Fraction]:
    # In the order in which they lie; the lone gap of a row is that between its copies.
    part = filling.part
    everywhere = count == 1 or part.apart is not None
    said = sides_said(site, part, filling.seats[0], axis)
    low, high = (
        None if side in said else gap_at(part, axis, side, general=everywhere) for side in (-1, 1)
    )
    between = [apart_in(part, axis)] * (count - 1)
    amounts = (None if each is None else site.amount(each) for each in (low, *between, high))
    return [each or ZERO for each in amounts]


def _forced_open(site: Site, filling: Filling, axis: int, boxes: Mapping[str, Box]) -> Fraction:
    """Return by how much the copies push what bounds their opening beyond the overall size."""
    own = {seat.name for seat in filling.seats}
    chain = site.positions.chain(*both(filling.opening, axis))
    total = site.positions.distance(whole(axis, -1), whole(axis, 1))
    opening = site.opening(filling.opening)
    if opening is None or total is None or not any(fact.start.owner in own for fact in chain):
        return ZERO
    around = spanning(tuple(boxes[host.name] for host in hosts_of(site, opening)))
    return max(ZERO, -around.low[axis]) + max(ZERO, around.high[axis] - total)
