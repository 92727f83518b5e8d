"""At which angles the sides of a regular polygon are mitred, upright or sloping.

All angles are degrees.  A mitre is told as a saw's scale tells it, from a square cut: 45 for the
four sides of a frame.  (Some tables give what is left to 90 instead, 60 for a hexagon.)
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from math import asin, atan, cos, degrees, radians, sin, tan

_STEP = 10_000
_UPRIGHT = Fraction(90)
LEAST_SIDES = 3


@dataclass(frozen=True, slots=True)
class CompoundMitre:
    """How a saw is turned and its blade tilted for sides that slope, in degrees."""

    mitre: Fraction
    tilt: Fraction


def polygon_mitre(sides: int) -> Fraction:
    """Return the mitre of a regular polygon exactly: half of what its corner turns, 180 / n.

    ValueError for fewer than three sides.  From first principles: the corners turn 360 together.
    """
    if sides < LEAST_SIDES:
        raise ValueError(sides)
    return Fraction(180, sides)


def interior_angle(sides: int) -> Fraction:
    """Return the angle inside a corner of a regular polygon exactly: two mitres short of 180."""
    return 180 - 2 * polygon_mitre(sides)


def compound_mitre(sides: int, slope: Fraction) -> CompoundMitre:
    """Return mitre and tilt for boards that lie flat on the table when they are cut.

    `slope` is the angle of the sides to the horizontal, 0 to 90: 90 for sides that stand upright,
    which then are cut square across and only tilted; 0 for sides that lie flat.  In between both
    angles are rounded to 1/10,000 degree, which no saw shows; ValueError outside.
    mitre = atan(tan(180/n) cos S), tilt = asin(sin(180/n) sin S): plane trigonometry of the edge
    in which two sloping boards meet (a public page gives a worked example, see tests/published).
    """
    half = polygon_mitre(sides)
    if not 0 <= slope <= _UPRIGHT:
        raise ValueError(slope)
    if slope == 0:
        return CompoundMitre(half, Fraction(0))
    if slope == _UPRIGHT:
        return CompoundMitre(Fraction(0), half)
    turn, rise = radians(float(half)), radians(float(slope))
    return CompoundMitre(
        _degrees(atan(tan(turn) * cos(rise))),
        _degrees(asin(sin(turn) * sin(rise))),
    )


def side_of_polygon(sides: int, across_flats: Fraction) -> Fraction:
    """Return how long a side is, in mm to 1/10,000, of a polygon so wide across its flats.

    Both sides of a polygon with an even number of sides are meant; it is twice as wide as from its
    middle to a side.
    """
    size = float(across_flats) * tan(radians(float(polygon_mitre(sides))))
    return Fraction(round(size * _STEP), _STEP)


def _degrees(angle: float) -> Fraction:
    # A float is good to 15 digits; so far behind the step every machine rounds alike.
    return Fraction(round(degrees(angle) * _STEP), _STEP)
