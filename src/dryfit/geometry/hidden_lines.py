"""Hidden lines of axis-parallel solids, exactly: each edge less the intervals that boxes hide.

From a point of an edge along axis a, ``P + t e``, the ray ``P + t e + s d`` with ``s > 0`` runs to
the viewer.  Inside an open box each axis bounds s or t by two linear inequalities, so the hidden
part of the edge behind one box is one open interval of t in closed form.  All coordinates are
scaled to whole numbers that the components of d divide, and every division below is exact.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import hypot, lcm

from dryfit.geometry.box import Triple
from dryfit.geometry.solid import Edge, Solid

Whole = tuple[int, int, int]
Interval = tuple[int, int]
Point = tuple[float, float]
_WholeBox = tuple[Whole, Whole]


@dataclass(frozen=True, slots=True)
class View:
    """A parallel projection; `towards` points from the piece to the viewer, in whole numbers."""

    towards: Whole

    def project(self, point: Triple) -> Point:
        """Return the point on the picture: to the right and up, in mm of the picture plane.

        z is up in the picture, except in the plan view, where y is.
        """
        across, upward = self._axes()
        x, y, z = (float(value) for value in point)
        return (
            x * across[0] + y * across[1] + z * across[2],
            x * upward[0] + y * upward[1] + z * upward[2],
        )

    def _axes(self) -> tuple[tuple[float, float, float], tuple[float, float, float]]:
        dx, dy, dz = self.towards
        if dx == 0 and dy == 0:
            return (1.0, 0.0, 0.0), (0.0, 1.0 if dz > 0 else -1.0, 0.0)
        flat = hypot(dx, dy)
        whole = flat * hypot(dx, dy, dz)
        return (
            (-dy / flat, dx / flat, 0.0),
            (-dx * dz / whole, -dy * dz / whole, flat * flat / whole),
        )


@dataclass(frozen=True, slots=True)
class Piece:
    """A piece of an edge that is wholly seen or wholly hidden; `solid` is the solid's index."""

    solid: int
    edge: Edge
    visible: bool


