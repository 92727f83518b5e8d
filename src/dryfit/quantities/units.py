"""The unit words of the notes and of the shop file, each with its exact size."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from dryfit.quantities.kinds import ANGLE, LENGTH, TIME, Kind


@dataclass(frozen=True, slots=True)
class Unit:
    """One unit: its kind and its size in millimetres, minutes or degrees."""

    kind: Kind
    size: Fraction


# 1 in = 25.4 mm exactly: international yard and pound agreement of 1959 (from memory),
# repeated in every public conversion table.
INCH = Fraction(254, 10)

POUND = Fraction(45359237, 100000000)
"""One pound in kg: the same agreement (from memory)."""

_MILLIMETRE = Unit(LENGTH, Fraction(1))
_CENTIMETRE = Unit(LENGTH, Fraction(10))
_METRE = Unit(LENGTH, Fraction(1000))
_INCH = Unit(LENGTH, INCH)
_FOOT = Unit(LENGTH, INCH * 12)
_MINUTE = Unit(TIME, Fraction(1))
_HOUR = Unit(TIME, Fraction(60))
_DAY = Unit(TIME, Fraction(1440))
_SECOND = Unit(TIME, Fraction(1, 60))
_DEGREE = Unit(ANGLE, Fraction(1))

UNITS: dict[str, Unit] = {
    "mm": _MILLIMETRE,
    "millimetre": _MILLIMETRE,
    "millimetres": _MILLIMETRE,
    "millimeter": _MILLIMETRE,
    "millimeters": _MILLIMETRE,
    "cm": _CENTIMETRE,
    "centimetre": _CENTIMETRE,
    "centimetres": _CENTIMETRE,
    "centimeter": _CENTIMETRE,
    "centimeters": _CENTIMETRE,
    "m": _METRE,
    "metre": _METRE,
    "metres": _METRE,
    "meter": _METRE,
    "meters": _METRE,
    "in": _INCH,
    "inch": _INCH,
    "inches": _INCH,
    '"': _INCH,
    "''": _INCH,
    "ft": _FOOT,
    "foot": _FOOT,
    "feet": _FOOT,
    "'": _FOOT,
    "s": _SECOND,
    "sec": _SECOND,
    "second": _SECOND,
    "seconds": _SECOND,
    "min": _MINUTE,
    "mins": _MINUTE,
    "minute": _MINUTE,
    "minutes": _MINUTE,
    "h": _HOUR,
    "hr": _HOUR,
    "hrs": _HOUR,
    "hour": _HOUR,
    "hours": _HOUR,
    "d": _DAY,
    "day": _DAY,
    "days": _DAY,
    "deg": _DEGREE,
    "degree": _DEGREE,
    "degrees": _DEGREE,
    "°": _DEGREE,
}
