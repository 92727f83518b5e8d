"""Balloons round a drawing: letters in circles, each with a leader to a point on its part."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import hypot

from dryfit.booklet.drawing.canvas import FINE, Canvas, width_of
from dryfit.booklet.drawing.rect import Point, Rect, Segment
from dryfit.geometry.shadow import hull, turn

LETTER = 5.0
RADIUS = 3.6
_DISTANCE = 10.0
_STEP = 4.0
_CROSSED = 60.0
_COVERED = 500.0
_LOOKED_AT = 60
_STEEP = 0.34


@dataclass(frozen=True, slots=True)
class Wanted:
    """A label and the points at which its leader may end, the best first, in paper mm."""

    label: str
    targets: tuple[Point, ...]


@dataclass(frozen=True, slots=True)
class _Placed:
    label: str
    centre: Point
    target: Point

    @property
    def leader(self) -> Segment:
        return self.target, self.centre


def draw_balloons(
    canvas: Canvas,
    wanted: Sequence[Wanted],
    outline: Sequence[Point],
    *,
    lines: Sequence[Segment] = (),
    rooms: Sequence[Rect] = (),
    drawn: Sequence[Segment] = (),
) -> None:
    """Place a balloon for each label round the outline of the drawing, and draw them.

    `lines` must not be crossed and `rooms` not be covered: dimensions, figures.  Leaders do not
    cross one another where a place without a crossing exists, and do not run along `drawn` lines.
    """
    places = tuple(_round(outline))
    placed: list[_Placed] = []
    for _ in range(2):  # the second round moves the early ones out of the way of the late ones
        for label in wanted:
            others = [other for other in placed if other.label != label.label]
            placed = [*others, _best(label, places, others, lines, rooms, drawn)]
    placed.sort(key=lambda balloon: balloon.label)
    canvas.lines([balloon.leader for balloon in placed], FINE)
    for balloon in placed:
        canvas.dot(balloon.target)
        draw_balloon(canvas, balloon.centre, balloon.label)


def draw_balloon(canvas: Canvas, centre: Point, label: str, *, size: float = LETTER) -> None:
    """Draw one balloon: its label in a white circle."""
    canvas.circle(centre, radius_of(label, size=size))
    canvas.text(centre, label, size=size, bold=True)


def radius_of(label: str, *, size: float = LETTER) -> float:
    """Return the radius of the balloon of a label in mm."""
    return max(RADIUS, width_of(label, size=size, bold=True) / 2 + 1.2)


def crosses(first: Segment, second: Segment) -> bool:
    """Return whether two lines cross at a point inside both."""
    (a, b), (c, d) = first, second
    return turn(a, b, c) * turn(a, b, d) < 0 and turn(c, d, a) * turn(c, d, b) < 0


def _best(
    wanted: Wanted,
    places: Sequence[Point],
    placed: Sequence[_Placed],
    lines: Sequence[Segment],
    rooms: Sequence[Rect],
    drawn: Sequence[Segment],
) -> _Placed:
    def cost(balloon: _Placed) -> float:
        length = hypot(balloon.centre[0] - balloon.target[0], balloon.centre[1] - balloon.target[1])
        crossed = sum(crosses(balloon.leader, line) for line in lines)
        crossed += sum(crosses(balloon.leader, other.leader) for other in placed)
        covered = sum(_near(balloon.centre, other.centre, 2 * RADIUS + 1) for other in placed)
        covered += sum(_by(balloon.centre, other.leader) for other in placed)
        covered += sum(_by(other.centre, balloon.leader) for other in placed)
        covered += sum(room.grown(RADIUS + 1).meets(_point(balloon.centre)) for room in rooms)
        covered += sum(_by(balloon.centre, line) for line in lines)
        return length + _CROSSED * crossed + _COVERED * covered

    options = (
        _Placed(wanted.label, place, target) for target in wanted.targets for place in places
    )
    ranked = sorted(
        (round(cost(balloon), 3), balloon.centre, balloon.target) for balloon in options
    )
    best = min(
        ranked[:_LOOKED_AT],
        key=lambda row: (round(row[0] + _grazing((row[2], row[1]), drawn), 3), row[1], row[2]),
    )
    return _Placed(wanted.label, best[1], best[2])


def _grazing(leader: Segment, drawn: Sequence[Segment]) -> float:
    """Return the cost of crossing lines of the drawing: little across, much along them."""
    (x, y), (u, v) = leader
    length = hypot(u - x, v - y)
    total = 0.0
    for line in drawn:
        if crosses(leader, line):
            (a, b), (c, d) = line
            sine = abs((u - x) * (d - b) - (v - y) * (c - a)) / (length * hypot(c - a, d - b))
            total += 1.0 if sine > _STEEP else _CROSSED / 2
    return total


def _round(outline: Sequence[Point]) -> Iterator[Point]:
    """Yield places at a distance from a convex outline, every few mm."""
    corners = hull(outline)
    for start, end in zip(corners, (*corners[1:], corners[0]), strict=True):
        length = hypot(end[0] - start[0], end[1] - start[1])
        across, down = (end[0] - start[0]) / length, (end[1] - start[1]) / length
        count = max(1, int(length // _STEP))
        for step in range(count + 1):
            along = length * step / count
            yield (
                start[0] + across * along + down * _DISTANCE,
                start[1] + down * along - across * _DISTANCE,
            )


def _near(first: Point, second: Point, distance: float) -> bool:
    return hypot(first[0] - second[0], first[1] - second[1]) < distance


def _by(point: Point, line: Segment) -> bool:
    """Return whether a balloon at the point would touch the line."""
    (x, y), (u, v) = line
    squared = (u - x) ** 2 + (v - y) ** 2
    if squared == 0:
        return _near(point, (x, y), RADIUS + 1)
    along = ((point[0] - x) * (u - x) + (point[1] - y) * (v - y)) / squared
    along = min(1.0, max(0.0, along))
    return _near(point, (x + along * (u - x), y + along * (v - y)), RADIUS + 1)


def _point(at: Point) -> Rect:
    return Rect(at[0] - 1e-6, at[1] - 1e-6, at[0] + 1e-6, at[1] + 1e-6)
