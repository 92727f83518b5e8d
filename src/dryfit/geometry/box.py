"""Axis-parallel boxes in exact millimetres."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

AXIS_NAMES = ("x", "y", "z")
Triple = tuple[Fraction, Fraction, Fraction]


@dataclass(frozen=True, slots=True)
class Box:
    """A closed box between two corners in the piece frame; mm.

    x runs left to right, y front to back, z up; the origin is the front left floor corner of the
    overall box.
    """

    low: Triple
    high: Triple

    def extent(self, axis: int) -> Fraction:
        """Return the size along axis 0, 1 or 2."""
        return self.high[axis] - self.low[axis]

    def volume(self) -> Fraction:
        """Return the volume in mm3."""
        return self.extent(0) * self.extent(1) * self.extent(2)

    def overlap(self, other: Box) -> Box | None:
        """Return the common box with a volume, or None."""
        lows, highs = list[Fraction](), list[Fraction]()
        # Of many pairs most lie apart along the first axis already.
        for axis in range(3):
            low, high = max(self.low[axis], other.low[axis]), min(self.high[axis], other.high[axis])
            if low >= high:
                return None
            lows.append(low)
            highs.append(high)
        return Box((lows[0], lows[1], lows[2]), (highs[0], highs[1], highs[2]))

    def contact(self, other: Box) -> tuple[int, Box] | None:
        """Return (axis, flat box) where the two touch face to face with an area, or None."""
        low, high = self._bounds_with(other)
        flat = [axis for axis in range(3) if low[axis] == high[axis]]
        if len(flat) == 1 and all(low[axis] <= high[axis] for axis in range(3)):
            return flat[0], Box(low, high)
        return None

    def contains(self, other: Box) -> bool:
        """Return whether the other box lies wholly inside or on the faces of this one."""
        return all(
            self.low[axis] <= other.low[axis] and other.high[axis] <= self.high[axis]
            for axis in range(3)
        )

    def _bounds_with(self, other: Box) -> tuple[Triple, Triple]:
        low = tuple(max(self.low[axis], other.low[axis]) for axis in range(3))
        high = tuple(min(self.high[axis], other.high[axis]) for axis in range(3))
        return (low[0], low[1], low[2]), (high[0], high[1], high[2])


def spanning(boxes: tuple[Box, ...]) -> Box:
    """Return the smallest box around one or more boxes."""
    low = tuple(min(box.low[axis] for box in boxes) for axis in range(3))
    high = tuple(max(box.high[axis] for box in boxes) for axis in range(3))
    return Box((low[0], low[1], low[2]), (high[0], high[1], high[2]))
