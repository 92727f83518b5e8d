"""Where a leader or a label may stand on a thing in a view: where most of what is round is seen."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import hypot

from dryfit.booklet.drawing.placement import Placement
from dryfit.booklet.drawing.rect import Point
from dryfit.geometry.convex import Convex, Face, Vector, crossed
from dryfit.geometry.hidden_lines import Scene
from dryfit.geometry.shape import Shape

_SHAPES_TRIED = 6
_FACES_TRIED = 3
_TARGETS = 6
_UNDER = 0.01
"""How far under a face there must be wood, mm."""

_LONG, _SHORT = 9, 3
"""Points of the lattice on a face, along it and across it."""


def targets_on(scene: Scene, shapes: Sequence[Shape], placement: Placement) -> tuple[Point, ...]:
    """Return points on paper where one of the shapes, all of them alike, is seen best."""
    found: list[tuple[int, Point]] = []
    for shape in shapes[:_SHAPES_TRIED]:
        on_box = _seen_on_faces(scene, shape, shape.outside, placement)
        found += on_box or _seen_on_faces(scene, shape, max(shape.bodies, key=_room_of), placement)
    found.sort(key=lambda target: (-target[0], target[1]))
    return tuple(point for _, point in found[:_TARGETS])


def _seen_on_faces(
    scene: Scene, shape: Shape, body: Convex, placement: Placement
) -> list[tuple[int, Point]]:
    faces = [face for face in body.faces if _dot(face.plane.normal, scene.view.towards) > 0]
    faces.sort(key=lambda face: -_area(face))
    return [
        each for face in faces[:_FACES_TRIED] for each in _seen_on(scene, shape, face, placement)
    ]


def _seen_on(
    scene: Scene, shape: Shape, face: Face, placement: Placement
) -> Iterator[tuple[int, Point]]:
    """Yield the visible points of a lattice on a face, with their worth.

    A point is worth the number of its neighbours that are seen too.
    """
    x, y, z = (-_UNDER * step for step in face.plane.normal)
    seen = {
        place: placement.on_paper(at)
        for place, at in _lattice(face)
        if not scene.hides(at) and shape.has_wood((at[0] + x, at[1] + y, at[2] + z))
    }
    for (i, j), on_paper in seen.items():
        around = ((i + a, j + b) for a in (-1, 0, 1) for b in (-1, 0, 1))
        yield sum(place in seen for place in around), on_paper


def _lattice(face: Face) -> Iterator[tuple[tuple[int, int], Vector]]:
    """Yield points inside a face with their places on the lattice, more along it than across."""
    corners = face.corners
    if len(corners) > 4:  # of a face with more corners, its middle and what lies about that
        x, y, z = (sum(corner[axis] for corner in corners) / len(corners) for axis in range(3))
        corners = tuple(((a + x) / 2, (b + y) / 2, (c + z) / 2) for a, b, c in _spread_out(corners))
    a, b, c = corners[0], corners[1], corners[2]
    d = corners[3] if len(corners) > 3 else a
    long = hypot(*_less(b, a)) >= hypot(*_less(d, a))
    counts = (_LONG, _SHORT) if long else (_SHORT, _LONG)
    for i in range(1, counts[0] + 1):
        for j in range(1, counts[1] + 1):
            u, v = i / (counts[0] + 1), j / (counts[1] + 1)
            x, y, z = (
                (p * (1 - u) + q * u) * (1 - v) + (s * (1 - u) + r * u) * v
                for p, q, r, s in zip(a, b, c, d, strict=True)
            )
            yield (i, j), (x, y, z)


def _spread_out(corners: Sequence[Vector]) -> tuple[Vector, ...]:
    count = len(corners)
    return tuple(corners[index * count // 4] for index in range(4))


def _area(face: Face) -> float:
    start = face.corners[0]
    total = [0.0, 0.0, 0.0]
    for one, two in zip(face.corners[1:], face.corners[2:], strict=False):
        for axis, part in enumerate(crossed(_less(one, start), _less(two, start))):
            total[axis] += part
    return hypot(*total)


def _room_of(body: Convex) -> float:
    corners = body.corners()
    room = 1.0
    for axis in range(3):
        along = [corner[axis] for corner in corners]
        room *= max(along) - min(along)
    return room


def _less(one: Vector, other: Vector) -> Vector:
    return one[0] - other[0], one[1] - other[1], one[2] - other[2]


def _dot(one: Vector, other: Sequence[int]) -> float:
    return one[0] * other[0] + one[1] * other[1] + one[2] * other[2]
