"""Upright rectangles on paper; mm, x to the right and y down."""

from __future__ import annotations

from dataclasses import dataclass

Point = tuple[float, float]
Segment = tuple[Point, Point]


@dataclass(frozen=True, slots=True)
class Rect:
    """An upright rectangle on paper; mm."""

    left: float
    top: float
    right: float
    bottom: float

    @property
    def width(self) -> float:
        """Width in mm."""
        return self.right - self.left

    @property
    def height(self) -> float:
        """Height in mm."""
        return self.bottom - self.top

    @property
    def middle(self) -> Point:
        """Its centre."""
        return (self.left + self.right) / 2, (self.top + self.bottom) / 2

    def grown(self, by: float) -> Rect:
        """Return the rectangle with every side moved outwards."""
        return Rect(self.left - by, self.top - by, self.right + by, self.bottom + by)

    def moved(self, right: float, down: float) -> Rect:
        """Return the rectangle moved to the right and down."""
        return Rect(self.left + right, self.top + down, self.right + right, self.bottom + down)

    def is_crossed_by(self, line: Segment) -> bool:
        """Return whether some of a line lies inside."""
        (x, y), (u, v) = line
        if max(x, u) <= self.left or min(x, u) >= self.right:
            return False
        if max(y, v) <= self.top or min(y, v) >= self.bottom:
            return False
        begin, end = 0.0, 1.0
        for start, step, low, high in (
            (x, u - x, self.left, self.right),
            (y, v - y, self.top, self.bottom),
        ):
            if step:
                first, last = sorted(((low - start) / step, (high - start) / step))
                begin, end = max(begin, first), min(end, last)
        return begin < end

    def meets(self, other: Rect) -> bool:
        """Return whether the two have an area in common."""
        return (
            self.left < other.right
            and other.left < self.right
            and self.top < other.bottom
            and other.top < self.bottom
        )

    def corners(self) -> tuple[Point, Point, Point, Point]:
        """Return the four corners, clockwise from the top left."""
        return (
            (self.left, self.top),
            (self.right, self.top),
            (self.right, self.bottom),
            (self.left, self.bottom),
        )
