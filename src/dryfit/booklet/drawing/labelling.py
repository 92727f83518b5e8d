"""Labels in a crowded drawing: on the part where that is free, else close by with a leader.

No label covers a line or another label, and no leader crosses another one where there is a way.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import cos, hypot, pi, sin

from dryfit.booklet.drawing.balloons import Wanted, crosses, draw_balloon, radius_of
from dryfit.booklet.drawing.canvas import FINE, Canvas
from dryfit.booklet.drawing.rect import Point, Segment

_AIR = 0.9
_FAR = (1.6, 2.2, 3.0, 4.0, 5.2, 6.8, 9.0, 12.0, 16.0)
"""How far from its target a label may stand, in radii of its balloon."""

_TURNS = 20
_CELL = 8.0
_CROSSED = 2.5
_OVER_A_LEADER = 80.0
_COVERING = 400.0


@dataclass(frozen=True, slots=True)
class Placed:
    """A label where it stands; its target is its own centre where no leader is needed."""

    label: str
    centre: Point
    target: Point
    radius: float

    @property
    def leader(self) -> Segment:
        """The line from the target to the centre."""
        return self.target, self.centre


def draw_labels(canvas: Canvas, wanted: Sequence[Wanted], drawn: Sequence[Segment]) -> None:
    """Place all labels and draw them."""
    placed = place_labels(wanted, drawn)
    canvas.lines([row.leader for row in placed if row.centre != row.target], FINE)
    for balloon in placed:
        if balloon.centre != balloon.target:
            canvas.dot(balloon.target)
        draw_balloon(canvas, balloon.centre, balloon.label)


def place_labels(wanted: Sequence[Wanted], drawn: Sequence[Segment]) -> tuple[Placed, ...]:
    """Return the places of all labels: those that find room on their parts first.

    A second round moves the early ones with a leader out of the way of the late ones.
    """
    lines = _Lines(drawn)
    on_parts: list[Placed] = []
    waiting = []
    for each in wanted:
        on_part = next(_on_part(each, lines, on_parts), None)
        if on_part is None:
            waiting.append(each)
        else:
            on_parts.append(on_part)
    beside: list[Placed] = []
    for each in waiting:
        beside.append(_beside(each, lines, (*on_parts, *beside)))
    for at, each in enumerate(waiting):
        others = (*on_parts, *beside[:at], *beside[at + 1 :])
        beside[at] = _beside(each, lines, others)
    return (*on_parts, *beside)


class _Lines:
    """The lines of a drawing, sorted into squares so that those nearby are found at once."""

    def __init__(self, segments: Sequence[Segment]) -> None:
        self._cells: dict[tuple[int, int], list[Segment]] = {}
        for segment in segments:
            for cell in _cells_along(segment):
                self._cells.setdefault(cell, []).append(segment)

    def near(self, centre: Point, distance: float) -> bool:
        """Return whether a line comes nearer than the distance."""
        x, y = centre
        reach = range(int((x - distance) // _CELL), int((x + distance) // _CELL) + 1)
        rows = range(int((y - distance) // _CELL), int((y + distance) // _CELL) + 1)
        return any(
            distance_to(centre, segment) < distance
            for column in reach
            for row in rows
            for segment in self._cells.get((column, row), ())
        )

    def crossed(self, segment: Segment) -> int:
        """Return how many lines a segment crosses."""
        found = {line for cell in _cells_along(segment) for line in self._cells.get(cell, ())}
        return sum(crosses(segment, line) for line in found)


def _cells_along(segment: Segment) -> Iterator[tuple[int, int]]:
    (x, y), (u, v) = segment
    steps = max(1, int(hypot(u - x, v - y) // (_CELL / 2)) + 1)
    seen = dict.fromkeys(
        (int((x + (u - x) * at / steps) // _CELL), int((y + (v - y) * at / steps) // _CELL))
        for at in range(steps + 1)
    )
    # A line that clips the corner of a square between two steps is in a square beside it.
    yield from seen


def _on_part(each: Wanted, lines: _Lines, placed: Sequence[Placed]) -> Iterator[Placed]:
    radius = radius_of(each.label)
    for target in each.targets:
        clear = not lines.near(target, radius + _AIR)
        if clear and not any(_meet(target, radius, other) for other in placed):
            yield Placed(each.label, target, target, radius)


def _beside(each: Wanted, lines: _Lines, placed: Sequence[Placed]) -> Placed:
    """Return the label at the place that costs least: near, over little, clear of all else."""
    radius = radius_of(each.label)
    best: tuple[float, Placed] | None = None
    for rank, target in enumerate(each.targets[:3]):
        for far in _FAR:
            if best is not None and far * radius + rank >= best[0]:
                break
            for turn in range(_TURNS):
                way = 2 * pi * (turn + 0.5) / _TURNS
                centre = (
                    round(target[0] + far * radius * cos(way), 4),
                    round(target[1] + far * radius * sin(way), 4),
                )
                found = Placed(each.label, centre, target, radius)
                cost = far * radius + rank + _cost(found, lines, placed)
                if best is None or cost < best[0] - 1e-6:
                    best = cost, found
    assert best is not None
    return best[1]


def _cost(found: Placed, lines: _Lines, placed: Sequence[Placed]) -> float:
    cost = _COVERING if lines.near(found.centre, found.radius + _AIR) else 0.0
    for other in placed:
        if _meet(found.centre, found.radius, other):
            cost += _COVERING
        if other.centre != other.target:
            cost += _OVER_A_LEADER * crosses(found.leader, other.leader)
            if distance_to(found.centre, other.leader) < found.radius + _AIR:
                cost += _OVER_A_LEADER
        if distance_to(other.centre, found.leader) < other.radius + _AIR:
            cost += _COVERING  # it would run on under the balloon, and seem to come out of it
    if cost >= _COVERING:
        return cost
    return cost + _CROSSED * lines.crossed(found.leader)


def _meet(centre: Point, radius: float, other: Placed) -> bool:
    apart = hypot(centre[0] - other.centre[0], centre[1] - other.centre[1])
    if apart < radius + other.radius + _AIR:
        return True
    return distance_to(centre, other.leader) < radius + _AIR


def distance_to(point: Point, line: Segment) -> float:
    """Return the distance of a point from a line between two ends."""
    (x, y), (u, v) = line
    squared = (u - x) ** 2 + (v - y) ** 2
    along = 0.0
    if squared:
        along = ((point[0] - x) * (u - x) + (point[1] - y) * (v - y)) / squared
        along = min(1.0, max(0.0, along))
    return hypot(point[0] - x - along * (u - x), point[1] - y - along * (v - y))
