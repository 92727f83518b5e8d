"""A sheet that collects shapes in mm, x to the right and y down, and becomes one SVG."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from html import escape
from itertools import pairwise

from dryfit.booklet.drawing.lettering import CAP_HEIGHT, SMALLEST, text_width
from dryfit.booklet.drawing.rect import Point, Rect, Segment
from dryfit.booklet.text import Amount, Text, plain

FONT = "Inter, DejaVu Sans, sans-serif"
MARGIN = 1.0
TALLEST = 215.0
"""Paper mm that the body of a letter page leaves below the heading of a visit."""
WIDEST = 175.0
"""Paper mm between the margins of an A4 page, the narrower one."""


@dataclass(frozen=True, slots=True)
class Svg:
    """One drawing: its size on paper in mm, its markup, and its title for screen readers.

    `note` is the line at its foot, which no later drawing beside it has to repeat.
    """

    width_mm: float
    height_mm: float
    markup: str
    title: str
    note: str = ""

    def __html__(self) -> str:
        """Return the markup, by which a template knows that it must not be escaped."""
        return self.markup


@dataclass(frozen=True, slots=True)
class Pen:
    """A line: its width in mm, and the dashes and gaps in mm."""

    width: float
    dashes: tuple[float, ...] = ()


OUTLINE = Pen(0.45)
BOLD = Pen(0.8)
FINE = Pen(0.22)
DASHED = Pen(0.3, (2.2, 1.2))
HATCH = Pen(0.25)

_TOUCHED = 0.35
"""How far a line must come into the room of a text before white is put behind it, mm."""

_BEHIND = 0.25
"""How far the white reaches beyond the text, mm."""


class Canvas:
    """Shapes in the order in which they are drawn, and the room that they take.

    Texts stand above all shapes, and white is put behind those that a line would run through.
    """

    def __init__(self) -> None:
        self._shapes: list[str] = []
        self._points: list[Point] = []
        self._strokes: list[Segment] = []
        self._texts: list[tuple[Rect, str, bool]] = []
        self.lettered: list[Rect] = []

    def place(self, other: Canvas, right: float, down: float) -> None:
        """Put another sheet on this one, moved to the right and down."""
        self._points += [(x + right, y + down) for x, y in other._points]
        moved = f'<g transform="translate({number(right)} {number(down)})">'
        self._shapes.append(f"{moved}{''.join(other._shapes)}</g>")
        self._strokes += [
            ((x + right, y + down), (u + right, v + down)) for (x, y), (u, v) in other._strokes
        ]
        self._texts += [
            (room.moved(right, down), f"{moved}{text}</g>", white)
            for room, text, white in other._texts
        ]

    def width(self) -> float:
        """Return how wide everything drawn so far is."""
        across = [x for x, _ in self._points]
        return max(across, default=0.0) - min(across, default=0.0)

    def bottom(self) -> float:
        """Return the lowest y that anything drawn so far reaches."""
        return max((y for _, y in self._points), default=0.0)

    def lines(self, segments: Iterable[Segment], pen: Pen = OUTLINE) -> None:
        """Draw straight lines as one path."""
        row = list(segments)
        if not row:
            return
        self._points += [point for segment in row for point in segment]
        self._strokes += row
        path = "".join(f"M{_pair(start)}L{_pair(end)}" for start, end in row)
        self._shapes.append(f'<path d="{path}" {_stroke(pen)}/>')

    def polyline(self, points: Sequence[Point], pen: Pen = OUTLINE) -> None:
        """Draw an open line through the points."""
        self._points += points
        self._strokes += pairwise(points)
        path = "M" + "L".join(_pair(point) for point in points)
        self._shapes.append(f'<path d="{path}" {_stroke(pen)}/>')

    def polygon(
        self, points: Sequence[Point], *, fill: str = "none", pen: Pen | None = OUTLINE
    ) -> None:
        """Draw a closed shape; `fill` is none, white or black."""
        self._points += points
        if pen is not None:
            self._strokes += pairwise((*points, points[0]))
        path = "M" + "L".join(_pair(point) for point in points) + "Z"
        stroke = _stroke(pen, fill=fill) if pen else f'fill="{_COLOURS[fill]}"'
        self._shapes.append(f'<path d="{path}" {stroke}/>')

    def rect(self, rect: Rect, *, fill: str = "none", pen: Pen | None = OUTLINE) -> None:
        """Draw a rectangle."""
        self.polygon(rect.corners(), fill=fill, pen=pen)

    def hatch(self, rect: Rect, *, spacing: float = 1.6, rising: bool = True) -> None:
        """Hatch a rectangle at 45 degrees, aligned over the whole sheet."""
        self.lines(_hatching(rect, spacing, rising=rising), HATCH)

    def circle(self, centre: Point, radius: float, *, fill: str = "white") -> None:
        """Draw a circle, outlined in black."""
        x, y = centre
        self._points += [(x - radius, y - radius), (x + radius, y + radius)]
        self._shapes.append(
            f'<circle cx="{number(x)}" cy="{number(y)}" r="{number(radius)}" '
            f"{_stroke(OUTLINE, fill=fill)}/>"
        )

    def dot(self, centre: Point, radius: float = 0.7) -> None:
        """Draw a black dot."""
        x, y = centre
        self._shapes.append(
            f'<circle cx="{number(x)}" cy="{number(y)}" r="{number(radius)}" fill="#000"/>'
        )

    def text(
        self,
        at: Point,
        text: Text | str,
        *,
        size: float = SMALLEST,
        bold: bool = False,
        anchor: str = "middle",
        white: bool = False,
    ) -> Rect:
        """Write a line of text, its figures centred on the height of `at`; return its room.

        `anchor` says which of start, middle and end stands at `at`.
        """
        room = text_room(at, text, size=size, bold=bold, anchor=anchor)
        self._points += [(room.left, room.top), (room.right, room.bottom)]
        self.lettered.append(room)
        baseline = at[1] + size * CAP_HEIGHT / 2
        weight = ' font-weight="700"' if bold else ""
        anchored = "" if anchor == "start" else f' text-anchor="{anchor}"'
        written = (
            f'<text x="{number(at[0])}" y="{number(baseline)}" font-size="{number(size)}"'
            f'{weight}{anchored} fill="{"#fff" if white else "#000"}">{_lettering(text)}</text>'
        )
        self._texts.append((room, written, white))
        return room

    def _lettering(self) -> Iterable[str]:
        for room, text, white in self._texts:
            inner = room.grown(-_TOUCHED)
            if not white and any(inner.is_crossed_by(line) for line in self._strokes):
                path = "L".join(_pair(corner) for corner in room.grown(_BEHIND).corners())
                yield f'<path d="M{path}Z" fill="#fff"/>'
            yield text

    def finish(self, title: str, *, least_width: float = 0.0, note: str = "") -> Svg:
        """Return the sheet, cropped to what is drawn, made smaller if no page holds it."""
        left = min((x for x, _ in self._points), default=0.0) - MARGIN
        top = min((y for _, y in self._points), default=0.0) - MARGIN
        right = max((x for x, _ in self._points), default=0.0) + MARGIN
        bottom = max((y for _, y in self._points), default=0.0) + MARGIN
        if right - left < least_width:
            spare = (least_width - (right - left)) / 2
            left, right = left - spare, right + spare
        width, height = right - left, bottom - top
        shown = min(1.0, TALLEST / height, WIDEST / width)
        view = " ".join(number(value) for value in (left, top, width, height))
        markup = (
            f'<svg xmlns="http://www.w3.org/2000/svg" role="img" width="{number(width * shown)}mm" '
            f'height="{number(height * shown)}mm" viewBox="{view}" font-family="{FONT}">'
            f"<title>{escape(title)}</title>{''.join(self._shapes)}"
            f"{''.join(self._lettering())}</svg>"
        )
        return Svg(round(width * shown, 2), round(height * shown, 2), markup, title, note)


def text_room(
    at: Point,
    text: Text | str,
    *,
    size: float = SMALLEST,
    bold: bool = False,
    anchor: str = "middle",
) -> Rect:
    """Return the room that a line of text takes: its width, and the height of capitals."""
    width = width_of(text, size=size, bold=bold)
    left = at[0] - {"start": 0.0, "middle": width / 2, "end": width}[anchor]
    half = size * CAP_HEIGHT / 2
    return Rect(left, at[1] - half, left + width, at[1] + half)


def width_of(text: Text | str, *, size: float = SMALLEST, bold: bool = False) -> float:
    """Return the width of a line of text in mm."""
    return text_width(plain(text) if isinstance(text, tuple) else text, size, bold=bold)


def number(value: float) -> str:
    """Return a coordinate with at most two decimals, always written the same way."""
    text = f"{value:.2f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


_COLOURS = {"none": "none", "white": "#fff", "black": "#000"}


def _pair(point: Point) -> str:
    return f"{number(point[0])} {number(point[1])}"


def _stroke(pen: Pen, *, fill: str = "none") -> str:
    dashes = " ".join(number(dash) for dash in pen.dashes)
    dashed = f' stroke-dasharray="{dashes}"' if dashes else ""
    return (
        f'fill="{_COLOURS[fill]}" stroke="#000" stroke-width="{number(pen.width)}" '
        f'stroke-linejoin="round" stroke-linecap="round"{dashed}'
    )


def _lettering(text: Text | str) -> str:
    pieces = text if isinstance(text, tuple) else (text,)
    return "".join(_letters(piece) for piece in pieces)


def _letters(piece: object) -> str:
    if isinstance(piece, Amount):
        unit = "mm" if piece.unit == "mm" else "deg"
        return (
            f'<tspan class="q" data-{unit}="{escape(piece.decimal())}">'
            f"{escape(piece.shown)}</tspan>"
        )
    return escape(str(getattr(piece, "sign", piece)))


def _hatching(rect: Rect, spacing: float, *, rising: bool) -> Iterable[Segment]:
    """Yield the 45 degree lines x + y = n times the spacing (or x - y) inside the rectangle."""
    step = spacing * 2**0.5
    sign = 1.0 if rising else -1.0
    sums = [x + sign * y for x, y in rect.corners()]
    first, last = int(min(sums) // step) + 1, int(max(sums) // step)
    for line in range(first, last + 1):
        total = line * step
        xs = sorted((total - sign * rect.top, total - sign * rect.bottom))
        left, right = max(rect.left, xs[0]), min(rect.right, xs[1])
        if left < right:
            yield (left, sign * (total - left)), (right, sign * (total - right))
