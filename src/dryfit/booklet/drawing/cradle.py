"""A glued corner in the V of a cradle: how high the blade stands, and how deep the slot goes."""

from __future__ import annotations

from fractions import Fraction

from dryfit.booklet.drawing.canvas import DASHED, FINE, OUTLINE, Canvas, Svg
from dryfit.booklet.drawing.dimension import dimension_beside
from dryfit.booklet.drawing.rect import Rect
from dryfit.booklet.drawing.shapes import caption, draw_table, leader
from dryfit.booklet.text import Say

_TALLEST = 30.0
_ARM = 34.0
_BLOCK = 22.0
_WIDE = 46.0


def cradle_drawing(height: Fraction, base: Fraction, say: Say, title: str) -> Svg:
    """Return the view along the fence, square to the frame's face.

    `height` of the blade above the table and thickness of the cradle's `base`, in mm.
    """
    canvas = Canvas()
    top = caption(canvas, -_WIDE, 0.0, "Seen square to the frame, along the fence", bold=True)
    scale = min(1.0, _TALLEST / float(height))
    deep = float(height - base) * scale
    floor = top + _ARM + 2.0
    table = floor + float(base) * scale
    canvas.rect(Rect(-_WIDE, floor, _WIDE, table), fill="white", pen=FINE)
    draw_table(canvas, -_WIDE - 4, _WIDE + 4, table)
    for side in (-1.0, 1.0):
        block = ((0.0, floor), (side * _BLOCK, floor - _BLOCK), (side * _WIDE, floor - _BLOCK))
        canvas.polygon((*block, (side * _WIDE, floor)), fill="white", pen=FINE)
    # The corner of the frame stands in the V; its members go on upwards.
    canvas.lines([((0.0, floor), (side * _ARM, floor - _ARM)) for side in (-1.0, 1.0)], OUTLINE)
    steps = max(2, int(deep // 1.6))
    levels = [deep * step / steps for step in range(1, steps + 1)]
    canvas.lines([((-at, floor - at), (at, floor - at)) for at in levels], FINE)
    canvas.lines([((-_WIDE, floor - deep), (_WIDE + 8, floor - deep))], DASHED)
    leader(canvas, (-_WIDE + 2, floor - 4), (-_WIDE - 2, floor - 8), "cradle", anchor="end")
    dimension_beside(
        canvas, table, floor - deep, (say.setting(height),), at=_WIDE + 12, edge=_WIDE + 5
    )
    note = "Dashed: the top of the blade. Hatched: the slot, across the mitre."
    caption(canvas, -_WIDE, table + 4.0, note, room=118.0)
    return canvas.finish(title)
