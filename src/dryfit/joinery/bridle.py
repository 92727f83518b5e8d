"""Bridle joints: a slot in the end of one member over a tenon as wide as the other (TRADE B2)."""

from __future__ import annotations

from fractions import Fraction

from dryfit.diagnostics import Span
from dryfit.geometry.box import Box
from dryfit.joinery.cut import Cut, Placed, bounded, end_in, opened, slot_kind
from dryfit.joinery.proportions import usual_tenon_thickness
from dryfit.quantities import Display
from dryfit.quantities.units import INCH

OPEN_MORTISE = "open mortise"
"""The role and the kind of the slot."""
TRENCH = "bridle trench"


def least_bridle(display: Display) -> Fraction:
    """Return the least thickness of tenon and cheeks: 6 mm, 1/4 in (TRADE B2)."""
    return display.either(Fraction(6), INCH / 4)


def usual_bridle(wood: Fraction, cutters: tuple[Fraction, ...], display: Display) -> Fraction:
    """Return a third of what both members share, to the nearest cutter, 6 mm at least (B2)."""
    return max(usual_tenon_thickness(wood, cutters, display), least_bridle(display))


def slotted_first(guest: Placed, host: Placed, region: Box) -> tuple[Placed, Placed] | None:
    """Return the member with the slot, then the one with the tenon; None where neither ends.

    At a corner the slot is the host's: `rails into stiles` puts the tenons on the rails.  In a T
    it is that of the member that ends there, and goes over the one that runs through.
    """
    if end_in(host, region) is not None:
        return host, guest
    return (guest, host) if end_in(guest, region) is not None else None


def bridle(
    pair: tuple[Placed, Placed],
    region: Box,
    axis: int,
    thickness: Fraction,
    span: Span | None,
) -> tuple[Cut, ...]:
    """Return the slot, and what is cut from both faces of the other so that a tenon is left.

    `pair` is the slotted member and the one with the tenon, `axis` that along which the tenon is
    `thickness` mm thick, in the middle of what both share.
    """
    slotted, tenoned = pair
    end = end_in(slotted, region)
    assert end is not None
    low = (region.low[axis] + region.high[axis] - thickness) / 2
    tenon = bounded(region, axis, low, low + thickness)
    slot = Cut(
        slotted.name,
        tenon,
        OPEN_MORTISE,
        OPEN_MORTISE,
        slotted.axes[0],
        end,
        "slip",
        tenoned.part,
        span,
    )
    kind = slot_kind(tenoned, region)
    role = "tenon cheek" if kind == "end lap" else TRENCH
    sides = ((-1, region.low[axis], tenon.low[axis]), (1, tenon.high[axis], region.high[axis]))
    cheeks = tuple(
        Cut(
            tenoned.name,
            opened(bounded(region, axis, start, stop), tenoned.box, axis, side),
            kind,
            role,
            axis,
            side,
            "slip",
            slotted.part,
            span,
        )
        for side, start, stop in sides
    )
    return (slot, *cheeks)
