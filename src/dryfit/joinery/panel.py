"""The gap of a floating panel: room in the groove for the wood to swell; mm."""

from __future__ import annotations

from fractions import Fraction

from dryfit.quantities import Display
from dryfit.wood import Moisture, Species, movement_each_side, species
from dryfit.wood import panel_gap as solid_panel_gap
from dryfit.wood import panel_width as solid_panel_width

_ALONG = Fraction(1)
_SHEET = Fraction(1, 2)
_HALF = Fraction(1, 2)
# The liveliest wood of the handbook's table, beech: the careful guess for an unknown one.
_LIVELIEST = Fraction(431, 100000)


def tangential(timber: str | None) -> tuple[Fraction, Species | None]:
    """Return the movement coefficient of a flat-sawn board of that timber, and its species."""
    wood = species(timber or "")
    return (wood.tangential if wood else _LIVELIEST), wood


def panel_gap(
    sight: Fraction,
    depth: Fraction,
    *,
    along_grain: bool,
    sheet: bool,
    timber: str | None,
    display: Display,
) -> tuple[Fraction, str | None]:
    """Return the gap at each edge of a panel, and the sentence to print about it.

    `sight` is the clear opening between the frame members and `depth` that of their grooves, mm.
    Across the grain half of the swelling to come and 1 mm (TRADE B9, G4), rounded up to 1/2 mm;
    along the grain 1 mm; sheet goods 1/2 mm (B9).
    """
    if sheet:
        return _SHEET, None
    if along_grain:
        return _ALONG, None
    coefficient, wood = tangential(timber)
    moisture = Moisture()
    width = solid_panel_width(sight, depth, coefficient, moisture)
    gap = _up(solid_panel_gap(width, coefficient, moisture))
    name = wood.name if wood else "the wood, taken as lively as beech,"
    swells = display.with_unit(width * coefficient * moisture.rise, fitted=True)
    return gap, (
        f"{display.with_unit(gap, fitted=True)} are left in each groove across the grain, since "
        f"{name} may swell by {swells} over the panel"
    )


def edge_movement(width: Fraction, timber: str | None) -> Fraction:
    """Return how far each edge of a solid top may move, rounded up to 1/2 mm (TRADE G3)."""
    coefficient, _ = tangential(timber)
    return _up(movement_each_side(width, coefficient))


def _up(length: Fraction) -> Fraction:
    return -(-length // _HALF) * _HALF
