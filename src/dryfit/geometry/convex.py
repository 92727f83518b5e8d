"""Convex bodies in floating point: what is left of a box when planes cut it; mm.

Drawings need slanting faces, whose corners are no whole numbers.  A body keeps its faces with the
planes that they lie in, so that it can be cut again and again.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from math import hypot

from dryfit.geometry.box import Box

Vector = tuple[float, float, float]

SLACK = 1e-6
"""What counts as lying in a plane, mm: far above rounding, far below what is seen."""


@dataclass(frozen=True, slots=True)
class Plane:
    """The half of space with ``normal . point <= offset``; the normal has length 1."""

    normal: Vector
    offset: float

    def above(self, point: Vector) -> float:
        """Return how far the point lies outside the half, in mm; negative inside."""
        (a, b, c), (x, y, z) = self.normal, point
        return a * x + b * y + c * z - self.offset

    def turned(self) -> Plane:
        """Return the other half."""
        a, b, c = self.normal
        return Plane((-a, -b, -c), -self.offset)


@dataclass(frozen=True, slots=True)
class Face:
    """A face: its plane, the body being inside it, and its corners in order round it."""

    plane: Plane
    corners: tuple[Vector, ...]


@dataclass(frozen=True, slots=True)
class Convex:
    """A convex body with a volume, by its faces."""

    faces: tuple[Face, ...]

    def corners(self) -> tuple[Vector, ...]:
        """Return all corners, each once."""
        return tuple(dict.fromkeys(corner for face in self.faces for corner in face.corners))

    def cut(self, plane: Plane) -> Convex | None:
        """Return what is left inside the plane, or None where that has no volume."""
        heights = {corner: plane.above(corner) for corner in self.corners()}
        if all(height <= SLACK for height in heights.values()):
            return self
        if all(height >= -SLACK for height in heights.values()):
            return None
        faces = []
        rim: dict[Vector, None] = {}
        for face in self.faces:
            kept = _kept(face.corners, heights)
            rim.update((each, None) for each in kept if abs(heights.get(each, 0.0)) <= SLACK)
            if len(kept) > 2:
                faces.append(Face(face.plane, kept))
        faces.append(Face(plane, _round(tuple(rim), plane.normal)))
        return Convex(tuple(faces))

    def within(self, planes: Iterable[Plane]) -> Convex | None:
        """Return what is left inside all the planes, or None."""
        body: Convex | None = self
        for plane in planes:
            body = body.cut(plane) if body is not None else None
        return body

    def contains(self, point: Vector) -> bool:
        """Return whether the point lies inside or on a face."""
        return all(face.plane.above(point) <= SLACK for face in self.faces)

    def mapped(self, move: Callable[[Vector], Vector]) -> Convex:
        """Return the body with every corner moved; `move` keeps planes plane, as a shear does."""
        middle = _mean(self.corners())
        inside = move(middle)
        return Convex(
            tuple(
                Face(plane_through(moved, inside), moved)
                for moved in (tuple(move(each) for each in face.corners) for face in self.faces)
            )
        )


def plane_through(corners: Sequence[Vector], inside: Vector) -> Plane:
    """Return the plane of three or more corners in order, turned so that a point lies inside."""
    x = y = z = 0.0
    for (a, b, c), (d, e, f) in zip(corners, (*corners[1:], corners[0]), strict=True):
        x, y, z = x + (b - e) * (c + f), y + (c - f) * (a + d), z + (a - d) * (b + e)
    length = hypot(x, y, z)
    normal = x / length, y / length, z / length
    at = _mean(corners)
    plane = Plane(normal, sum(n * p for n, p in zip(normal, at, strict=True)))
    return plane if plane.above(inside) <= 0 else plane.turned()


def sides_of(box: Box) -> tuple[Plane, ...]:
    """Return the six planes of a box, whose inside is theirs: low and high of x, of y, of z."""
    found = []
    for axis in range(3):
        for sign, at in ((-1.0, -float(box.low[axis])), (1.0, float(box.high[axis]))):
            normal = [0.0, 0.0, 0.0]
            normal[axis] = sign
            found.append(Plane((normal[0], normal[1], normal[2]), at))
    return tuple(found)


def of_box(box: Box) -> Convex:
    """Return a box as a body."""
    low, high = (tuple(float(value) for value in corner) for corner in (box.low, box.high))
    faces = []
    for index, plane in enumerate(sides_of(box)):
        axis, far = divmod(index, 2)
        first, second = ((1, 2), (0, 2), (0, 1))[axis]
        corners = []
        for a, b in ((0, 0), (1, 0), (1, 1), (0, 1)):
            point = [0.0, 0.0, 0.0]
            point[axis] = high[axis] if far else low[axis]
            point[first] = high[first] if a else low[first]
            point[second] = high[second] if b else low[second]
            corners.append((point[0], point[1], point[2]))
        faces.append(Face(plane, tuple(corners)))
    return Convex(tuple(faces))


def _kept(corners: Sequence[Vector], heights: dict[Vector, float]) -> tuple[Vector, ...]:
    """Return the corners of a face inside a plane, with those where its edges pass through."""
    kept: list[Vector] = []
    for here, then in zip(corners, (*corners[1:], corners[0]), strict=True):
        one, two = heights[here], heights[then]
        if one <= SLACK:
            kept.append(here)
        if (one < -SLACK and two > SLACK) or (one > SLACK and two < -SLACK):
            # Always from the inner end, so that two faces find the same corner.
            inner, outer = (here, then) if one < two else (then, here)
            low, high = min(one, two), max(one, two)
            share = low / (low - high)
            x, y, z = (a + (b - a) * share for a, b in zip(inner, outer, strict=True))
            kept.append((x, y, z))
    return tuple(dict.fromkeys(kept))


def _round(corners: tuple[Vector, ...], normal: Vector) -> tuple[Vector, ...]:
    """Return the corners of a convex face in order round its middle."""
    across, upward = axes_beside(normal)
    middle = _mean(corners)

    def turn(corner: Vector) -> float:
        away = tuple(a - b for a, b in zip(corner, middle, strict=True))
        right = sum(a * b for a, b in zip(away, across, strict=True))
        up = sum(a * b for a, b in zip(away, upward, strict=True))
        return angle_order(right, up)

    return tuple(sorted(corners, key=turn))


def axes_beside(normal: Vector) -> tuple[Vector, Vector]:
    """Return two unit vectors square to a unit vector and to one another."""
    least = min(range(3), key=lambda axis: abs(normal[axis]))
    other = [0.0, 0.0, 0.0]
    other[least] = 1.0
    across = crossed(normal, (other[0], other[1], other[2]))
    length = hypot(*across)
    x, y, z = (value / length for value in across)
    return (x, y, z), crossed(normal, (x, y, z))


def crossed(one: Vector, other: Vector) -> Vector:
    """Return the vector product."""
    (a, b, c), (x, y, z) = one, other
    return b * z - c * y, c * x - a * z, a * y - b * x


def angle_order(right: float, up: float) -> float:
    """Return a number that grows with the angle of a direction, by arithmetic alone."""
    reach = abs(right) + abs(up)
    if not reach:
        return 0.0
    return 1 - right / reach if up >= 0 else 3 + right / reach


def _mean(corners: Sequence[Vector]) -> Vector:
    count = len(corners)
    x, y, z = (sum(corner[axis] for corner in corners) / count for axis in range(3))
    return x, y, z
