"""Dimension lines: arrows, extension lines and the figure, placed so that figures never collide."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import hypot

from dryfit.booklet.drawing.canvas import FINE, Canvas, width_of
from dryfit.booklet.drawing.lettering import CAP_HEIGHT
from dryfit.booklet.drawing.rect import Point, Rect, Segment
from dryfit.booklet.text import Text

FIGURE = 5.6
"""Font size in mm of the figure of a dimension."""

ROW = 7.5
"""Distance in mm between dimension lines in a stack."""

_ARROW = 2.2
_AIR = 1.2
_OVERSHOOT = 1.2
_LEVEL = 1e-6


@dataclass(frozen=True, slots=True)
class Span:
    """One dimension along a view: from and to in paper mm, and its figure.

    `note` stands behind the figure in small letters: which face, which mark.
    """

    begin: float
    end: float
    figure: Text
    note: str = ""


def dimensions_below(canvas: Canvas, spans: Sequence[Span], top: float, *, start: float) -> float:
    """Draw horizontal dimensions in rows below a view, short ones first; return the bottom y.

    `top` is where extension lines begin, `start` where the first row may begin.  A note that does
    not fit between the arrows with its figure stands below it, in a row of its own.
    """
    rows: list[list[tuple[float, float]]] = []
    for span in sorted(spans, key=lambda span: (abs(span.end - span.begin), span.begin)):
        rooms = _rooms_of(span)
        row = 0
        while any(_taken(rows, row + below, room) for below, room in enumerate(rooms)):
            row += 1
        for below, room in enumerate(rooms):
            while len(rows) <= row + below:
                rows.append([])
            rows[row + below].append(room)
        _horizontal(canvas, span, top, start + row * ROW + ROW / 2)
    return start + len(rows) * ROW


def _taken(
    rows: Sequence[Sequence[tuple[float, float]]], row: int, room: tuple[float, float]
) -> bool:
    if row >= len(rows):
        return False
    return any(room[0] < right and left < room[1] for left, right in rows[row])


def dimension_beside(
    canvas: Canvas, begin: float, end: float, figure: Text, *, at: float, edge: float
) -> Rect:
    """Draw a vertical dimension at x = `at`, with extension lines from x = `edge`.

    The figure stands upright beside the line, away from the view; returns the figure's room.
    """
    top, bottom = min(begin, end), max(begin, end)
    side = 1.0 if at > edge else -1.0
    reach = at + side * _OVERSHOOT
    canvas.lines([((edge, y), (reach, y)) for y in (top, bottom)], FINE)
    _arrows(canvas, (at, top), (at, bottom))
    anchor = "start" if side > 0 else "end"
    return canvas.text(
        (at + side * 2.0, (top + bottom) / 2), figure, size=FIGURE, bold=True, anchor=anchor
    )


def dimension_along(
    canvas: Canvas, start: Point, end: Point, figure: Text, *, outwards: float
) -> tuple[Segment, Rect]:
    """Draw a dimension on a slanting line, its figure in a gap at the middle.

    A figure too wide for the line stands below it, to the left (`outwards` -1) or right (1).
    """
    middle = (start[0] + end[0]) / 2, (start[1] + end[1]) / 2
    length = hypot(end[0] - start[0], end[1] - start[1])
    across, down = (end[0] - start[0]) / length, (end[1] - start[1]) / length
    half_width = width_of(figure, size=FIGURE, bold=True) / 2 + _AIR
    half_height = FIGURE * CAP_HEIGHT / 2 + _AIR
    gap = min(
        half_width / abs(across) if abs(across) > _LEVEL else length,
        half_height / abs(down) if abs(down) > _LEVEL else length,
    )
    if length / 2 - gap < _ARROW:
        _arrows(canvas, start, end)
        beside = abs(down) > abs(across)
        at = middle[0] + outwards * 2.0, middle[1] if beside else middle[1] + half_height + _AIR
        anchor = "start" if outwards > 0 else "end"
        return (start, end), canvas.text(at, figure, size=FIGURE, bold=True, anchor=anchor)
    for tip, way in ((start, 1.0), (end, -1.0)):
        rest = length / 2 - gap
        inner = tip[0] + way * across * rest, tip[1] + way * down * rest
        canvas.lines([(tip, inner)], FINE)
        _arrow(canvas, tip, (-way * across, -way * down))
    return (start, end), canvas.text(middle, figure, size=FIGURE, bold=True)


def _rooms_of(span: Span) -> tuple[tuple[float, float], ...]:
    """Return the room that a dimension takes in its row, and in the next if its note is there."""
    left, right = min(span.begin, span.end), max(span.begin, span.end)
    if _fits(span, _words(span)):
        return ((left, right),)
    if span.note and _fits(span, _figure(span)):
        middle, half = (left + right) / 2, width_of(span.note) / 2 + _AIR
        return (left, right), (middle - half, middle + half)
    return ((left - 2 * _ARROW, right + 2 * _ARROW + _AIR + _words(span)),)


def _figure(span: Span) -> float:
    return width_of(span.figure, size=FIGURE, bold=True)


def _words(span: Span) -> float:
    return _figure(span) + (width_of(f" {span.note}") if span.note else 0.0)


def _fits(span: Span, width: float) -> bool:
    return abs(span.end - span.begin) >= width + 2 * (_ARROW + _AIR)


def _horizontal(canvas: Canvas, span: Span, top: float, y: float) -> None:
    left, right = min(span.begin, span.end), max(span.begin, span.end)
    canvas.lines([((x, top), (x, y + _OVERSHOOT)) for x in (left, right)], FINE)
    width = _words(span) if _fits(span, _words(span)) else _figure(span)
    if _fits(span, width):
        at = (left + right) / 2 - width / 2
        canvas.lines([((left, y), (at - _AIR, y)), ((at + width + _AIR, y), (right, y))], FINE)
        _arrow(canvas, (left, y), (-1.0, 0.0))
        _arrow(canvas, (right, y), (1.0, 0.0))
    else:
        at = right + 2 * _ARROW + _AIR
        tails = [((left - 2 * _ARROW, y), (left, y)), ((right, y), (right + 2 * _ARROW, y))]
        canvas.lines(tails, FINE)
        _arrow(canvas, (left, y), (1.0, 0.0))
        _arrow(canvas, (right, y), (-1.0, 0.0))
    room = canvas.text((at, y), span.figure, size=FIGURE, bold=True, anchor="start")
    if not span.note:
        return
    if _fits(span, _figure(span)) and not _fits(span, _words(span)):
        canvas.text(((left + right) / 2, y + ROW * 0.8), span.note)
    else:
        canvas.text((room.right + width_of(" "), y), span.note, anchor="start")


def _arrows(canvas: Canvas, start: Point, end: Point) -> None:
    length = hypot(end[0] - start[0], end[1] - start[1])
    if not length:
        # A fence that touches the cutter stands at 0: there is no line to put arrows on.
        return
    across, down = (end[0] - start[0]) / length, (end[1] - start[1]) / length
    if length >= 3 * _ARROW:
        canvas.lines([(start, end)], FINE)
        _arrow(canvas, start, (-across, -down))
        _arrow(canvas, end, (across, down))
        return
    far = 2 * _ARROW
    outside = [
        ((start[0] - across * far, start[1] - down * far), start),
        (end, (end[0] + across * far, end[1] + down * far)),
    ]
    canvas.lines(outside, FINE)
    _arrow(canvas, start, (across, down))
    _arrow(canvas, end, (-across, -down))


def _arrow(canvas: Canvas, tip: Point, way: Point) -> None:
    """Draw a filled arrow head at the tip, pointing along the unit vector `way`."""
    back = tip[0] - way[0] * _ARROW, tip[1] - way[1] * _ARROW
    wide = _ARROW * 0.22
    canvas.polygon(
        (
            tip,
            (back[0] - way[1] * wide, back[1] + way[0] * wide),
            (back[0] + way[1] * wide, back[1] - way[0] * wide),
        ),
        fill="black",
        pen=None,
    )
