"""Changes of a setting by station and axis: two bars a row, this order and part by part."""

from __future__ import annotations

from dryfit.booklet.drawing.canvas import FINE, Canvas, Svg, width_of
from dryfit.booklet.drawing.rect import Rect
from dryfit.booklet.drawing.shapes import caption
from dryfit.plan.changes import Changes, set_often, set_once

_ROW = 6.4
_BAR = 2.5
_BETWEEN = 1.6
_GAP = 3.0
_BARS = 84.0
_LONGEST_CHANGE = 4.0
"""Paper mm of one change at most: few changes make short bars."""
_NOTE = (
    "Black, and the bold figure: how often it is set in this order. Hatched, and the other figure: "
    "how often if every part is made before the next."
)


def changes_drawing(every: tuple[Changes, ...]) -> Svg | None:
    """Return the figure, in the order of the rows; None where nothing is set more than once."""
    rows = set_often(every)
    if not rows:
        return None
    canvas = Canvas()
    axis = max(width_of(row.station, bold=True) for row in rows) + _GAP
    here = axis + max(width_of(row.axis) for row in rows) + _GAP + width_of("00", bold=True)
    other = here + _GAP + width_of("00")
    left = other + _GAP
    most = max(max(row.here, row.part_by_part) for row in rows)
    each = min(_LONGEST_CHANGE, _BARS / most)
    y, station = 0.0, ""
    for row in rows:
        if row.station != station:
            y += _BETWEEN if station else 0.0
            canvas.text((0.0, y + _ROW / 2), row.station, anchor="start", bold=True)
            station = row.station
        middle = y + _ROW / 2
        canvas.text((axis, middle), row.axis, anchor="start")
        canvas.text((here, middle), str(row.here), anchor="end", bold=True)
        canvas.text((other, middle), str(row.part_by_part), anchor="end")
        _bars(canvas, left, middle, row.here * each, row.part_by_part * each)
        y += _ROW
    canvas.lines([((left, 0.0), (left, y))], FINE)
    y = caption(canvas, 0.0, y + 2.5, _NOTE, room=left + _BARS)
    if once := set_once(every):
        caption(canvas, 0.0, y, f"{once}.", room=left + _BARS)
    return canvas.finish("Changes of a setting, this order and part by part")


def _bars(canvas: Canvas, left: float, middle: float, here: float, other: float) -> None:
    canvas.rect(Rect(left, middle - _BAR, left + here, middle), fill="black", pen=None)
    hatched = Rect(left, middle, left + other, middle + _BAR)
    canvas.hatch(hatched, spacing=0.9)
    canvas.rect(hatched, pen=FINE)
