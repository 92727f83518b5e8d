"""Rabbets that take the end or edge of another part, at the end or edge of their own (TRADE B8)."""

from __future__ import annotations

from fractions import Fraction

from dryfit.diagnostics import Span
from dryfit.geometry.box import Box
from dryfit.joinery.cut import Cut, Placed, bounded
from dryfit.quantities import Display


def usual_rabbet_depth(thickness: Fraction, display: Display) -> Fraction:
    """Return how far a part enters a rabbet in wood `thickness` mm thick: two thirds, rounded down.

    TRADE B8 (common practice, a half to two thirds): 12 in 18, which leaves a lip of 6.
    """
    return display.down(thickness * Fraction(2, 3))


def open_side(region: Box, host: Placed, axis: int) -> tuple[int, int] | None:
    """Return the end or edge of the host at which what enters along `axis` lies, or None.

    An end comes before an edge: across the end of a board a rabbet runs from edge to edge.
    """
    for across in host.axes:
        if across == axis or region.extent(across) >= host.box.extent(across):
            continue
        if region.low[across] == host.box.low[across]:
            return across, -1
        if region.high[across] == host.box.high[across]:
            return across, 1
    return None


def rabbet(
    guest: Placed, host: Placed, region: Box, surface: tuple[int, int], span: Span | None
) -> Cut:
    """Return the rabbet in the host that takes the guest: as wide as the guest is thick.

    `surface` is the host's face (axis, side) through which the guest enters.
    """
    axis, side = surface
    return Cut(host.name, region, "rabbet", "rabbet", axis, side, "knife", guest.part, span)


def usual_back_rabbet_depth(thickness: Fraction, display: Display) -> Fraction:
    """Return how deep a rabbet for a back is in wood `thickness` mm thick: half, rounded down.

    TRADE B8 (common practice, a third to a half).
    """
    return display.down(thickness / 2)


def nearer_side(inner: Box, outer: Box, axis: int) -> int:
    """Return the side (-1 or 1) on an axis at which two boxes end nearer to one another."""
    low, high = inner.low[axis] - outer.low[axis], outer.high[axis] - inner.high[axis]
    return -1 if low < high else 1


def back_rabbet(
    panel: Placed,
    host: Placed,
    region: Box,
    surface: tuple[int, int],
    gap: Fraction,
    span: Span | None,
) -> Cut:
    """Return the rabbet in which the edge of a panel lies: open to the outside, with its play.

    It is as wide as the panel is thick and lies in; `placing.groove_ends` says where it stops.
    """
    axis, side = surface
    low, high = region.low[axis], region.high[axis]
    box = bounded(region, axis, *((low - gap, high) if side > 0 else (low, high + gap)))
    normal = panel.axes[2]
    if nearer_side(panel.box, host.box, normal) > 0:
        box = bounded(box, normal, box.low[normal], host.box.high[normal])
    else:
        box = bounded(box, normal, host.box.low[normal], box.high[normal])
    return Cut(host.name, box, "rabbet", "rabbet", axis, side, "free", panel.part, span)
