"""Cleats and battens across solid boards: how long they may be (TRADE B18)."""

from __future__ import annotations

from fractions import Fraction

from dryfit.quantities import Display
from dryfit.quantities.units import INCH
from dryfit.wood import Moving

_SHORTER = Fraction(10)
_CLEATS = frozenset({"cleat", "batten"})


def is_cleat(name: str) -> bool:
    """Return whether a part is called a cleat or batten; a rail under a top may well show."""
    return name.rsplit(" ", 1)[-1] in _CLEATS


def longest_cleat(wide: Fraction, wood: Moving) -> Fraction:
    """Return how long a cleat may be across a solid board `wide` mm wide.

    The board's width less its movement over the year and 10 mm (TRADE B18, common practice).
    """
    return wide - wood.over_the_year(wide) - _SHORTER


def short_of_board(wide: Fraction, wood: Moving, display: Display) -> Fraction:
    """Return how far a cleat ends within its board at each end, in whole steps of the ruler; mm."""
    step = display.either(Fraction(1, 2), INCH / 16)
    return -((longest_cleat(wide, wood) - wide) / 2 // step) * step
