"""The room that a drawer needs in its case (TRADE B21.3, G6); lengths in mm, common practice."""

from __future__ import annotations

from fractions import Fraction

from dryfit.quantities import Display
from dryfit.quantities.units import INCH
from dryfit.wood import Moving

ABOVE = Fraction(3, 2)
BEHIND = Fraction(6)
BESIDE = Fraction(1, 2)
_TENTH = Fraction(1, 10)


def usual_beside(display: Display) -> Fraction:
    """Return the usual gap at either side of a drawer: 1 mm, 1/32 in (C5.5)."""
    return display.either(Fraction(1), INCH / 32)


def room_above(height: Fraction, wood: Moving) -> Fraction:
    """Return the room over a drawer: 1.5 mm and what its sides still swell, up to a tenth of a mm.

    `height` is the solid wood across the grain (from now to the damp season).
    """
    return ABOVE + -(-wood.swells(height) // _TENTH) * _TENTH
