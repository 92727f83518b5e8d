"""The piece as it will stand: a hidden-line view with lettered parts and its overall sizes."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from dryfit.booklet.drawing.balloons import Wanted, draw_balloons
from dryfit.booklet.drawing.canvas import FINE, Canvas, Pen, Point, Rect, Segment, Svg
from dryfit.booklet.drawing.cut_solids import cut_solid, placed_copies
from dryfit.booklet.drawing.dimension import dimension_along
from dryfit.booklet.drawing.mitred_corners import corners_of, seen_seams
from dryfit.booklet.text import Say
from dryfit.geometry.box import Box, Triple
from dryfit.geometry.hidden_lines import Scene, View, picture_lines
from dryfit.geometry.solid import Solid
from dryfit.placing.model import Copy, Model, Part

FROM_FRONT_RIGHT = View((5, -9, 6))
"""A view in whole numbers that reads well for long low pieces and lays no edges together."""

WIDTH = 90.0
HEIGHT = 88.0
_OFFSET = 9.0
_COPIES_TRIED = 6
_TARGETS = 6
_LINE = Pen(0.36)


@dataclass(frozen=True, slots=True)
class Placement:
    """How the picture plane lies on paper: scale, and the paper's origin in picture mm."""

    view: View
    scale: float
    left: float
    top: float

    def on_paper(self, point: Triple) -> Point:
        """Return where a point of the piece comes on paper."""
        return self.from_picture(self.view.project(point))

    def from_picture(self, point: Point) -> Point:
        """Return where a point of the picture plane comes on paper."""
        return (point[0] - self.left) * self.scale, (self.top - point[1]) * self.scale


def piece_drawing(model: Model, labels: Mapping[str, str], *, sizes: bool = True) -> Svg:
    """Return the whole piece in a hidden-line view, each part lettered once.

    `labels` maps a part's name to its letter; parts without one get no balloon.  `sizes` adds the
    overall width, depth and height.
    """
    copies = placed_copies(model)
    canvas = Canvas()
    bought = [Solid(copy.box, ()) for thing in model.bought for copy in thing.copies]
    room = (WIDTH, HEIGHT)
    scene, placement, drawn = draw_scene(canvas, copies, FROM_FRONT_RIGHT, room, bought)
    lines, rooms = _overall(canvas, model, placement) if sizes else ((), ())
    wanted = [
        Wanted(labels[part.name], targets)
        for part in model.parts
        if part.name in labels and (targets := _targets(scene, part.copies, part, placement))
    ]
    outline = [placement.on_paper(corner) for _, copy in copies for corner in corners(copy.box)]
    draw_balloons(canvas, wanted, outline, lines=lines, rooms=rooms, drawn=drawn)
    return canvas.finish(f"{model.piece}, seen from the front right")


def draw_scene(
    canvas: Canvas,
    copies: Sequence[tuple[Part, Copy]],
    view: View,
    room: tuple[float, float],
    others: Sequence[Solid] = (),
) -> tuple[Scene, Placement, tuple[Segment, ...]]:
    """Draw the visible lines of copies as large as fits the room (width, height in mm).

    `others` are solids that are no copies of parts, such as bought things.
    """
    mitred = corners_of(copies)
    blocks = [Solid(corner.box, ()) for corner in mitred]
    solids = [*(cut_solid(part, copy) for part, copy in copies), *blocks, *others]
    scene = Scene(solids, view)
    placement = fitted(solids, view, room)
    pieces = (piece for piece in scene.pieces() if piece.visible)
    own = (piece for piece in pieces if not any(each.has_no(piece.edge) for each in mitred))
    seen = (*picture_lines(scene, own), *seen_seams(scene, mitred))
    drawn = tuple(
        (placement.from_picture(start), placement.from_picture(end)) for start, end in seen
    )
    canvas.lines(drawn, _LINE)
    return scene, placement, drawn


def fitted(solids: Sequence[Solid], view: View, room: tuple[float, float]) -> Placement:
    """Return the placement that makes the solids as large as fits the room."""
    points = [view.project(corner) for solid in solids for corner in corners(solid.outside)]
    left, right = min(x for x, _ in points), max(x for x, _ in points)
    bottom, top = min(y for _, y in points), max(y for _, y in points)
    scale = min(room[0] / (right - left), room[1] / (top - bottom))
    return Placement(view, scale, left, top)


def corners(box: Box) -> Iterator[Triple]:
    """Yield the eight corners of a box."""
    for x in (box.low[0], box.high[0]):
        for y in (box.low[1], box.high[1]):
            for z in (box.low[2], box.high[2]):
                yield x, y, z


def _overall(
    canvas: Canvas, model: Model, placement: Placement
) -> tuple[tuple[Segment, ...], tuple[Rect, ...]]:
    """Draw the overall sizes along the lower front, the lower right and the back right edge."""
    zero = Fraction(0)
    wide, deep, high = model.overall
    say = Say(model.display)
    rows = (
        ((zero, zero, zero), (wide, zero, zero), wide, (0.0, _OFFSET), -1.0),
        ((wide, zero, zero), (wide, deep, zero), deep, (0.0, _OFFSET), 1.0),
        ((wide, deep, zero), (wide, deep, high), high, (_OFFSET, 0.0), 1.0),
    )
    lines: list[Segment] = []
    rooms = []
    for start, end, size, (right, down), outwards in rows:
        ends = [placement.on_paper(point) for point in (start, end)]
        moved = [(x + right, y + down) for x, y in ends]
        extension = [
            ((x + right * 0.2, y + down * 0.2), (x + right * 1.12, y + down * 1.12))
            for x, y in ends
        ]
        canvas.lines(extension, FINE)
        figure = (say.size(size),)
        line, room = dimension_along(canvas, moved[0], moved[1], figure, outwards=outwards)
        lines += [line, *extension]
        rooms.append(room)
    return tuple(lines), tuple(rooms)


def _targets(
    scene: Scene, copies: Sequence[Copy], part: Part, placement: Placement
) -> tuple[Point, ...]:
    """Return points on paper where the part is seen best: visible with most of what is round."""
    found: list[tuple[int, Point]] = []
    for copy in copies[:_COPIES_TRIED]:
        box = max(cut_solid(part, copy).largest_boxes(), key=lambda box: box.volume())
        for face in range(3):
            found += _seen_on_face(scene, box, face, placement)
    found.sort(key=lambda target: (-target[0], target[1]))
    return tuple(point for _, point in found[:_TARGETS])


def _seen_on_face(
    scene: Scene, box: Box, face: int, placement: Placement
) -> Iterator[tuple[int, Point]]:
    """Yield the visible points of a lattice on the face towards the viewer, with their worth.

    A point is worth the number of its neighbours that are seen too.
    """
    axes = [axis for axis in range(3) if axis != face]
    long = max(axes, key=box.extent)
    counts = {axis: 9 if axis == long else 3 for axis in axes}
    seen: dict[tuple[int, int], Point] = {}
    for i in range(1, counts[axes[0]] + 1):
        for j in range(1, counts[axes[1]] + 1):
            point = list(box.high if scene.view.towards[face] > 0 else box.low)
            for axis, step in zip(axes, (i, j), strict=True):
                point[axis] = box.low[axis] + box.extent(axis) * step / (counts[axis] + 1)
            at = (point[0], point[1], point[2])
            if not scene.hides(at):
                seen[i, j] = placement.on_paper(at)
    for (i, j), at_paper in seen.items():
        around = ((i + a, j + b) for a in (-1, 0, 1) for b in (-1, 0, 1))
        yield sum(place in seen for place in around), at_paper