class Scene:
    """Solids before a viewer, in whole numbers; `solids` are in the piece frame."""

    def __init__(self, solids: Sequence[Solid], view: View) -> None:
        self.view = view
        self._solids = tuple(solids)
        self._edges = tuple(solid.edges() for solid in solids)
        largest = tuple(solid.largest_boxes() for solid in solids)
        # The two lines below make every coordinate a whole multiple of each component of d.
        self._unit = lcm(*(abs(step) for step in view.towards if step))
        self._scale = self._unit * _common_denominator(solids)
        self._boxes = tuple(
            tuple((self.whole(box.low), self.whole(box.high)) for box in boxes) for boxes in largest
        )
        self._outsides = tuple(
            (self.whole(solid.outside.low), self.whole(solid.outside.high)) for solid in solids
        )

    def whole(self, point: Triple) -> Whole:
        """Return the point in the scene's whole numbers, moved onto its lattice if it is off it."""
        scale, unit = self._scale, self._unit
        x, y, z = ((value.numerator * scale // value.denominator) // unit * unit for value in point)
        return x, y, z

    def pieces(self) -> Iterator[Piece]:
        """Yield every edge of every solid in visible and hidden pieces, in order.

        Edges that point at the viewer are left out: they are dots on the picture.
        """
        for index, edges in enumerate(self._edges):
            for edge in edges:
                if any(self.view.towards[axis] for axis in range(3) if axis != edge.axis):
                    yield from self._pieces_of(index, edge)

    def hides(self, point: Triple) -> bool:
        """Return whether some solid lies between the point and the viewer."""
        start = self.whole(point)
        return any(
            _steps_inside(start, box, self.view.towards, (0, 1, 2)) is not None
            for outside, boxes in zip(self._outsides, self._boxes, strict=True)
            if _steps_inside(start, outside, self.view.towards, (0, 1, 2)) is not None
            for box in boxes
        )

    def _pieces_of(self, index: int, edge: Edge) -> Iterator[Piece]:
        start, end = self.whole(edge.start), self.whole(edge.end)
        length = end[edge.axis] - start[edge.axis]
        hidden = joined(
            interval
            for outside, boxes in zip(self._outsides, self._boxes, strict=True)
            if _hidden_by(start, edge.axis, length, outside, self.view.towards)
            for box in boxes
            if (interval := _hidden_by(start, edge.axis, length, box, self.view.towards))
        )
        for begin, stop, seen in _alternating(hidden, length):
            yield Piece(index, self._part_of(edge, begin, stop, length), seen)

    def _part_of(self, edge: Edge, begin: int, stop: int, length: int) -> Edge:
        if (begin, stop) == (0, length):
            return edge
        ends = []
        for at in (begin, stop):
            point = list(edge.start)
            point[edge.axis] += Fraction(at, self._scale)
            ends.append((point[0], point[1], point[2]))
        return Edge(edge.axis, ends[0], ends[1])

    def line_key(self, edge: Edge) -> tuple[int, int]:
        """Return what is equal for edges that run along one line of the picture."""
        first, second = _others(edge.axis)
        point, towards = self.whole(edge.start), self.view.towards
        return edge.axis, point[first] * towards[second] - point[second] * towards[first]

    def on_line(self, edge: Edge) -> Interval:
        """Return where an edge begins and ends on its line of the picture."""
        axis = edge.axis
        by = next(other for other in _others(axis) if self.view.towards[other])
        start, end = self.whole(edge.start), self.whole(edge.end)
        shift = self.view.towards[axis] * (start[by] // self.view.towards[by])
        return start[axis] - shift, end[axis] - shift


def picture_lines(scene: Scene, pieces: Iterable[Piece]) -> tuple[tuple[Point, Point], ...]:
    """Return the pieces as lines of the picture, in mm; lines on top of one another become one."""
    lines: dict[tuple[int, int], list[tuple[Interval, Edge]]] = {}
    for piece in pieces:
        edge = piece.edge
        lines.setdefault(scene.line_key(edge), []).append((scene.on_line(edge), edge))
    drawn = []
    for _, members in sorted(lines.items(), key=lambda item: item[0]):
        ends = {}
        for (begin, stop), edge in members:
            ends[begin], ends[stop] = edge.start, edge.end
        for begin, stop in joined(interval for interval, _ in members):
            project = scene.view.project
            drawn.append((project(ends[begin]), project(ends[stop])))
    return tuple(drawn)


def joined(intervals: Iterable[Interval]) -> tuple[Interval, ...]:
    """Return the union of intervals as disjoint intervals in order; touching ones are joined."""
    union: list[Interval] = []
    for begin, stop in sorted(intervals):
        if union and begin <= union[-1][1]:
            union[-1] = (union[-1][0], max(stop, union[-1][1]))
        else:
            union.append((begin, stop))
    return tuple(union)


def _hidden_by(
    start: Whole, axis: int, length: int, box: _WholeBox, towards: Whole
) -> Interval | None:
    """Return the interval of the edge that the box hides, within 0 and its length, or None."""
    steps = _steps_inside(start, box, towards, _others(axis))
    if steps is None:
        return None
    shifts = (steps[0] * towards[axis], steps[1] * towards[axis])
    begin = max(0, box[0][axis] - start[axis] - max(shifts))
    stop = min(length, box[1][axis] - start[axis] - min(shifts))
    return (begin, stop) if begin < stop else None


def _steps_inside(
    start: Whole, box: _WholeBox, towards: Whole, axes: tuple[int, ...]
) -> Interval | None:
    """Return the open interval of s > 0 for which the ray is inside the box along these axes."""
    low, high = box
    nearest: int = 0
    farthest: int | None = None
    for axis in axes:
        step = towards[axis]
        before, after = low[axis] - start[axis], high[axis] - start[axis]
        if step == 0:
            if not before < 0 < after:
                return None
            continue
        first, last = (
            (before // step, after // step) if step > 0 else (after // step, before // step)
        )
        nearest = max(nearest, first)
        farthest = last if farthest is None else min(farthest, last)
        if nearest >= farthest:
            return None
    return None if farthest is None else (nearest, farthest)


def _others(axis: int) -> tuple[int, int]:
    return ((1, 2), (0, 2), (0, 1))[axis]


def _alternating(hidden: tuple[Interval, ...], length: int) -> Iterator[tuple[int, int, bool]]:
    at = 0
    for begin, stop in hidden:
        if at < begin:
            yield at, begin, True
        yield begin, stop, False
        at = stop
    if at < length:
        yield at, length, True


def _common_denominator(solids: Sequence[Solid]) -> int:
    return lcm(
        *(
            value.denominator
            for solid in solids
            for box in (solid.outside, *solid.cuts)
            for corner in (box.low, box.high)
            for value in corner
        )
    )
