"""What a convex body hides from the viewer: the room behind its faces, within its outline; mm."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from math import hypot

from dryfit.geometry.convex import Convex, Vector
from dryfit.geometry.view import Point, View

Interval = tuple[float, float]

_TOUCHING = 1e-4
"""What lies on a face is not behind it, but what lies on an outline is: no line shows between two
bodies that touch, and where a line runs along an outline that is an edge itself; mm."""


@dataclass(frozen=True, slots=True)
class Frame:
    """Where something comes in the picture, and how far from and near to the viewer it comes."""

    left: float
    right: float
    low: float
    high: float
    far: float
    near: float

    def hides(self, other: Frame) -> bool:
        """Whether this can hide something of the other."""
        return (
            self.left <= other.right
            and other.left <= self.right
            and self.low <= other.high
            and other.low <= self.high
            and other.far < self.near
        )


@dataclass(frozen=True, slots=True)
class Shadow:
    """What a body hides: all points under every one of the planes (a, b, c, offset)."""

    frame: Frame
    planes: tuple[tuple[float, float, float, float], ...]

    def on(self, start: Vector, end: Vector) -> Interval | None:
        """Return from which to which share of the way from start to end all is hidden."""
        begin, stop = 0.0, 1.0
        (x, y, z), (u, v, w) = start, end
        for a, b, c, offset in self.planes:
            first = a * x + b * y + c * z - offset
            last = a * u + b * v + c * w - offset
            if first >= 0:
                if last >= 0:
                    return None
                begin = max(begin, first / (first - last))
            elif last > 0:
                stop = min(stop, first / (first - last))
            if begin >= stop:
                return None
        return begin, stop

    def holds(self, point: Vector) -> bool:
        """Return whether a point is hidden."""
        x, y, z = point
        return all(a * x + b * y + c * z < offset for a, b, c, offset in self.planes)


def shadow_of(body: Convex, view: View) -> Shadow:
    """Return what a body hides."""
    corners = [view.turned(corner) for corner in body.corners()]
    planes = []
    outline = hull([(x, y) for x, y, _ in corners])
    for (x, y), (u, v) in zip(outline, (*outline[1:], outline[0]), strict=True):
        length = hypot(u - x, v - y)
        a, b = (v - y) / length, (x - u) / length
        planes.append((a, b, 0.0, a * x + b * y + _TOUCHING))
    axes = view.axes()
    for face in body.faces:
        a, b, c = (
            sum(n * e for n, e in zip(face.plane.normal, axis, strict=True)) for axis in axes
        )
        if c > _TOUCHING:
            planes.append((a, b, c, face.plane.offset - _TOUCHING))
    return Shadow(frame_of(corners), tuple(planes))


def hull(points: Iterable[Point]) -> tuple[Point, ...]:
    """Return the corners of the convex hull, counter-clockwise (Andrew's monotone chain)."""
    ordered = sorted(set(points))
    if len(ordered) < 3:
        return tuple(ordered)

    def half(row: Sequence[Point]) -> list[Point]:
        chain: list[Point] = []
        for point in row:
            while len(chain) > 1 and turn(chain[-2], chain[-1], point) <= 0:
                chain.pop()
            chain.append(point)
        return chain[:-1]

    return (*half(ordered), *half(ordered[::-1]))


def turn(a: Point, b: Point, c: Point) -> float:
    """Return a number above 0 where the way from `a` by `b` to `c` turns to the left."""
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])


def frame_of(points: Sequence[Vector]) -> Frame:
    """Return the frame round points of the turned picture."""
    xs, ys = [point[0] for point in points], [point[1] for point in points]
    zs = [point[2] for point in points]
    return Frame(
        min(xs) - _TOUCHING,
        max(xs) + _TOUCHING,
        min(ys) - _TOUCHING,
        max(ys) + _TOUCHING,
        min(zs),
        max(zs),
    )
