"""Planing: the jointer's two tables, or the planer's bed and cutter head over the part."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from math import cos, pi, sin

from dryfit.booklet.drawing.canvas import OUTLINE, Canvas, Svg
from dryfit.booklet.drawing.dimension import dimension_beside
from dryfit.booklet.drawing.lying import Lying
from dryfit.booklet.drawing.rect import Point, Rect
from dryfit.booklet.drawing.shapes import caption, draw_table
from dryfit.booklet.text import Say

_LONG = 84.0
_HEAD = 7.0
_SKIM = 3.0
_TALLEST = 24.0


def planer_drawing(thickness: Fraction, lyings: Sequence[Lying], say: Say, title: str) -> Svg:
    """Return the part under the cutter head, set to a thickness; the skim is not to scale."""
    canvas = Canvas()
    names = ", ".join(dict.fromkeys(way.part.name for way in lyings))
    top = caption(canvas, 0.0, 0.0, f"From the side: {names}", bold=True)
    scale = min(1.0, _TALLEST / float(thickness))
    high = max(float(thickness) * scale, 2.0)
    head = _LONG * 0.5, top + _HEAD
    level = top + 2 * _HEAD
    bed = level + high
    _cutter_head(canvas, head)
    canvas.hatch(Rect(0.0, level - _SKIM, head[0] - 6, level))
    outline: list[Point] = [(0, level - _SKIM), (head[0] - 6, level - _SKIM), (head[0], level)]
    canvas.polyline([*outline, (_LONG, level), (_LONG, bed), (0, bed), outline[0]], OUTLINE)
    draw_table(canvas, -4, _LONG + 4, bed)
    canvas.text((head[0] + _HEAD + 3, head[1] - 2), "cutter head", anchor="start")
    canvas.text((_LONG * 0.25, level + high / 2), "feed")
    canvas.lines([((_LONG * 0.25 + 7, level + high / 2), (_LONG * 0.25 + 16, level + high / 2))])
    canvas.polygon(_tip((_LONG * 0.25 + 18, level + high / 2)), fill="black", pen=None)
    dimension_beside(canvas, level, bed, (say.setting(thickness),), at=_LONG + 8, edge=_LONG + 0.8)
    canvas.text((0, bed + 5.2), "The thickness is to scale, the skim is not.", anchor="start")
    return canvas.finish(title)


def _cutter_head(canvas: Canvas, centre: Point) -> None:
    canvas.circle(centre, _HEAD)
    for knife in range(3):
        turn = pi / 2 + knife * 2 * pi / 3
        inner = centre[0] + 4 * cos(turn), centre[1] + 4 * sin(turn)
        outer = centre[0] + _HEAD * cos(turn), centre[1] + _HEAD * sin(turn)
        canvas.lines([(inner, outer)])
    canvas.dot(centre)


def _tip(at: Point) -> tuple[Point, Point, Point]:
    x, y = at
    return (x, y), (x - 2.6, y - 1.1), (x - 2.6, y + 1.1)
