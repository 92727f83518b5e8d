"""The four sides of a splayed leg unrolled, with the line of its shoulder from corner to corner."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from itertools import pairwise
from math import hypot

from dryfit.booklet.drawing.canvas import BOLD, FINE, Canvas
from dryfit.booklet.drawing.dimension import FIGURE
from dryfit.booklet.drawing.rect import Point, Rect
from dryfit.booklet.drawing.ruler import GAP, Ruler, ruler
from dryfit.booklet.drawing.shapes import caption, draw_body, draw_mark
from dryfit.booklet.text import Amount, Say, Text
from dryfit.joinery.feature import Feature
from dryfit.joinery.splay import outward_sides, shoulder_corners
from dryfit.kinds.roles import ROUND, TENON_HOLE
from dryfit.placing.ladders import from_end
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
    holes = [each for each in part.features if _is_hole(each) and hand in each.hands]
    told = "shoulder and middles" if holes else "the shoulder"
    title = f"{part.name}{hands}, its sides unrolled: {told} from R"
    top = caption(canvas, 0.0, top, title, bold=True)
    corners = shoulder_corners(
        outward_sides(each.slopes for each in part.features), sloped, (part.width, part.thickness)
    )
    least = float(min(corners.values()))
    scale = min(1.0, _TALLEST / float(max(part.width, part.thickness)))
    length = float(sloped.length)
    around = _AROUND / scale
    wanted = [(0.0, around), (least - around, length)]
    wanted += [(at - around / 3, at + around) for at in map(float, _places(part, holes))]
    shown = ruler(length, wanted, room=_ALL - _FIGURES, scale=scale)
    points: list[Point] = []
    bored: list[tuple[Feature, Fraction, float]] = []
    y = top
    for before, side in pairwise(order):
        corner = corners[frozenset((before, side))]
        points.append((shown.at(float(corner)), y))
        canvas.text((shown.end + 2.0, y), (say.setting(corner),), size=FIGURE, anchor="start")
        if len(points) == len(order) - 1:
            break
        high = float(part.width if side in {"F", "B"} else part.thickness) * scale
        draw_mark(canvas, (12.0, y + high / 2), side)
        bored += _holes(part, [each for each in holes if each.surface == side], before, (y, scale))
        y += high
    draw_body(canvas, 0.0, shown.end, top, y, breaks=shown.breaks())
    starts = (0.0, *(broken + GAP / 4 for broken in shown.breaks()))
    ends = (*(broken - GAP / 4 for broken in shown.breaks()), shown.end)
    for _, level in points[1:-1]:
        canvas.lines(
            [((x, level), (end, level)) for x, end in zip(starts, ends, strict=True)], FINE
        )
    for hole, at, level in bored:
        _hole(canvas, hole, (float(at), level), shown, say.setting(at))
    draw_mark(canvas, (4.5, (top + y) / 2), "R")
    canvas.polyline(points, BOLD)
    sizes = [say.size(each) for each in (sloped.length, part.width, part.thickness)]
    words: Text = (sizes[0], " long, both ends square; ", sizes[1], " x ", sizes[2])
    canvas.text((0.0, y + 5.5), words, anchor="start")
    return y + 11.0


def _places(part: Part, holes: Sequence[Feature]) -> tuple[Fraction, ...]:
    """Return where the middles of holes stand from R, along the slope."""
    middles = (sum(each.along, Fraction(0)) / 2 for each in holes)
    return tuple(middle + from_end(part, middle) for middle in middles)


def _is_hole(feature: Feature) -> bool:
    return feature.role == TENON_HOLE or feature.kind == "mortise"


def _hole(
    canvas: Canvas, hole: Feature, middle: tuple[float, float], shown: Ruler, figure: Amount
) -> None:
    """Draw a hole or a mortise with the figure of its middle, which is so far along and so low."""
    at, level = middle
    across = float(hole.across[1] - hole.across[0]) * shown.scale
    half = float(hole.along[1] - hole.along[0]) / 2
    left, right = shown.at(at - half), shown.at(at + half)
    if hole.role == TENON_HOLE:
        canvas.circle((shown.at(at), level), across / 2)
    else:
        canvas.rect(Rect(left, level - across / 2, right, level + across / 2))
    canvas.text((right + 1.5, level + FIGURE / 3), (figure,), size=FIGURE, anchor="start")


def _holes(
    part: Part, holes: Sequence[Feature], before: str, side: tuple[float, float]
) -> list[tuple[Feature, Fraction, float]]:
    """Return the holes in one side with their place from R, and their level on paper.

    `before` is the side that is drawn above it, `side` its upper line on paper and the scale.
    """
    top, scale = side
    found = []
    for place, each in zip(_places(part, holes), holes, strict=True):
        face = each.surface in {"F", "B"}
        middle, whole = sum(each.across, Fraction(0)) / 2, part.width if face else part.thickness
        down = middle if before == ("E" if face else "F") else whole - middle
        found.append((each, place, top + float(down) * scale))
    return found
