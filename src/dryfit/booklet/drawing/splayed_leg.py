"""The four sides of a splayed leg unrolled, with the line of its shoulder from corner to corner."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from math import hypot

from dryfit.booklet.drawing.canvas import BOLD, FINE, Canvas
from dryfit.booklet.drawing.dimension import FIGURE
from dryfit.booklet.drawing.rect import Point
from dryfit.booklet.drawing.ruler import GAP, ruler
from dryfit.booklet.drawing.shapes import caption, draw_body, draw_mark
from dryfit.booklet.text import Say, Text
from dryfit.joinery.splay import outward_sides, shoulder_corners
from dryfit.kinds.roles import ROUND
from dryfit.placing.model import Model, Part
from dryfit.plan.plan import Step

_ALL = 122.0
_FIGURES = 26.0
_TALLEST = 15.0
"""Paper mm of the widest side; the four of them and both hands share a page."""
_AROUND = 22.0
_SIGHT = 8.0
_RIGHT = ("B", "E", "F", "E2", "B", "E")
_LEFT = ("B", "E2", "F", "E", "B", "E2")
"""The sides as they follow one another with R on the left, F looking up, by the hand of a leg."""


def splayed_in(model: Model, step: Step) -> tuple[Part, ...]:
    """Return the splayed parts whose round tenons are cut in a step."""
    cut = {
        (work.part, name) for op in step.operations for work in op.work for name in work.features
    }
    return tuple(
        part
        for part in model.parts
        if part.sloped is not None
        and any((part.name, each.id) in cut for each in part.features if each.role == ROUND)
    )


def draw_splayed(canvas: Canvas, parts: Sequence[Part], say: Say, top: float) -> float:
    """Draw each hand of each part below what stands there; return where the last one ends."""
    for part in parts:
        for hand in part.hands():
            top = _unrolled(canvas, part, hand, say, top)
    return top


def draw_sight_line(canvas: Canvas, middle: Point, toward: Point) -> None:
    """Draw the line along which a hole is bored aslant, to the side that the bit leans to."""
    x, y = middle
    along, across = toward
    size = _SIGHT / hypot(along, across)
    end = (x + along * size, y + across * size)
    canvas.lines([(middle, end)], BOLD)
    canvas.dot(end)


def _unrolled(canvas: Canvas, part: Part, hand: str, say: Say, top: float) -> float:
    assert part.sloped is not None
    sloped = part.sloped
    copy = next(each for each in part.copies if each.hand == hand)
    order = _RIGHT if copy.frame.handedness() > 0 else _LEFT
    hands = f", hand {hand}" if len(part.hands()) > 1 else ""
    title = f"{part.name}{hands}, its sides unrolled: the shoulder from R"
    top = caption(canvas, 0.0, top, title, bold=True)
    corners = shoulder_corners(
        outward_sides(each.slopes for each in part.features), sloped, (part.width, part.thickness)
    )
    least = float(min(corners.values()))
    scale = min(1.0, _TALLEST / float(max(part.width, part.thickness)))
    length = float(sloped.length)
    around = _AROUND / scale
    shown = ruler(
        length, [(0.0, around), (least - around, length)], room=_ALL - _FIGURES, scale=scale
    )
    points = []
    y = top
    for before, side in pairwise(order):
        corner = corners[frozenset((before, side))]
        points.append((shown.at(float(corner)), y))
        canvas.text((shown.end + 2.0, y), (say.setting(corner),), size=FIGURE, anchor="start")
        if len(points) == len(order) - 1:
            break
        high = float(part.width if side in {"F", "B"} else part.thickness) * scale
        draw_mark(canvas, (12.0, y + high / 2), side)
        y += high
    draw_body(canvas, 0.0, shown.end, top, y, breaks=shown.breaks())
    (broken,) = shown.breaks() or (shown.end,)
    for _, level in points[1:-1]:
        canvas.lines(
            [
                ((0.0, level), (broken - GAP / 4, level)),
                ((broken + GAP / 4, level), (shown.end, level)),
            ],
            FINE,
        )
    draw_mark(canvas, (4.5, (top + y) / 2), "R")
    canvas.polyline(points, BOLD)
    sizes = [say.size(each) for each in (sloped.length, part.width, part.thickness)]
    words: Text = (sizes[0], " long, both ends square; ", sizes[1], " x ", sizes[2])
    canvas.text((0.0, y + 5.5), words, anchor="start")
    return y + 11.0
