"""Half laps: each part gives up half of the shared thickness (TRADE B1)."""

from __future__ import annotations

from fractions import Fraction

from dryfit.diagnostics import Span
from dryfit.geometry.box import Box
from dryfit.joinery.cut import Cut, Placed, bounded, opened, slot_kind


def half_lap(
    first: Placed,
    second: Placed,
    region: Box,
    axis: int,
    span: Span | None,
    depth: Fraction | None = None,
    *,
    shows: str | None = None,
) -> tuple[Cut, Cut]:
    """Return the two cuts of a lap that is deep along `axis`.

    `depth` is what the first part gives up, mm; None is half of the shared thickness, so that the
    two depths make the thinner part's thickness (TRADE B1.1, B1.3).  Of equally thick parts the
    first keeps its outer face, so it is cut from the inside and the second from the outside.  Of
    unequal ones the thicker is cut from the face that is flush and the thinner from its back.
    `shows` names the part whose outer face stays whole instead.
    """
    side = _first_side(first, second, axis, shows)
    half = region.extent(axis) / 2 if depth is None else min(depth, region.extent(axis))
    # The region that the first gives up lies at its cut side, the rest is the second's.
    parting = region.low[axis] + half if side < 0 else region.high[axis] - half
    return (
        _lap(first, second, region, (axis, side), parting, span),
        _lap(second, first, region, (axis, -side), parting, span),
    )


def _first_side(first: Placed, second: Placed, axis: int, shows: str | None) -> int:
    if shows is not None and shows == first.part:
        return -first.outward[axis]
    if shows is not None and shows == second.part:
        return second.outward[axis]
    thick, other = first.box.extent(axis), second.box.extent(axis)
    if thick == other:
        return -first.outward[axis]
    flush_low = first.box.low[axis] == second.box.low[axis]
    flush_high = first.box.high[axis] == second.box.high[axis]
    flush = -1 if flush_low else 1 if flush_high else first.outward[axis]
    return flush if thick > other else -flush


def _lap(
    placed: Placed,
    mate: Placed,
    region: Box,
    surface: tuple[int, int],
    parting: Fraction,
    span: Span | None,
) -> Cut:
    axis, side = surface
    given_up = (
        bounded(region, axis, region.low[axis], parting)
        if side < 0
        else bounded(region, axis, parting, region.high[axis])
    )
    box = opened(given_up, placed.box, axis, side)
    kind = slot_kind(placed, region)
    return Cut(placed.name, box, kind, "lap", axis, side, "knife", mate.part, span)
