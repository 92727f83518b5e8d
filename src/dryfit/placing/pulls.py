"""How units of a piece can be pulled off one another, along the six directions of the piece; mm."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from math import inf

from dryfit.geometry.solid import Solid
from dryfit.placing.model import Copy, Part
from dryfit.placing.units_of import Unit

Bounds = tuple[float, float, float, float, float, float]
"""Low and high corner of a box; mm."""
Way = tuple[int, int]
"""An axis of the piece, and +1 or -1 along it."""

WAYS: tuple[Way, ...] = ((2, 1), (1, -1), (1, 1), (0, -1), (0, 1), (2, -1))
"""The top comes off upwards, then what is in front, behind, at the sides, and underneath."""

SLACK = 1e-6


@dataclass(slots=True)
class Row:
    """What one unit meets when it is pulled one way, by the numbers of the other units.

    `stopped` are those in its way with the room before them, `left` those that it is clear of after
    so many mm, 0 for what it only touches or stands beyond.
    """

    stopped: dict[int, float]
    left: dict[int, float]


def rows_of(
    units: Sequence[Unit], boxes: Mapping[str, Sequence[Bounds]], bounds: Mapping[str, Bounds]
) -> dict[Way, list[Row]]:
    """Return for each way and each unit what it meets."""
    rows = {way: [Row({}, {}) for _ in units] for way in WAYS}
    copies = [(index, name) for index, unit in enumerate(units) for name in unit.copies]
    for at, (one, first) in enumerate(copies):
        for two, second in copies[at + 1 :]:
            if one != two:
                for axis in range(3):
                    if abreast(bounds[first], bounds[second], axis):
                        _note(rows, (one, first), (two, second), axis, boxes, bounds)
    return rows


def _note(
    rows: Mapping[Way, Sequence[Row]],
    one: tuple[int, str],
    two: tuple[int, str],
    axis: int,
    boxes: Mapping[str, Sequence[Bounds]],
    bounds: Mapping[str, Bounds],
) -> None:
    for (own, name), (mate, other) in ((one, two), (two, one)):
        # What stops the one on its way stops the other on the way back.
        way = axis, 1
        room = _room(boxes[name], boxes[other], bounds[name], bounds[other], way)
        forward, backward = rows[axis, 1][own], rows[axis, -1][mate]
        if room < inf:
            forward.stopped[mate] = min(forward.stopped.get(mate, inf), room)
            backward.stopped[own] = min(backward.stopped.get(own, inf), room)
        for moving, fixed, row, at, side in (
            (name, other, forward, mate, 1),
            (other, name, backward, own, -1),
        ):
            if _between(bounds[moving], bounds[fixed], (axis, side)) < -SLACK:
                reach = reach_of(bounds[moving], bounds[fixed], (axis, side))
                row.left[at] = max(row.left.get(at, 0.0), reach)


def _room(
    moving: Sequence[Bounds], fixed: Sequence[Bounds], own: Bounds, mate: Bounds, way: Way
) -> float:
    """Return how far something can move before it meets something else, `inf` if it never does."""
    whole = _between(own, mate, way)
    if whole >= -SLACK or _between(mate, own, way) >= -SLACK:
        return whole if whole >= -SLACK else inf
    rooms = (_between(a, b, way) for a in moving for b in fixed if abreast(a, b, way[0]))
    return min((room for room in rooms if room >= -SLACK), default=inf)


def _between(moving: Bounds, fixed: Bounds, way: Way) -> float:
    """Return how far one box is before another that lies ahead of it; negative if it does not."""
    axis, side = way
    return fixed[axis] - moving[axis + 3] if side > 0 else moving[axis] - fixed[axis + 3]


def reach_of(moving: Bounds, fixed: Bounds, way: Way) -> float:
    """Return how far one box moves until it is clear of another on the far side."""
    return -_between(fixed, moving, way)


def abreast(one: Bounds, other: Bounds, axis: int) -> bool:
    """Return whether one box is before or behind the other along an axis, or runs into it."""
    first, second = ((1, 2), (0, 2), (0, 1))[axis]
    return (
        one[first] < other[first + 3] - SLACK
        and other[first] < one[first + 3] - SLACK
        and one[second] < other[second + 3] - SLACK
        and other[second] < one[second + 3] - SLACK
    )


def boxes_of(part: Part, copy: Copy) -> tuple[Bounds, ...]:
    """Return boxes that cover a copy with its square cuts; of a form the wood may stay."""
    cuts = tuple(
        box
        for feature in part.features
        if copy.hand in feature.hands and feature.form is None
        for box in feature.boxes(copy.box, copy.frame)
    )
    found = []
    for box in Solid(copy.box, cuts).split():
        (x, y, z), (u, v, w) = (
            tuple(float(value) for value in corner) for corner in (box.low, box.high)
        )
        found.append((x, y, z, u, v, w))
    return tuple(found)


def around(boxes: Iterable[Bounds]) -> Bounds:
    """Return the smallest box around one or more boxes."""
    rows = tuple(boxes)
    low = [min(box[axis] for box in rows) for axis in range(3)]
    high = [max(box[axis + 3] for box in rows) for axis in range(3)]
    return low[0], low[1], low[2], high[0], high[1], high[2]
