"""The things at a machine: stop, fence, table, blade, spacer, break lines and marks on the wood."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from collections.abc import Set as AbstractSet

from dryfit.booklet.drawing.canvas import BOLD, FINE, OUTLINE, Canvas, text_room, width_of
from dryfit.booklet.drawing.lettering import SMALLEST
from dryfit.booklet.drawing.rect import Point, Rect
from dryfit.booklet.drawing.ruler import GAP
from dryfit.booklet.text import Text

MARK = 4.6
_WAVE = 14.0
"""How long one wave of a waney edge is on paper, mm."""
_WANDER = (0.3, 0.9, 1.1, 0.6, 0.4, 0.8, 1.0, 0.5)
"""How far it stands off the straight line through its narrowest place, mm on paper."""

Notes = AbstractSet[str]
"""What is said already below an earlier drawing of the visit."""


def draw_mark(canvas: Canvas, at: Point, mark: str) -> Rect:
    """Draw a mark on the wood, R, R2, E, E2, F or B, as a letter in a little box."""
    room = text_room(at, mark, size=MARK, bold=True).grown(0.9)
    canvas.rect(room, fill="white", pen=FINE)
    canvas.text(at, mark, size=MARK, bold=True)
    return room


def place_mark(canvas: Canvas, mark: str, places: Iterable[Point], within: Rect) -> None:
    """Draw a mark at the first place inside the part where nothing is written yet, if any."""
    for place in places:
        room = text_room(place, mark, size=MARK, bold=True).grown(1.2)
        inside = within.left <= room.left and room.right <= within.right
        upright = within.top <= room.top and room.bottom <= within.bottom
        if inside and upright and not any(room.meets(other) for other in canvas.lettered):
            draw_mark(canvas, place, mark)
            return


def draw_stop(canvas: Canvas, rect: Rect, *, on_left: bool = True) -> None:
    """Draw a stop as a black block, its name above it and clear of the part that it touches."""
    canvas.rect(rect, fill="black", pen=None)
    x, anchor = (rect.right - 0.8, "end") if on_left else (rect.left + 0.8, "start")
    canvas.text((x, rect.top - 3.2), "stop", bold=True, anchor=anchor)


def draw_cut(canvas: Canvas, rect: Rect, *, drilled: bool = False) -> None:
    """Draw wood that is cut away: hatched, within a fine outline; drilled holes centred."""
    if not drilled:
        canvas.hatch(rect)
        canvas.rect(rect, pen=FINE)
        return
    x, y = rect.middle
    reach = max(rect.width, 2.0)
    canvas.circle(rect.middle, max(rect.width / 2, 0.5))
    canvas.lines([((x - reach, y), (x + reach, y)), ((x, y - reach), (x, y + reach))], FINE)


def draw_corner(canvas: Canvas, rect: Rect, *, right: bool, low: bool) -> None:
    """Draw the half of a square that is sawn off slantwise: at its right or left, low or high."""
    x, inner = (rect.right, rect.left) if right else (rect.left, rect.right)
    y, other = (rect.bottom, rect.top) if low else (rect.top, rect.bottom)
    canvas.polygon(((x, y), (inner, y), (x, other)), pen=FINE)
    steps = int(rect.width // 1.6)
    # Parallel to the cut, and so told apart from what a square cut takes.
    shares = [step / (steps + 1) for step in range(1, steps + 1)]
    canvas.lines([((x + (inner - x) * at, y), (x, y + (other - y) * at)) for at in shares], FINE)


def draw_fence(canvas: Canvas, rect: Rect) -> None:
    """Draw a fence seen from its end or from above: a hatched body."""
    canvas.rect(rect, fill="white")
    canvas.hatch(rect, spacing=1.2, rising=False)


def draw_body(
    canvas: Canvas,
    left: float,
    right: float,
    top: float,
    bottom: float,
    *,
    breaks: Sequence[float],
    open_end: bool = False,
) -> None:
    """Draw a part's outline with break lines across it, and an open end where it goes on."""
    edges = sorted((left, right))
    if open_end:  # the far end is a break too
        far = right
        breaks = (*breaks, far)
    marks = sorted(breaks)
    stops: list[tuple[float, float]] = []
    begin = edges[0]
    for at in marks:
        half = 0.0 if open_end and at == right else GAP / 4
        stops.append((begin, at - half))
        begin = at + half
    if begin < edges[1]:
        stops.append((begin, edges[1]))
    stops = [(a, b) for a, b in stops if a < b]
    canvas.lines([((a, y), (b, y)) for a, b in stops for y in (top, bottom)], OUTLINE)
    closed = [left] if open_end else [left, right]
    canvas.lines([((x, top), (x, bottom)) for x in closed], OUTLINE)
    for at in marks:
        halves = (0.0,) if open_end and at == right else (-GAP / 4, GAP / 4)
        for half in halves:
            canvas.polyline(zigzag(at + half, top, bottom), FINE)


