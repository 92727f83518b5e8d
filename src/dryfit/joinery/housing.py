"""Housings and grooves that receive a whole edge or end (TRADE B7, B9)."""

from __future__ import annotations

from fractions import Fraction

from dryfit.diagnostics import Span
from dryfit.geometry.box import Box
from dryfit.joinery.cut import Cut, Placed, bounded


def housing(
    guest: Placed, host: Placed, region: Box, surface: tuple[int, int], span: Span | None
) -> Cut:
    """Return the trench in the host that takes the guest's end; width = the guest's thickness.

    `surface` is the host's face (axis, side) through which the guest enters.
    """
    axis, side = surface
    along = host.axes[0]
    runs_across = region.extent(along) <= guest.box.extent(guest.axes[2])
    kind = "cross slot" if runs_across else "long slot"
    return Cut(host.name, region, kind, "housing", axis, side, "knife", guest.part, span)


def panel_groove(
    panel: Placed,
    host: Placed,
    region: Box,
    surface: tuple[int, int],
    gap: Fraction,
    span: Span | None,
) -> Cut:
    """Return the groove in a frame member: deeper than the panel's edge by the gap.

    Along the member it is as long as the panel's edge (`placing.groove_ends` says where it is
    stopped); the panel's thickness is the groove's width (TRADE B9).
    """
    axis, side = surface
    low, high = region.low[axis], region.high[axis]
    deep = (low - gap, high) if side > 0 else (low, high + gap)
    box = bounded(region, axis, *deep)
    return Cut(host.name, box, "long slot", "groove", axis, side, "free", panel.part, span)
