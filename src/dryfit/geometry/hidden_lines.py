"""Hidden lines of solids: each line less the stretches that convex bodies hide.

What a convex body hides from the viewer is the room behind its faces that look at him, within its
outline: convex again.  So each body hides one stretch of a line, which is found by cutting the line
with a few planes.  Shapes are turned once into the picture: to the right, up, and to the viewer.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from math import hypot

from dryfit.geometry.box import Triple
from dryfit.geometry.convex import Vector
from dryfit.geometry.edges import Line
from dryfit.geometry.shadow import Interval, Shadow, frame_of, shadow_of
from dryfit.geometry.shape import Shape
from dryfit.geometry.view import Point, View

_UPRIGHT = 1e-6
_DECIMALS = 6

_SHORTEST = 0.02
"""Stretches and gaps below this are drawn by nobody; mm."""


@dataclass(frozen=True, slots=True)
class Piece:
    """A piece of a line that is wholly seen or wholly hidden; `solid` is the shape's index."""

    solid: int
    start: Vector
    end: Vector
    visible: bool


class Scene:
    """Shapes before a viewer, in the piece frame."""

    def __init__(self, shapes: Sequence[Shape], view: View) -> None:
        self.view = view
        self.shapes = tuple(shapes)
        self._lines = tuple(shape.lines for shape in shapes)
        self._shadows = tuple(
            tuple(shadow_of(body, view) for body in shape.bodies) for shape in shapes
        )
        self._frames = tuple(
            frame_of([view.turned(corner) for corner in shape.outside.corners()])
            for shape in shapes
        )

    def pieces(self) -> Iterator[Piece]:
        """Yield every line of every shape in visible and hidden pieces, in order.

        Lines that point at the viewer are left out: they are dots on the picture.
        """
        for index, lines in enumerate(self._lines):
            own = self._frames[index]
            before = [
                shadow
                for frame, shadows in zip(self._frames, self._shadows, strict=True)
                if frame.hides(own)
                for shadow in shadows
                if shadow.frame.hides(own)
            ]
            for line in lines:
                yield from self._pieces_of(index, line, before)

    def hides(self, point: Triple | Vector) -> bool:
        """Return whether some shape lies between the point and the viewer."""
        at = self.view.turned(point)
        spot = frame_of([at])
        return any(
            shadow.holds(at)
            for frame, shadows in zip(self._frames, self._shadows, strict=True)
            if frame.hides(spot)
            for shadow in shadows
            if shadow.frame.hides(spot)
        )

    def _pieces_of(self, index: int, line: Line, before: Sequence[Shadow]) -> Iterator[Piece]:
        start, end = self.view.turned(line.start), self.view.turned(line.end)
        length = hypot(end[0] - start[0], end[1] - start[1])
        if length < _SHORTEST or not self._is_outline(line):
            return
        frame = frame_of([start, end])
        slack = _SHORTEST / length
        hidden = joined(
            (
                interval
                for shadow in before
                if shadow.frame.hides(frame) and (interval := shadow.on(start, end))
            ),
            slack,
        )
        for begin, stop, seen in _alternating(hidden, slack):
            yield Piece(index, _between(line, begin), _between(line, stop), seen)

    def _is_outline(self, line: Line) -> bool:
        """Whether a seam in a round face is an outline of it; what is no seam always is."""
        if line.beside is None:
            return True
        (x, y), (u, v) = (self.view.project(end) for end in (line.start, line.end))
        sides = []
        for point in line.beside:
            right, up = self.view.project(point)
            sides.append((u - x) * (up - y) - (v - y) * (right - x))
        return sides[0] * sides[1] >= 0


_OnLine = tuple[Point, Point, list[Interval], list[Interval]]
"""An origin and a way in the picture, what is drawn on it, and what is drawn over that."""


def picture_lines(
    scene: Scene, pieces: Iterable[Piece], *, under: Iterable[Piece] = ()
) -> tuple[tuple[Point, Point], ...]:
    """Return the pieces as lines of the picture, in mm; lines on top of one another become one.

    What comes to lie `under` other pieces is left out.
    """
    lines: dict[tuple[float, float, float], _OnLine] = {}
    for piece, over in (*((each, False) for each in pieces), *((each, True) for each in under)):
        start, end = sorted(scene.view.project(point) for point in (piece.start, piece.end))
        length = hypot(end[0] - start[0], end[1] - start[1])
        across, up = (end[0] - start[0]) / length, (end[1] - start[1]) / length
        if up < -1 + _UPRIGHT:  # straight up and straight down are one way
            start, end, across, up = end, start, -across, -up
        aside = across * start[1] - up * start[0]
        key = round(across, 5) + 0.0, round(up, 5) + 0.0, round(aside, 2) + 0.0
        origin, way, *stretches = lines.setdefault(key, (start, (across, up), [], []))
        stretches[over].append((_along(origin, way, start), _along(origin, way, end)))
    drawn = []
    for _, (origin, way, own, covered) in sorted(lines.items()):
        for begin, stop in without(joined(own, _SHORTEST), joined(covered, _SHORTEST)):
            drawn.append((_off(origin, way, begin), _off(origin, way, stop)))
    return tuple(drawn)


def without(intervals: Iterable[Interval], taken: Sequence[Interval]) -> Iterator[Interval]:
    """Yield what is left of intervals beside others, specks left out; all in order."""
    for begin, stop in intervals:
        at = begin
        for low, high in taken:
            if low - at > _SHORTEST and low < stop:
                yield at, low
            if high > at and low < stop:
                at = max(at, high)
        if stop - at > _SHORTEST:
            yield at, stop


def joined(intervals: Iterable[Interval], slack: float = 0.0) -> tuple[Interval, ...]:
    """Return the union of intervals as disjoint intervals in order; touching ones are joined.

    So are those with no more than `slack` between them.
    """
    union: list[Interval] = []
    for begin, stop in sorted(intervals):
        if union and begin <= union[-1][1] + slack:
            union[-1] = (union[-1][0], max(stop, union[-1][1]))
        else:
            union.append((begin, stop))
    return tuple(union)


def _alternating(hidden: Sequence[Interval], slack: float) -> Iterator[tuple[float, float, bool]]:
    """Yield the stretches of a line in turn, each with whether it is seen; specks are left out."""
    at = 0.0
    for begin, stop in (each for each in hidden if each[1] - each[0] > slack):
        first = begin if begin - at > slack else at
        last = stop if 1.0 - stop > slack else 1.0
        if first > at:
            yield at, first, True
        yield first, last, False
        at = last
    if at < 1.0:
        yield at, 1.0, True


def _between(line: Line, share: float) -> Vector:
    if share in {0.0, 1.0}:
        return line.end if share else line.start
    x, y, z = (a + (b - a) * share for a, b in zip(line.start, line.end, strict=True))
    return x, y, z


def _along(origin: Point, way: Point, point: Point) -> float:
    return (point[0] - origin[0]) * way[0] + (point[1] - origin[1]) * way[1]


def _off(origin: Point, way: Point, by: float) -> Point:
    # Rounded far below what is drawn, so that the order of the shapes does not show.
    x, y = origin[0] + way[0] * by, origin[1] + way[1] * by
    return round(x, _DECIMALS) + 0.0, round(y, _DECIMALS) + 0.0