def draw_table(canvas: Canvas, left: float, right: float, y: float) -> None:
    """Draw the top of a table."""
    canvas.lines([((left, y), (right, y))], BOLD)


def wavy(begin: float, end: float, at: float, down: float) -> tuple[Point, ...]:
    """Return an edge as it grew: a line that wanders beside a straight one, to its outer side.

    `at` is where the straight one lies; `down` is 1 where its outer side is below, -1 above.
    """
    low, high = sorted((begin, end))
    count = max(1, round((high - low) / _WAVE))
    step = (high - low) / count / len(_WANDER)
    return tuple(
        (low + step * index, at + down * _WANDER[index % len(_WANDER)])
        for index in range(count * len(_WANDER) + 1)
    )


def zigzag(x: float, top: float, bottom: float) -> tuple[Point, ...]:
    """Return the line of a break across a part."""
    middle, tooth = (top + bottom) / 2, min(1.4, (bottom - top) / 5)
    return (
        (x, top),
        (x, middle - tooth),
        (x - tooth * 0.8, middle - tooth / 3),
        (x + tooth * 0.8, middle + tooth / 3),
        (x, middle + tooth),
        (x, bottom),
    )


def leader(
    canvas: Canvas, target: Point, at: Point, label: str | Text, *, anchor: str = "start"
) -> None:
    """Write a name beside the drawing with a fine line to the thing that it names."""
    side = 1.0 if anchor == "start" else -1.0
    canvas.lines([(target, at)], FINE)
    canvas.text((at[0] + side * 1.0, at[1]), label, anchor=anchor)


def caption(
    canvas: Canvas, left: float, y: float, text: str, *, bold: bool = False, room: float = 122.0
) -> float:
    """Write what a view shows above it, in lines; return where the view may begin."""
    for line in wrapped(text, room, bold=bold):
        canvas.text((left, y + SMALLEST / 2), line, anchor="start", bold=bold)
        y += SMALLEST + 1.4
    return y + 1.0


def foot_note(
    canvas: Canvas, left: float, y: float, text: str, noted: Notes, *, room: float = 122.0
) -> str:
    """Write a note below a setting unless an earlier drawing said the same; return it."""
    if text not in noted:
        caption(canvas, left, y, text, room=room)
    return text


def scale_note(*, broken: bool) -> str:
    """Return the line below a setting: what hatching means, and whether the part is shortened."""
    return f"Hatched: cut away. To scale{', shortened at the break' if broken else ''}."


def wrapped(text: str, width: float, *, bold: bool = False) -> tuple[str, ...]:
    """Return the text in lines no wider than `width` mm; a longer word stands alone.

    Parts inside patterns are named as the notes name them, wherever a line ends.
    """
    lines: list[str] = []
    for word in text.replace(" > ", "\u2019s ").split():
        longer = f"{lines[-1]} {word}" if lines else word
        if lines and width_of(longer, bold=bold) <= width:
            lines[-1] = longer
        else:
            lines.append(word)
    return tuple(lines)
