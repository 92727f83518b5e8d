"""Units that only the outside world uses, converted by pint.

Importing pint takes longer than a whole check, so that callers import this module when they print.
"""

from __future__ import annotations

from fractions import Fraction
from functools import cache

from pint import UnitRegistry

from dryfit.resources import PACKAGE


def cubic_metres_and_board_feet(volume: Fraction) -> tuple[Fraction, Fraction]:
    """Return a volume in mm3 as exact cubic metres and exact board feet."""
    quantity = _units().Quantity(volume, "millimetre ** 3")
    cubic_metres: Fraction = quantity.to("metre ** 3").magnitude
    board_feet: Fraction = quantity.to("board_foot").magnitude
    return cubic_metres, board_feet


@cache
def _units() -> UnitRegistry[Fraction]:
    return UnitRegistry(
        str(PACKAGE / "quantities" / "timber_units.txt"), non_int_type=Fraction, cache_folder=None
    )
