"""The piece as it will stand: a hidden-line view with lettered parts and its overall sizes."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from fractions import Fraction

from dryfit.booklet.drawing.balloons import Wanted, draw_balloons
from dryfit.booklet.drawing.canvas import FINE, Canvas, Pen, Svg
from dryfit.booklet.drawing.cut_shapes import cut_shapes, placed_copies
from dryfit.booklet.drawing.dimension import dimension_along
from dryfit.booklet.drawing.placement import Placement, fitted
from dryfit.booklet.drawing.rect import Rect, Segment
from dryfit.booklet.drawing.targets import targets_on
from dryfit.booklet.text import Say
from dryfit.geometry.box import Box, Triple
from dryfit.geometry.convex import Vector
from dryfit.geometry.hidden_lines import Piece, Scene, picture_lines
from dryfit.geometry.shape import plain
from dryfit.geometry.solid import Solid
from dryfit.geometry.view import View
from dryfit.placing.model import Copy, Model, Part

FROM_FRONT_RIGHT = View((5, -9, 6))
"""A view in whole numbers that reads well for long low pieces and lays no edges together."""

WIDTH = 90.0
HEIGHT = 88.0
_OFFSET = 9.0
LINE = Pen(0.36)

FINEST = 0.8
"""What is smaller on paper, of eased edges and holes, is not drawn; mm."""


def piece_drawing(model: Model, labels: Mapping[str, str], *, sizes: bool = True) -> Svg:
    """Return the whole piece in a hidden-line view, each part lettered once.

    `labels` maps a part's name to its letter; parts without one get no balloon.  `sizes` adds the
    overall width, depth and height.
    """
    copies = placed_copies(model)
    canvas = Canvas()
    bought = [copy.box for thing in model.bought for copy in thing.copies]
    room = (WIDTH, HEIGHT)
    scene, placement, drawn = draw_scene(canvas, copies, FROM_FRONT_RIGHT, room, bought)
    shapes = dict(zip((copy.name for _, copy in copies), scene.shapes, strict=False))
    lines, rooms = _overall(canvas, model, placement) if sizes else ((), ())
    wanted = [
        Wanted(labels[part.name], targets)
        for part in model.parts
        if part.name in labels
        and (targets := targets_on(scene, [shapes[copy.name] for copy in part.copies], placement))
    ]
    outline = [placement.on_paper(corner) for _, copy in copies for corner in copy_corners(copy)]
    draw_balloons(canvas, wanted, outline, lines=lines, rooms=rooms, drawn=drawn)
    return canvas.finish(f"{model.piece}, seen from the front right")


def draw_scene(
    canvas: Canvas,
    copies: Sequence[tuple[Part, Copy]],
    view: View,
    room: tuple[float, float],
    others: Sequence[Box] = (),
) -> tuple[Scene, Placement, tuple[Segment, ...]]:
    """Draw the visible lines of copies as large as fits the room (width, height in mm).

    `others` are boxes that are no copies of parts, such as bought things.
    """
    outer = [corner for _, copy in copies for corner in copy_corners(copy)]
    outer += [corner for box in others for corner in corners(box)]
    placement = fitted(outer, view, room)
    finest = FINEST / placement.scale
    shapes = [*cut_shapes(copies, finest=finest), *(plain(Solid(box)) for box in others)]
    scene = Scene(shapes, view)
    drawn = draw_seen(
        canvas, placement, scene, (piece for piece in scene.pieces() if piece.visible)
    )
    return scene, placement, drawn


def draw_seen(
    canvas: Canvas, placement: Placement, scene: Scene, pieces: Iterable[Piece]
) -> tuple[Segment, ...]:
    """Draw pieces of lines as outlines; return them on paper."""
    drawn = tuple(
        (placement.from_picture(start), placement.from_picture(end))
        for start, end in picture_lines(scene, pieces)
    )
    canvas.lines(drawn, LINE)
    return drawn


def copy_corners(copy: Copy) -> tuple[Triple | Vector, ...]:
    """Return the corners of a copy's outside where it stands, leaning as it does."""
    found = tuple(corners(copy.box))
    if copy.lean is None:
        return found
    return copy.lean.corners(copy.box)


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
