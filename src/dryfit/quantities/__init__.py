"""Exact lengths, times and angles: their kinds, how they are read and how they are shown.

A length is a `fractions.Fraction` of millimetres, an angle a Fraction of degrees, a duration in a
note a Fraction of minutes.  Nothing is rounded before it is shown, and only `shown` rounds.
"""

from dryfit.quantities.display import Display
from dryfit.quantities.kinds import ANGLE, AREA, LENGTH, NUMBER, TIME, KindError, Quantity
from dryfit.quantities.units import UNITS, Unit

__all__ = [
    "ANGLE",
    "AREA",
    "LENGTH",
    "NUMBER",
    "TIME",
    "UNITS",
    "Display",
    "KindError",
    "Quantity",
    "Unit",
]
