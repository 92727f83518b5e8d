"""What rounding leaves of the end of a leg: a peg of facets, for drawings.

The boxes that go from the four sides tell the length of the peg and the square that it fills.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from math import cos, hypot, pi, sin

from dryfit.geometry.box import Box
from dryfit.geometry.carving import Carving
from dryfit.geometry.convex import Plane
from dryfit.geometry.frame import LENGTH, Frame
from dryfit.joinery.feature import Feature
from dryfit.kinds.roles import ROUND

FACETS = 16
"""Facets round a peg: no corner of theirs shows on paper.  The first looks along an axis."""


def pegs_of(features: Iterable[Feature], outer: Box, frame: Frame) -> Iterator[Carving]:
    """Yield what goes round each peg of a copy with this box and frame, the peg left standing."""
    ends: dict[tuple[object, object], list[Box]] = {}
    axis = frame.axes[LENGTH][0]
    for feature in features:
        if feature.role == ROUND:
            box = feature.box(outer, frame)
            ends.setdefault((box.low[axis], box.high[axis]), []).append(box)
    for taken in ends.values():
        yield _round(taken, outer, axis)


def _round(taken: Sequence[Box], outer: Box, axis: int) -> Carving:
    low, high = list(outer.low), list(outer.high)
    stub = list(outer.low), list(outer.high)
    stub[0][axis], stub[1][axis] = taken[0].low[axis], taken[0].high[axis]
    across = tuple(each for each in range(3) if each != axis)
    for box in taken:
        for each in across:
            if box.extent(each) < outer.extent(each):
                if box.low[each] == outer.low[each]:
                    low[each] = box.high[each]
                else:
                    high[each] = box.low[each]
    middle = [float(low[each] + high[each]) / 2 for each in across]
    half = [float(high[each] - low[each]) / 2 for each in across]
    planes = []
    for step in range(FACETS):
        turn = 2 * pi * step / FACETS
        shares = cos(turn) / half[0], sin(turn) / half[1]
        length = hypot(*shares)
        normal = [0.0, 0.0, 0.0]
        for each, share in zip(across, shares, strict=True):
            normal[each] = share / length
        offset = 1 / length + sum(
            normal[each] * at for each, at in zip(across, middle, strict=True)
        )
        planes.append(Plane((normal[0], normal[1], normal[2]), offset))
    (a, b, c), (x, y, z) = stub
    return Carving(Box((a, b, c), (x, y, z)), (tuple(planes),), curved=True)
