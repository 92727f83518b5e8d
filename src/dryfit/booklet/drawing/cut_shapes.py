"""The copies of a piece as they come from the bench: boxes less their cuts, leaning as they do."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from fractions import Fraction
from itertools import pairwise
from math import cos, pi, sin

from dryfit.geometry.box import Box
from dryfit.geometry.convex import Vector
from dryfit.geometry.edges import Line
from dryfit.geometry.lean import Lean
from dryfit.geometry.shape import Shape, carved
from dryfit.joinery.feature import Feature
from dryfit.joinery.wood_left import carving_of
from dryfit.placing.model import Copy, Model, Part

ROUND = "hole"
"""Kind of feature that is drilled: of it only the mouths are drawn."""

_SIDES = 16
"""Sides of the polygon that stands for the mouth of a hole."""


def cut_shapes(copies: Iterable[tuple[Part, Copy]], *, finest: float = 0.0) -> tuple[Shape, ...]:
    """Return each copy with every cut that its hand carries, where it really stands.

    What is smaller than `finest` mm is left out, of eased edges and holes: on paper its lines would
    run together.
    """
    known: dict[tuple[str, tuple[str, ...]], tuple[Copy, Shape]] = {}
    shapes = []
    for part, copy in copies:
        own = [each for each in part.features if copy.hand in each.hands]
        seen = [feature for feature in own if not _too_fine(feature, finest)]
        key = part.name, tuple(feature.id for feature in seen)
        if key not in known:
            known[key] = copy, as_cut(copy, seen)
        first, shape = known[key]
        if first is not copy:
            shape = shape.mapped(_as_other(first, copy))
        shapes.append(shape if copy.lean is None else shape.mapped(leaning(copy.lean)))
    return tuple(shapes)


def as_cut(copy: Copy, features: Sequence[Feature]) -> Shape:
    """Return a copy in its design box."""
    carvings = (carving_of(feature, copy.box, copy.frame) for feature in features)
    shape = carved(copy.box, [each for each in carvings if each is not None])
    drilled = (feature for feature in features if feature.kind == ROUND and feature.form is None)
    return shape.marked(line for each in drilled for line in _mouths(each, copy))


def _as_other(first: Copy, other: Copy) -> Callable[[Vector], Vector]:
    """Return where another copy of the part has a point of the first one."""
    rows = []
    for (axis, sign), (own, turned) in zip(first.frame.axes, other.frame.axes, strict=True):
        start = first.box.low[axis] if sign > 0 else first.box.high[axis]
        to = other.box.low[own] if turned > 0 else other.box.high[own]
        rows.append((axis, own, float(sign * turned), float(start), float(to)))

    def placed(point: Vector) -> Vector:
        moved = [0.0, 0.0, 0.0]
        for axis, own, sign, start, to in rows:
            moved[own] = to + sign * (point[axis] - start)
        return moved[0], moved[1], moved[2]

    return placed


def placed_copies(model: Model) -> tuple[tuple[Part, Copy], ...]:
    """Return every copy with its part, in the order of the notes."""
    return tuple((part, copy) for part in model.parts for copy in part.copies)


def leaning(lean: Lean) -> Callable[[Vector], Vector]:
    """Return where a lean puts a point of the design box."""
    across, back = (float(step) for step in lean.per_down)
    level = float(lean.level)

    def placed(point: Vector) -> Vector:
        down = level - point[2]
        return point[0] + across * down, point[1] + back * down, point[2]

    return placed


def _too_fine(feature: Feature, finest: float) -> bool:
    if feature.kind == "profile":
        return float(max(feature.depth, _narrower(feature))) < finest
    return feature.kind == ROUND and float(_narrower(feature)) < finest


def _narrower(feature: Feature) -> Fraction:
    return min(end - start for start, end in (feature.along, feature.across))


def _mouths(feature: Feature, copy: Copy) -> Iterator[Line]:
    """Yield the round mouths of a hole, on the far side too where it goes through."""
    box = feature.box(copy.box, copy.frame)
    axis, _ = feature.region(copy.box, copy.frame).face
    first, second = (each for each in range(3) if each != axis)
    for sign in (-1, 1):
        at = box.low[axis] if sign < 0 else box.high[axis]
        outside = copy.box.low[axis] if sign < 0 else copy.box.high[axis]
        if at == outside:
            yield from _ring(box, (first, second), at)


def _ring(box: Box, across: tuple[int, int], at: Fraction) -> Iterator[Line]:
    corners: list[Vector] = []
    for step in range(_SIDES + 1):
        turn = 2 * pi * (step % _SIDES) / _SIDES
        point = [float(at)] * 3
        for each, share in zip(across, (cos(turn), sin(turn)), strict=True):
            low, high = float(box.low[each]), float(box.high[each])
            point[each] = (low + high) / 2 + share * (high - low) / 2
        corners.append((point[0], point[1], point[2]))
    yield from (Line(*ends) for ends in pairwise(corners))
