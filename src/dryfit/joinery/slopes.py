"""Slopes of sloping cuts as exact fractions, never less steep than they are."""

from __future__ import annotations

from fractions import Fraction
from math import pi, tan

DIAGONAL = Fraction(99, 70)
"""The diagonal of a square of side 1, too long by 5 in 100,000: a box that is worked out with it
surely holds the cut."""

_STEP = 10_000


def rise(degrees: Fraction) -> Fraction:
    """Return the tangent of an angle under 90 degrees, rounded up to 1/10,000.

    A float is good to 15 digits; so far behind the step that every machine rounds alike.
    """
    steps = round(tan(float(degrees) * pi / 180) * _STEP * 1000)
    return Fraction(-(-steps // 1000), _STEP)
