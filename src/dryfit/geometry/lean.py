"""How a leaning member stands: its upright design box, sheared by a rational rise per run.

A splayed leg is designed upright, which is where its joints and contacts are found.  At one level
the design box is true; below it the leg stands out by so much for every mm that it goes down,
above it is in by as much.  Points on an edge of the design box stay on one straight edge, faces
stay flat, and nothing changes its height; so a drawing moves the corners and joins them as before.

What the shear does not keep is the section: the leg itself is a bar of its own width and thickness
that is tipped over as a whole, so that a level cut through it is larger, along the way it leans, by
`stretch`.  Figures that come out of the slope are irrational; each is rounded once, to 1/1000 mm.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction
from math import atan, degrees, isqrt

from dryfit.geometry.box import Box, Triple

_STEP = 1_000
"""Parts of a mm to which a figure from a slope is rounded."""
_FINER = 1_000_000
_ANGLES = 10_000
UP = 2


@dataclass(frozen=True, slots=True)
class Lean:
    """A lean off the plumb: `per_down` is how many mm along x and y for each mm down, exact.

    Positive is to the right, and to the back.  The design box is true at the height `level`.
    """

    per_down: tuple[Fraction, Fraction]
    level: Fraction

    def placed(self, point: Triple) -> Triple:
        """Return where a point of the design box is in the piece."""
        down = self.level - point[UP]
        across, back = self.per_down
        return point[0] + across * down, point[1] + back * down, point[UP]

    def corners(self, box: Box) -> tuple[Triple, ...]:
        """Return the eight corners of a box of the design, placed: x fastest, then y, then z."""
        return tuple(
            self.placed((x, y, z))
            for z in (box.low[2], box.high[2])
            for y in (box.low[1], box.high[1])
            for x in (box.low[0], box.high[0])
        )

    def ends(self, box: Box) -> tuple[Box, Box]:
        """Return the level boxes of the lower and the upper end of a box of the design, placed."""
        corners = self.corners(box)
        return Box(corners[0], corners[3]), Box(corners[4], corners[7])

    def foot(self, box: Box) -> Box:
        """Return a box of the design moved to where its lower end is placed."""
        x, y, _ = self.placed((box.high[0], box.high[1], box.low[UP]))
        return Box(self.placed(box.low), (x, y, box.high[UP]))

    def along(self, height: Fraction) -> Fraction:
        """Return how long the slope is over a height, to 1/1000 mm."""
        across, back = self.per_down
        return rounded_root(height * height * (1 + across * across + back * back))

    def stretch(self, size: Fraction) -> Fraction:
        """Return by how much a level cut is larger than the bar, along the way it leans; mm."""
        return self.along(size) - size


def steepest(rises: Iterable[Fraction]) -> Fraction:
    """Return the slope of what rises so much along each of two lines square to one another.

    In mm per mm, rounded to a millionth: the tangent of the resultant angle, with which a hole is
    bored along its sight line (common practice; the sum of two vectors).
    """
    return rounded_root(sum((rise * rise for rise in rises), Fraction(0)), _FINER)


def angle_of(slope: Fraction) -> Fraction:
    """Return the angle of a slope in degrees, rounded to 1/10,000, which no bevel shows."""
    return Fraction(round(degrees(atan(slope)) * _ANGLES), _ANGLES)


def rounded_root(square: Fraction, step: int = _STEP) -> Fraction:
    """Return the square root of a number of mm2 in mm, rounded to 1/1000 half up, or 1/`step`.

    ValueError below zero.  Worked in whole numbers, so that every machine rounds alike.
    """
    if square < 0:
        raise ValueError(square)
    twice = isqrt(square.numerator * 4 * step * step // square.denominator)
    return Fraction((twice + 1) // 2, step)
