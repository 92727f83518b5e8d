"""Mitred corners in a view of boxes: the corner as one block, with the slanting seam on it.

Two members of a mitre overlap as boxes.  Both are drawn up to the corner, the corner itself as a
block of its own; the lines between them, which the wood does not have, are left out again.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from dryfit.booklet.drawing.canvas import Point
from dryfit.geometry.box import Box, Triple
from dryfit.geometry.hidden_lines import Scene
from dryfit.geometry.solid import Edge
from dryfit.joinery.form import Side
from dryfit.placing.model import Copy, Part

_STEPS = 24
"""Pieces of a seam that are told apart as seen or hidden."""


@dataclass(frozen=True, slots=True)
class Corner:
    """The box of a mitred corner; `outer` are its two faces on the outside, by axis and side."""

    box: Box
    outer: tuple[Side, Side]

    def has_no(self, edge: Edge) -> bool:
        """Return whether an edge is a line of the drawing's boxes, not of the wood."""
        if not all(self._holds(point) for point in (edge.start, edge.end)):
            return False
        inner = [self._inner(axis, edge.start) for axis, _ in self.outer]
        if edge.axis in {axis for axis, _ in self.outer}:
            own = [axis for axis, _ in self.outer].index(edge.axis)
            return inner[1 - own]
        # An upright line is the wood's at the outer and at the inner corner only.
        return inner[0] != inner[1]

    def seams(self) -> tuple[tuple[Triple, Triple], ...]:
        """Return the seam on either face, from the outer corner to the inner one."""
        axes = [axis for axis, _ in self.outer]
        third = 3 - axes[0] - axes[1]
        rows = []
        for at in (self.box.low[third], self.box.high[third]):
            start, end = [at] * 3, [at] * 3
            for axis, side in self.outer:
                low, high = self.box.low[axis], self.box.high[axis]
                start[axis], end[axis] = (high, low) if side > 0 else (low, high)
            rows.append(((start[0], start[1], start[2]), (end[0], end[1], end[2])))
        return tuple(rows)

    def _holds(self, point: Triple) -> bool:
        return all(self.box.low[axis] <= point[axis] <= self.box.high[axis] for axis in range(3))

    def _inner(self, axis: int, point: Triple) -> bool:
        side = dict(self.outer)[axis]
        return point[axis] == (self.box.low[axis] if side > 0 else self.box.high[axis])


def corners_of(copies: Sequence[tuple[Part, Copy]]) -> tuple[Corner, ...]:
    """Return the mitred corners of the copies, each once."""
    found: dict[Box, Corner] = {}
    for part, copy in copies:
        for feature in part.features:
            if feature.role != "mitre" or copy.hand not in feature.hands:
                continue
            region = feature.region(copy.box, copy.frame)
            assert region.toward is not None
            axis, side = region.toward
            found.setdefault(region.box, Corner(region.box, (region.face, (axis, -side))))
    return tuple(found.values())


def seen_seams(scene: Scene, corners: Sequence[Corner]) -> Iterator[tuple[Point, Point]]:
    """Yield what is seen of the slanting seams, as lines of the picture."""
    for corner in corners:
        for start, end in corner.seams():
            for first, last in _seen(scene, start, end):
                yield scene.view.project(first), scene.view.project(last)


def _seen(scene: Scene, start: Triple, end: Triple) -> Iterator[tuple[Triple, Triple]]:
    begin: int | None = None
    for step in range(_STEPS + 1):
        middle = _between(start, end, Fraction(2 * step + 1, 2 * _STEPS))
        visible = step < _STEPS and not scene.hides(middle)
        if visible and begin is None:
            begin = step
        if not visible and begin is not None:
            at = (Fraction(begin, _STEPS), Fraction(step, _STEPS))
            yield _between(start, end, at[0]), _between(start, end, at[1])
            begin = None


def _between(start: Triple, end: Triple, share: Fraction) -> Triple:
    x, y, z = (a + (b - a) * share for a, b in zip(start, end, strict=True))
    return x, y, z
