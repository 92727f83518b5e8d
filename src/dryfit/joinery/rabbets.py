"""Rabbets that take the end or edge of another part, at the end or edge of their own (TRADE B8)."""

from __future__ import annotations

from fractions import Fraction

from dryfit.diagnostics import Span
from dryfit.geometry.box import Box
from dryfit.joinery.cut import Cut, Placed
from dryfit.quantities import Display
from dryfit.quantities.units import INCH


def usual_rabbet_depth(thickness: Fraction, display: Display) -> Fraction:
    """Return how far a part enters a rabbet in wood `thickness` mm thick: two thirds, rounded down.

    TRADE B8 (common practice, a half to two thirds): 12 in 18, which leaves a lip of 6.
    """
    step = Fraction(1) if display.unit == "mm" else INCH / 16
    return thickness * Fraction(2, 3) // step * step


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
