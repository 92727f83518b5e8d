"""A mitre at the saw: from above at a mitre saw, from the maker's place where the blade is tilted.

The stop is on the left; a mitre saw's fence is behind the part.  The side that stays long lies at
that fence, or on the sled.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from dryfit.booklet.drawing.canvas import BOLD, FINE, Canvas, Svg
from dryfit.booklet.drawing.cut_at_stop import STOP
from dryfit.booklet.drawing.dimension import Span, dimensions_below
from dryfit.booklet.drawing.lying import Lying, named
from dryfit.booklet.drawing.rect import Rect
from dryfit.booklet.drawing.ruler import Ruler, ruler
from dryfit.booklet.drawing.shapes import (
    caption,
    draw_body,
    draw_corner,
    draw_fence,
    draw_mark,
    draw_stop,
    draw_table,
    leader,
    scale_note,
)
from dryfit.booklet.text import Say, Text

_ROOM = 80.0
_TALLEST = 26.0
_AROUND = 14.0
_FENCE = 4.0
_BEYOND = 5.0
_CAPTION = 118.0


def mitre_drawing(
    ways: Sequence[Lying], say: Say, title: str, *, tilted: bool, base: Fraction, measured: bool
) -> Svg:
    """Return one picture for each way of holding that looks different, and how each is turned.

    The corner is as long as its region says: of a mitre as long as it is deep, of a bevel less.

    `base` is the thickness of the sled's floor; at a mitre saw the part lies on the table.  Where
    the length is `measured` first, the figure is only about right.
    """
    canvas = Canvas()
    groups: dict[tuple[object, ...], list[Lying]] = {}
    for way in ways:
        groups.setdefault((way.part.name, way.sizes), []).append(way)
    y = 0.0
    scale = None
    for group in groups.values():
        first = group[0]
        deep = first.sizes[2] if tilted else first.sizes[1]
        scale = _scale(first, deep)
        seen = "From where you stand" if tilted else "From above"
        turns = ", then ".join(
            f"{way.marks[0]} at the stop with {way.marks[2]} down" for way in group
        )
        y = caption(canvas, -STOP, y, f"{seen}: {named(group)}: {turns}", bold=True, room=_CAPTION)
        draw = _tilted if tilted else _from_above
        figure = say.setting(first.sizes[0])
        long_point: Text = ("about ", figure) if measured else (figure,)
        y = draw(canvas, first, scale, long_point, y, base) + 2.0
    broken = scale is not None and bool(scale.breaks())
    caption(canvas, -STOP, y, scale_note(broken=broken), room=_CAPTION)
    return canvas.finish(title)


def _scale(way: Lying, deep: Fraction) -> Ruler:
    length = float(way.sizes[0])
    scale = min(1.0, _TALLEST / float(deep))
    around = _AROUND / scale
    wanted = [(0.0, around), (length - float(deep) - around, length)]
    return ruler(length, wanted, room=_ROOM, scale=scale)


def _back(way: Lying) -> float:
    """Return how far the cut goes back from the long point, mm."""
    start, end = way.regions[0].from_stop
    return float(end - start)


def _from_above(
    canvas: Canvas, way: Lying, scale: Ruler, long_point: Text, top: float, _: Fraction
) -> float:
    deep = float(way.sizes[1]) * scale.scale
    fence = top + _FENCE
    low, right = fence + deep, scale.end
    draw_fence(canvas, Rect(-STOP - 2, top, right + 4, fence))
    corner = Rect(right - _back(way) * scale.scale, fence, right, low)
    draw_corner(canvas, corner, right=True, low=True)
    draw_body(canvas, 0.0, right, fence, low, breaks=scale.breaks())
    _blade(canvas, (corner.left, low), (right, fence), before=_BEYOND, beyond=_FENCE)
    if way.known[0]:
        draw_stop(canvas, Rect(-STOP + 1, fence + 5.0, 0, max(low, fence + 8.0)))
    draw_mark(canvas, (5.0, (fence + low) / 2), way.marks[0])
    if deep > 16.0:
        draw_mark(canvas, (14.0, fence + 4.2), way.marks[1])
    leader(canvas, (right + 3, top + _FENCE / 2), (right + 7, top + _FENCE / 2), "fence")
    spans = [Span(0.0, right, long_point, "to the long point")]
    return dimensions_below(canvas, spans, low + 0.8, start=low + _BEYOND + 1.0)


def _tilted(
    canvas: Canvas, way: Lying, scale: Ruler, long_point: Text, top: float, base: Fraction
) -> float:
    deep = float(way.sizes[2]) * scale.scale
    upper = top + _BEYOND
    floor, right = upper + deep, scale.end
    table = floor + float(base) * scale.scale
    if base:
        canvas.rect(Rect(-STOP, floor, right + 6, table), fill="white", pen=FINE)
    draw_table(canvas, -STOP - 2, right + 8, table)
    corner = Rect(right - _back(way) * scale.scale, upper, right, floor)
    draw_corner(canvas, corner, right=True, low=False)
    draw_body(canvas, 0.0, right, upper, floor, breaks=scale.breaks())
    _blade(canvas, (right, floor), (corner.left, upper), before=table - floor, beyond=3.0)
    if way.known[0]:
        draw_stop(canvas, Rect(-STOP + 1, upper, 0, floor))
    if deep >= 8.0:
        draw_mark(canvas, (5.0, (upper + floor) / 2), way.marks[0])
    leader(canvas, (right + 8, table), (right + 10, table), "table")
    spans = [Span(0.0, right, long_point, "to the long point")]
    return dimensions_below(canvas, spans, table + 0.8, start=table + 2.0)


def _blade(
    canvas: Canvas,
    low: tuple[float, float],
    high: tuple[float, float],
    *,
    before: float,
    beyond: float,
) -> None:
    """Draw the blade along the slant, as far below its lower and above its upper end as told."""
    lean = (high[0] - low[0]) / (low[1] - high[1])
    start = low[0] - lean * before, low[1] + before
    end = high[0] + lean * beyond, high[1] - beyond
    canvas.lines([(start, end)], BOLD)
