"""A panel in its clamps: the staves with their joints, the bars over and under in turn."""

from __future__ import annotations

from dryfit.booklet.drawing.balloons import draw_balloon
from dryfit.booklet.drawing.canvas import BOLD, DASHED, Canvas, Svg
from dryfit.booklet.drawing.rect import Rect
from dryfit.booklet.drawing.shapes import caption
from dryfit.placing.model import Part

_WIDE = 104.0
_DEEP = 52.0
_FROM_END = 8.0
_BEYOND = 4.0


def panel_drawing(part: Part, clamps: int, label: str) -> Svg:
    """Return an edge-glued panel from above with its clamps, numbered from the middle outwards.

    `label` is the part's letter; a part that is not glued from staves is drawn as one board.
    """
    canvas = Canvas()
    scale = min(_WIDE / float(part.length), _DEEP / float(part.width))
    sheet = Rect(0.0, 0.0, float(part.length) * scale, float(part.width) * scale)
    canvas.rect(sheet)
    widths = part.staves.each if part.staves is not None else (part.width,)
    count = len(widths)
    edges = [sheet.height * float(sum(widths[:joint]) / sum(widths)) for joint in range(1, count)]
    canvas.lines([((0.0, y), (sheet.right, y)) for y in edges])
    for number, (x, on_top) in enumerate(_from_middle(clamps, sheet.width), start=1):
        pen = BOLD if on_top else DASHED
        canvas.lines([((x, -_BEYOND), (x, sheet.bottom + _BEYOND))], pen)
        for y in (-1.2, sheet.bottom + 1.2):
            canvas.rect(Rect(x - 2.4, y - 1.2, x + 2.4, y + 1.2), fill="black", pen=None)
        draw_balloon(canvas, (x, -_BEYOND - 3.6), str(number))
    if clamps:
        _name(canvas, label, (sheet, edges[0] if edges else sheet.height, clamps))
    note = "Solid bars on top, dashed bars underneath. Tighten from the middle outwards."
    caption(canvas, 0.0, canvas.bottom() + 2.0, note, room=max(sheet.width, 90.0))
    return canvas.finish(f"{part.name}, {count} boards edge to edge, in clamps")


def _from_middle(count: int, width: float) -> list[tuple[float, bool]]:
    """Return the clamps' places along the panel, nearest to the middle first.

    Beside each stands whether the clamp lies on top: from end to end it is every other one.
    """
    if count < 2:
        return [(width / 2, True)] * count
    step = (width - 2 * _FROM_END) / (count - 1)
    places = [(_FROM_END + step * number, number % 2 == 0) for number in range(count)]
    return sorted(places, key=lambda place: (round(abs(place[0] - width / 2), 6), place[0]))


def _name(canvas: Canvas, label: str, sheet: tuple[Rect, float, int]) -> None:
    """Write the letter in the middle of the first board, between two clamps."""
    rect, first, clamps = sheet
    step = (rect.width - 2 * _FROM_END) / max(1, clamps - 1)
    x = _FROM_END + step * ((clamps - 1) // 2 + 0.5) if clamps > 1 else rect.width / 4
    canvas.text((x, first / 2), label, bold=True)
