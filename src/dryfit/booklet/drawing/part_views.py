"""A part seen square on its face or on its edge, as it comes from the bench, R on the left.

What is seen is drawn in full, what lies behind is dashed.  A long part is broken out where nothing
is cut.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from typing import Literal

from dryfit.booklet.drawing.canvas import FINE, OUTLINE, Canvas, Pen
from dryfit.booklet.drawing.cut_shapes import ROUND, as_cut
from dryfit.booklet.drawing.rect import Segment
from dryfit.booklet.drawing.ruler import GAP, Ruler
from dryfit.booklet.drawing.shapes import wavy, zigzag
from dryfit.geometry.convex import Vector
from dryfit.geometry.edges import Line
from dryfit.geometry.frame import THICKNESS, WIDTH
from dryfit.geometry.hidden_lines import Scene, picture_lines
from dryfit.geometry.shape import Shape
from dryfit.geometry.solid import Solid
from dryfit.geometry.view import View
from dryfit.joinery.feature import Feature
from dryfit.joinery.wood_left import carving_of
from dryfit.placing.model import Copy, Part

Side = Literal["F", "E"]
"""Which surface looks at the maker."""

HIDDEN = Pen(0.25, (1.8, 1.1))
_FROM_ABOVE = View((0, 0, 1))


@dataclass(frozen=True, slots=True)
class PartView:
    """The lines of a view: x in mm from R, y in mm downwards from its upper long side.

    `waney` are the long sides, upper and lower, that stay as they grew.
    """

    seen: tuple[Segment, ...]
    hidden: tuple[Segment, ...]
    height: float
    marked_above: bool
    waney: tuple[bool, bool] = (False, False)


def part_view(part: Part, copy: Copy, side: Side) -> PartView:
    """Return the view of a copy's hand on its face F or on its edge E.

    `marked_above` says whether the side that is counted from (E on the face, F on the edge) is the
    upper one: with R on the left the hand of the part decides it.
    """
    own = [feature for feature in part.features if copy.hand in feature.hands]
    near = copy.frame.axes[THICKNESS if side == "F" else WIDTH][0]
    shape = as_cut(copy, own).marked(_more_lines(own, copy, near))
    above = (copy.frame.handedness() > 0) == (side == "F")
    height = float(part.width if side == "F" else part.thickness)
    seen, hidden = _lines(shape.mapped(_turned(copy, side, height, above=above)))
    sides = ("E", "E2") if above else ("E2", "E")
    waney = (sides[0] in part.waney, sides[1] in part.waney) if side == "F" else (False, False)
    return PartView(seen, hidden, height, above, waney)


def draw_view(canvas: Canvas, view: PartView, scale: Ruler, top: float) -> None:
    """Draw a view below `top` with its breaks."""
    for lines, pen in ((view.hidden, HIDDEN), (view.seen, OUTLINE)):
        canvas.lines([piece for line in lines for piece in _on_paper(line, scale, top)], pen)
    bottom = top + view.height * scale.scale
    for is_waney, at, down in zip(view.waney, (top, bottom), (-1.0, 1.0), strict=True):
        if is_waney:
            canvas.polyline(wavy(scale.start, scale.end, at, down), FINE)
    for at in scale.breaks():
        for half in (-GAP / 4, GAP / 4):
            canvas.polyline(zigzag(at + half, top, bottom), FINE)


def _turned(copy: Copy, side: Side, height: float, *, above: bool) -> Callable[[Vector], Vector]:
    """Return where a point of the piece comes in the view: along, up, and to the maker."""
    rows = []
    for axis, sign in copy.frame.axes:
        start = float(copy.box.low[axis] if sign > 0 else copy.box.high[axis])
        rows.append((axis, float(sign), start))

    def turned(point: Vector) -> Vector:
        along, across, deep = (sign * (point[axis] - start) for axis, sign, start in rows)
        up, near = (across, -deep) if side == "F" else (deep, -across)
        return along, -up if above else up - height, near

    return turned


def _lines(shape: Shape) -> tuple[tuple[Segment, ...], tuple[Segment, ...]]:
    scene = Scene([shape], _FROM_ABOVE)
    pieces = list(scene.pieces())
    seen = picture_lines(scene, (piece for piece in pieces if piece.visible))
    hidden = picture_lines(
        scene,
        (piece for piece in pieces if not piece.visible),
        under=(piece for piece in pieces if piece.visible),
    )
    return tuple(map(_down, seen)), tuple(map(_down, hidden))


def _down(line: Segment) -> Segment:
    (x, y), (u, v) = line
    return (x, -y), (u, -v)


def _on_paper(line: Segment, scale: Ruler, top: float) -> Iterator[Segment]:
    """Yield a line as far as it lies in the stretches that are drawn."""
    (x, y), (u, v) = sorted(line)
    for index, (begin, end) in enumerate(scale.stretches):
        # Wood runs on half way into a break, where it is torn off.
        spare = GAP / 4 / scale.scale
        low = begin - spare if index else begin
        high = end + spare if index < len(scale.stretches) - 1 else end
        first, last = max(x, low), min(u, high)
        if first > last or (first == last and x != u):
            continue
        ends = []
        for at in (first, last):
            down = y if u == x else y + (v - y) * (at - x) / (u - x)
            on_paper = scale.start + scale.direction * _paper(at, index, scale)
            ends.append((on_paper, top + down * scale.scale))
        if x == u:
            ends = [(ends[0][0], top + y * scale.scale), (ends[0][0], top + v * scale.scale)]
        yield ends[0], ends[1]


def _paper(at: float, index: int, scale: Ruler) -> float:
    """Return where a place of one stretch comes on paper, also a little beyond its ends."""
    before = sum(end - begin for begin, end in scale.stretches[:index]) * scale.scale
    return before + index * GAP + (at - scale.stretches[index][0]) * scale.scale


def _more_lines(features: Sequence[Feature], copy: Copy, near: int) -> Iterator[Line]:
    """Yield the sides of bores, and the outlines of what is known by its box only.

    `near` is the axis that runs to the viewer.
    """
    for feature in features:
        box = feature.box(copy.box, copy.frame)
        if feature.kind == ROUND and feature.form is None:
            axis, _ = feature.region(copy.box, copy.frame).face
            low, high = tuple(map(float, box.low)), tuple(map(float, box.high))
            yield from _bore(low, high, axis, near) if axis != near else ()
        elif carving_of(feature, copy.box, copy.frame) is None:
            inner = box.overlap(copy.box) or box
            for edge in Solid(inner).edges():
                ends = [tuple(map(float, end)) for end in (edge.start, edge.end)]
                yield Line(_three(ends[0]), _three(ends[1]))


def _bore(low: Sequence[float], high: Sequence[float], axis: int, near: int) -> Iterator[Line]:
    """Yield two lines down the sides of a bore and one across its ground, as they are seen."""
    (across,) = {0, 1, 2} - {axis, near}
    corners = []
    for side in (low, high):
        for end in (low, high):
            point = [(a + b) / 2 for a, b in zip(low, high, strict=True)]
            point[across], point[axis] = side[across], end[axis]
            corners.append(_three(point))
    for one, two in ((0, 1), (2, 3), (0, 2), (1, 3)):
        yield Line(corners[one], corners[two])


def _three(point: Sequence[float]) -> Vector:
    return point[0], point[1], point[2]
