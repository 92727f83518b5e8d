"""The copies of a piece as they come from the bench: boxes less their cuts, leaning as they do."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from fractions import Fraction
from itertools import pairwise
from math import cos, pi, sin

from dryfit.booklet.drawing.sloping_side import turned_out
from dryfit.geometry.box import Box
from dryfit.geometry.convex import Vector
from dryfit.geometry.edges import Line
from dryfit.geometry.frame import SURFACES
from dryfit.geometry.lean import Lean
from dryfit.geometry.shape import Shape, carved
from dryfit.joinery.feature import Feature
from dryfit.joinery.round_left import FACETS, pegs_of
from dryfit.joinery.wood_left import carving_of
from dryfit.kinds.roles import ROUND as ROUND_TENON
from dryfit.kinds.roles import TENON_HOLE
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
        if part.slopes_out is not None:
            shape = turned_out(part, copy, shape)
        shapes.append(shape if copy.lean is None else shape.mapped(leaning(copy.lean)))
    return tuple(shapes)


def as_cut(copy: Copy, features: Sequence[Feature]) -> Shape:
    """Return a copy in its design box."""
    flat = (each for each in features if each.role != ROUND_TENON)
    carvings = [carving_of(feature, copy.box, copy.frame) for feature in flat]
    carvings += pegs_of(features, copy.box, copy.frame)
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
    axis, entered = feature.region(copy.box, copy.frame).face
    first, second = (each for each in range(3) if each != axis)
    for sign in (-1, 1):
        at = box.low[axis] if sign < 0 else box.high[axis]
        outside = copy.box.low[axis] if sign < 0 else copy.box.high[axis]
        if at == outside:
            ring = _ring(box, (first, second), at, for_peg=feature.role == TENON_HOLE)
            if sign == entered:
                yield from ring
            else:
                yield from (line.mapped(_leant(feature, copy)) for line in ring)


def _leant(feature: Feature, copy: Copy) -> Callable[[Vector], Vector]:
    """Return where a point of the far mouth is: a hole leans away from where the foot stands."""
    by = [0.0, 0.0, 0.0]
    for surface, slope in feature.slopes:
        direction, far = SURFACES[surface]
        axis, sign = copy.frame.axes[direction]
        by[axis] -= (sign if far else -sign) * float(slope * feature.depth)

    def moved(point: Vector) -> Vector:
        return point[0] + by[0], point[1] + by[1], point[2] + by[2]

    return moved


def _ring(box: Box, across: tuple[int, int], at: Fraction, *, for_peg: bool) -> Iterator[Line]:
    """Yield the sides of a mouth; that of a peg's hole has the facets of the peg."""
    sides, ahead, wider = (FACETS, 0.5, 1 / cos(pi / FACETS)) if for_peg else (_SIDES, 0.0, 1.0)
    corners: list[Vector] = []
    for step in range(sides + 1):
        turn = 2 * pi * (step % sides + ahead) / sides
        point = [float(at)] * 3
        for each, share in zip(across, (cos(turn), sin(turn)), strict=True):
            low, high = float(box.low[each]), float(box.high[each])
            point[each] = (low + high) / 2 + share * wider * (high - low) / 2
        corners.append((point[0], point[1], point[2]))
    yield from (Line(*ends) for ends in pairwise(corners))
