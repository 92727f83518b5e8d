"""Half laps: each part gives up half of the shared thickness (TRADE B1)."""

from __future__ import annotations

from fractions import Fraction

from dryfit.diagnostics import Span
from dryfit.geometry.box import Box
from dryfit.joinery.cut import Cut, Placed, bounded, opened, slot_kind


def half_lap(
    first: Placed, second: Placed, region: Box, axis: int, span: Span | None
) -> tuple[Cut, Cut]:
    """Return the two cuts of a lap that is deep along `axis`.

    Of two equally thick parts the first keeps its outer face, so it is cut from the inside and
    the second from the outside.  Of unequal ones the thicker is cut from the flush outer face to
    half the thinner's thickness, and the thinner from its back (TRADE B1.3): the depths add up
    to the thinner part's thickness.
    """
    thick, other = first.box.extent(axis), second.box.extent(axis)
    outward = first.outward[axis]
    first_side = outward if thick > other else -outward
    middle = (region.low[axis] + region.high[axis]) / 2
    return (
        _lap(first, second, region, (axis, first_side), middle, span),
        _lap(second, first, region, (axis, -first_side), middle, span),
    )


def _lap(
    placed: Placed,
    mate: Placed,
    region: Box,
    surface: tuple[int, int],
    middle: Fraction,
    span: Span | None,
) -> Cut:
    axis, side = surface
    half = (
        bounded(region, axis, region.low[axis], middle)
        if side < 0
        else bounded(region, axis, middle, region.high[axis])
    )
    box = opened(half, placed.box, axis, side)
    kind = slot_kind(placed, region)
    return Cut(placed.name, box, kind, "lap", axis, side, "knife", mate.part, span)
