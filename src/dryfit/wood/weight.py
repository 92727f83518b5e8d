"""What wood weighs: density from specific gravity and moisture, and weights as they are said.

Volumes in exact mm3, densities in kg/m3, weights in exact kg.
"""

from __future__ import annotations

from fractions import Fraction

from dryfit.quantities.units import POUND
from dryfit.wood.sheets import sheet_goods
from dryfit.wood.species import species

_CUBIC_MM_IN_CUBIC_M = 10**9
_LIGHT = 20
"""Below so many kg weights are shown to half a kilogram, from there to a whole one; ours.  Boards
of one wood differ by a tenth, so that more digits would lie."""


def density(specific_gravity: Fraction, moisture_percent: Fraction) -> Fraction:
    """Return kg/m3 of wood that holds so much moisture.

    *Wood Handbook* FPL-GTR-190 chapter 4 (read second hand): 1000 G (1 + M/100), where G is the
    ovendry mass over the volume at that moisture.  The tables' G are for 12 %; what the volume
    changes down to 6 % is less than 2 %, and is left out.
    """
    return 1000 * specific_gravity * (1 + moisture_percent / 100)


def density_of(timber: str, moisture_percent: Fraction) -> Fraction | None:
    """Return kg/m3 of the wood or the sheet goods of that name, None where no table tells it."""
    wood = species(timber)
    if wood is not None:
        gravity = wood.specific_gravity
        return None if gravity is None else density(gravity, moisture_percent)
    sheet = sheet_goods(timber)
    return None if sheet is None else sheet.density


def stiffness_of(timber: str) -> Fraction | None:
    """Return the modulus of elasticity along the grain in GPa, None where no table tells it."""
    wood = species(timber)
    if wood is not None:
        return wood.stiffness
    sheet = sheet_goods(timber)
    return None if sheet is None else sheet.stiffness


def weight(volume: Fraction, kilograms_in_cubic_metre: Fraction) -> Fraction:
    """Return kg of a volume in mm3."""
    return volume * kilograms_in_cubic_metre / _CUBIC_MM_IN_CUBIC_M


def weight_words(kilograms: Fraction, unit: str) -> str:
    """Return a weight as one says it, in pounds where lengths are in inches (unit ``in``)."""
    if unit == "in":
        return f"{max(1, _rounded(kilograms / POUND))} lb"
    if kilograms >= _LIGHT:
        return f"{_rounded(kilograms)} kg"
    halves = max(1, _rounded(2 * kilograms))
    return f"{halves // 2}{'.5' if halves % 2 else ''} kg"


def _rounded(value: Fraction) -> int:
    return (2 * value.numerator + value.denominator) // (2 * value.denominator)
