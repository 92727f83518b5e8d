"""The gap of a floating panel: room in the groove for the wood to swell; mm."""

from __future__ import annotations

from fractions import Fraction

from dryfit.quantities import Display
from dryfit.wood import Moving
from dryfit.wood import panel_gap as solid_panel_gap
from dryfit.wood import panel_width as solid_panel_width

_ALONG = Fraction(1)
_SHEET = Fraction(1, 2)
_HALF = Fraction(1, 2)


def panel_gap(
    sight: Fraction,
    depth: Fraction,
    *,
    along_grain: bool,
    wood: Moving | None,
    display: Display,
) -> tuple[Fraction, str | None]:
    """Return the gap at each edge of a panel, and the sentence to print about it.

    `sight` is the clear opening between the frame members and `depth` that of their grooves, mm.
    Across the grain half of the swelling to come and 1 mm (TRADE B9, G4), rounded up to 1/2 mm;
    along the grain 1 mm; sheet goods, which are of no `wood`, 1/2 mm (B9).
    """
    if along_grain:
        return (_ALONG if wood else _SHEET), None
    if wood is None:
        return _SHEET, None
    width = solid_panel_width(sight, depth, wood)
    gap = _up(solid_panel_gap(width, wood))
    swells = wood.swells(width)
    why = f"since {wood.name} may swell by {display.movement(swells)} over the panel"
    if not swells:
        why = "though the wood is damper now than it will be where the piece stands"
    return (
        gap,
        f"{display.with_unit(gap, fitted=True)} are left in each groove across the grain, {why}",
    )


def edge_movement(width: Fraction, wood: Moving) -> Fraction:
    """Return how far each edge of a solid top may move, rounded up to 1/2 mm (TRADE G3)."""
    return _up(wood.over_the_year(width) / 2)


def _up(length: Fraction) -> Fraction:
    return -(-length // _HALF) * _HALF
