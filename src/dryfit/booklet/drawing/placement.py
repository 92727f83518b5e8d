"""Where a view of the piece lies on paper."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from dryfit.booklet.drawing.rect import Point
from dryfit.geometry.box import Triple
from dryfit.geometry.convex import Vector
from dryfit.geometry.view import View


@dataclass(frozen=True, slots=True)
class Placement:
    """How the picture plane lies on paper: scale, and the paper's origin in picture mm."""

    view: View
    scale: float
    left: float
    top: float

    def on_paper(self, point: Triple | Vector) -> Point:
        """Return where a point of the piece comes on paper."""
        return self.from_picture(self.view.project(point))

    def from_picture(self, point: Point) -> Point:
        """Return where a point of the picture plane comes on paper."""
        return (point[0] - self.left) * self.scale, (self.top - point[1]) * self.scale


def fitted(outer: Sequence[Triple | Vector], view: View, room: tuple[float, float]) -> Placement:
    """Return the placement that makes what lies within these corners as large as fits the room."""
    points = [view.project(corner) for corner in outer]
    left, right = min(x for x, _ in points), max(x for x, _ in points)
    bottom, top = min(y for _, y in points), max(y for _, y in points)
    scale = min(room[0] / (right - left), room[1] / (top - bottom))
    return Placement(view, scale, left, top)
