"""The edges of a box with carvings: where its faces meet at an angle, and where a round one bends.

The wood is cut into convex cells along every plane; an edge of a cell is one of the solid where the
wood round it, tried between all planes that run through it, is neither whole, nor gone, nor half.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import hypot

from dryfit.geometry.box import Box
from dryfit.geometry.carving import Carving
from dryfit.geometry.convex import (
    SLACK,
    Convex,
    Plane,
    Vector,
    angle_order,
    axes_beside,
    crossed,
    sides_of,
)

_ASIDE = 0.01
"""How far from an edge it is tried where there is wood, mm: nothing cut is as small."""

_SAME = 5
"""Decimals to which directions and places are told apart."""

Move = Callable[[Vector], Vector]


@dataclass(frozen=True, slots=True)
class Line:
    """A line on a solid.

    Of a seam in a round face `beside` are two points on the faces at its sides: it is seen only
    where it is an outline, both lying on one side of it in the picture.
    """

    start: Vector
    end: Vector
    beside: tuple[Vector, Vector] | None = None

    def mapped(self, move: Move) -> Line:
        """Return the line with every point moved."""
        beside = None if self.beside is None else (move(self.beside[0]), move(self.beside[1]))
        return Line(move(self.start), move(self.end), beside)


@dataclass(frozen=True, slots=True)
class _Wood:
    """The solid, quick to ask whether there is wood at a point."""

    low: Vector
    high: Vector
    gone: tuple[tuple[Vector, Vector, Carving], ...]

    def at(self, point: Vector) -> bool:
        if not _between(point, self.low, self.high):
            return False
        for low, high, carving in self.gone:
            if _between(point, low, high) and not any(
                all(plane.above(point) <= 0 for plane in planes) for planes in carving.left
            ):
                return False
        return True


def edges_of(
    outside: Box, carvings: Sequence[Carving], cells: Iterable[Convex]
) -> tuple[Line, ...]:
    """Return the edges of a box less carvings, and the seams of its round faces, in order.

    `cells` are those into which the carvings cut what is left.
    """
    gone = tuple((_floats(each.box.low), _floats(each.box.high), each) for each in carvings)
    wood = _Wood(_floats(outside.low), _floats(outside.high), gone)
    planes = _planes(outside, carvings)
    lines: dict[tuple[Vector, Vector], tuple[Vector, Vector, list[float]]] = {}
    for cell in cells:
        for face in cell.faces:
            for start, end in zip(face.corners, (*face.corners[1:], face.corners[0]), strict=True):
                _note(lines, start, end)
    found: list[Line] = []
    for _, (start, way, stops) in sorted(lines.items()):
        found += _on_line(start, way, (min(stops), max(stops)), planes, wood)
    return tuple(found)


def _planes(outside: Box, carvings: Sequence[Carving]) -> tuple[tuple[Plane, int | None], ...]:
    """Return every plane once, whichever way it is turned, with the round face that it is of."""
    found: dict[tuple[float, ...], tuple[Plane, int | None]] = {}
    boxes = (outside, *(carving.box for carving in carvings))
    for plane in (side for box in boxes for side in sides_of(box)):
        found.setdefault(_key(plane), (plane, None))
    for index, carving in enumerate(carvings):
        for plane in (plane for planes in carving.left for plane in planes):
            found.setdefault(_key(plane), (plane, index if carving.curved else None))
    return tuple(found.values())


def _key(plane: Plane) -> tuple[float, ...]:
    whole = tuple(round(value, _SAME) + 0.0 for value in (*plane.normal, plane.offset))
    opposite = tuple(0.0 - value for value in whole)
    return max(whole, opposite)


def _note(
    lines: dict[tuple[Vector, Vector], tuple[Vector, Vector, list[float]]],
    start: Vector,
    end: Vector,
) -> None:
    """Put an edge of a cell to the line on which it lies."""
    way = tuple(b - a for a, b in zip(start, end, strict=True))
    length = hypot(*way)
    if length < _ASIDE:
        return
    x, y, z = (value / length for value in way)
    if (round(x, _SAME), round(y, _SAME), round(z, _SAME)) < (0, 0, 0):
        x, y, z = -x, -y, -z
    unit = x, y, z
    # The point of the line that is nearest the origin tells it from lines beside it.
    along = _dot(start, unit)
    foot = tuple(a - along * b for a, b in zip(start, unit, strict=True))
    key = _rounded(unit), _rounded(foot)
    origin, _, stops = lines.setdefault(key, (start, unit, []))
    stops += [_along(origin, unit, start), _along(origin, unit, end)]


def _on_line(
    start: Vector,
    way: Vector,
    ends: tuple[float, float],
    planes: Sequence[tuple[Plane, int | None]],
    wood: _Wood,
) -> Iterator[Line]:
    """Yield the stretches of a line that are edges or seams, each as long as it runs alike."""
    through, stops = [], [*ends]
    for plane, curve in planes:
        slope, height = _dot(plane.normal, way), plane.above(start)
        if abs(slope) > SLACK:
            at = -height / slope
            stops += [at] if ends[0] < at < ends[1] else []
        elif abs(height) <= 10 * SLACK:
            through.append((plane, curve))
    stops.sort()
    run: tuple[float, float, object] | None = None
    for begin, stop in pairwise(stops):
        if stop - begin < _ASIDE:
            continue
        kind = _kind(_off(start, way, (begin + stop) / 2), way, through, wood)
        if run is not None and kind == run[2] and begin - run[1] < _ASIDE:
            run = run[0], stop, kind
            continue
        if run is not None:
            yield from _line(start, way, run)
        run = (begin, stop, kind) if kind is not None else None
    if run is not None:
        yield from _line(start, way, run)


def _line(start: Vector, way: Vector, run: tuple[float, float, object]) -> Iterator[Line]:
    begin, stop, kind = run
    first, last = _off(start, way, begin), _off(start, way, stop)
    if not isinstance(kind, tuple):
        yield Line(first, last)
        return
    one, other = kind
    yield Line(first, last, (_off(first, one, 1.0), _off(first, other, 1.0)))


def _kind(
    at: Vector, way: Vector, through: Sequence[tuple[Plane, int | None]], wood: _Wood
) -> tuple[Vector, Vector] | bool | None:
    """Return True at an edge, the ways along both faces at a seam of a round face, else None."""
    across, upward = axes_beside(way)
    spokes = []
    for plane, curve in through:
        x, y, z = crossed(plane.normal, way)
        right, up = _dot((x, y, z), across), _dot((x, y, z), upward)
        ways = ((right, up), (-right, -up))
        spokes += [(angle_order(*each), each, curve) for each in ways]
    spokes.sort(key=lambda spoke: spoke[0])
    filled = []
    for (_, one, _), (_, two, _) in zip(spokes, (*spokes[1:], spokes[0]), strict=True):
        right, up = one[0] + two[0], one[1] + two[1]
        if hypot(right, up) < SLACK:  # two spokes of one plane: between them lies a half turn
            right, up = -one[1], one[0]
        length = hypot(right, up) / _ASIDE
        way_out = tuple((a * right + b * up) / length for a, b in zip(across, upward, strict=True))
        filled.append(wood.at((at[0] + way_out[0], at[1] + way_out[1], at[2] + way_out[2])))
    faces = [spoke for index, spoke in enumerate(spokes) if filled[index] != filled[index - 1]]
    if not faces:
        return None
    if len(faces) == 2:
        (_, one, first), (_, two, second) = faces
        if abs(one[0] + two[0]) + abs(one[1] + two[1]) < SLACK:
            return None
        if first is not None and first == second:
            return _spread(one, across, upward), _spread(two, across, upward)
    return True


def _spread(way: tuple[float, float], across: Vector, upward: Vector) -> Vector:
    x, y, z = (a * way[0] + b * way[1] for a, b in zip(across, upward, strict=True))
    return x, y, z


def _between(point: Vector, low: Vector, high: Vector) -> bool:
    return (
        low[0] <= point[0] <= high[0]
        and low[1] <= point[1] <= high[1]
        and low[2] <= point[2] <= high[2]
    )


def _off(start: Vector, way: Vector, by: float) -> Vector:
    return start[0] + way[0] * by, start[1] + way[1] * by, start[2] + way[2] * by


def _along(start: Vector, way: Vector, point: Vector) -> float:
    return sum((b - a) * step for a, b, step in zip(start, point, way, strict=True))


def _dot(one: Vector, other: Vector) -> float:
    return one[0] * other[0] + one[1] * other[1] + one[2] * other[2]


def _rounded(vector: Sequence[float]) -> Vector:
    x, y, z = (round(value, 3) + 0.0 for value in vector)
    return x, y, z


def _floats(point: Sequence[object]) -> Vector:
    x, y, z = (float(value) for value in point)  # type: ignore[arg-type]
    return x, y, z
