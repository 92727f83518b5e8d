"""A board with its cuts: where every blank lies in it, in what order it is sawn, what is left.

The reference end is a bar on the left, the reference edge a bar below.  Cuts that part the board
early are thick; their numbers stand in a disc where the saw crosscuts and in a square where it
rips, at the start of the cut.  Waste is hatched one way, bad wood both ways, and what is kept is
outlined twice.  Narrow boards are drawn wider than they are long, so that letters find room.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from dryfit.booklet.drawing.board_lettering import Lettering
from dryfit.booklet.drawing.canvas import FINE, HATCH, Canvas, Pen, Svg
from dryfit.booklet.drawing.rect import Point, Rect
from dryfit.booklet.drawing.shapes import caption, wavy
from dryfit.booklet.text import Say, Text, plain
from dryfit.quantities import Display
from dryfit.stock.board_edges import TAPER, WANEY, bad_places
from dryfit.stock.laid_out import BoardLayout, Fallen, NamedBlank, Reach, SawCut, StockBoard

WIDE = 166.0
"""Room on paper for the length of a board, mm."""

HIGH = 110.0
"""Room on paper for the width of a sheet, mm."""

HIGHEST = 140.0
"""What a sheet as wide as it is long has at most, mm: head and first cuts stand on its page."""

_STRIP = 7.0
"""What the narrowest blank or leftover has on paper for what is written in it, mm."""

_STRETCHED = 4.0
"""How much larger than its length the width of a board is drawn at most."""

_SCALE = 0.25
"""The largest scale: a short offcut is not drawn larger than a quarter."""

_OUTLINE = Pen(0.5)
_PENS = (Pen(1.0), Pen(1.0), Pen(0.65), Pen(0.4))
"""Lines of cuts by their stage; later ones are as the last."""

_BAR = 1.4
_APART = 1.0
_INSIDE = 1.0
_AIR = 0.5


@dataclass(frozen=True, slots=True)
class Scale:
    """Paper mm for a mm along and across a board so wide; its low left corner is at 0, 0."""

    along: float
    across: float

    @property
    def stretch(self) -> float:
        """Return how much larger widths are drawn than lengths."""
        return self.across / self.along

    def rect(self, along: Reach, across: Reach) -> Rect:
        """Return a place in the board on paper; across counts upwards from the reference edge."""
        left, right = (float(at) * self.along for at in along)
        low, high = (-float(at) * self.across for at in across)
        return Rect(left, high, right, low)


def board_drawing(layout: BoardLayout, display: Display, heading: Text | None = None) -> Svg:
    """Return the drawing of one board; a `heading` is written above it where it stands alone."""
    canvas, scale, say = Canvas(), scale_of(layout), Say(display)
    long, wide, _ = layout.board.sizes
    whole = scale.rect((Fraction(0), long), (Fraction(0), wide))
    for fallen in layout.fallen:
        _fallen(canvas, scale.rect(fallen.along, fallen.across), fallen)
    for place in layout.placed:
        canvas.rect(scale.rect(place.along, place.across), pen=FINE)
    bad = _bad_wood(canvas, layout, scale)
    _outline(canvas, layout.board, whole, scale)
    _bark(canvas, layout.board, whole, scale)
    _cut_lines(canvas, layout, scale)
    _references(canvas, whole)
    lettering = Lettering(canvas, whole.grown(_APART + _BAR))
    for cut in sorted(layout.cuts, key=lambda cut: (cut.saw, cut.stage, cut.number)):
        _number(lettering, cut, layout, scale)
    for room, letter in _letters(layout, scale):
        if not lettering.within(room, letter, grain=layout.board.line.grain):
            lettering.beside(room.middle, letter)
    for each in layout.fallen:
        if each.keep:
            worth = layout.worth(each)
            room = scale.rect(*worth).grown(-_INSIDE - _AIR)
            lettering.within(room, _size(each, worth, say), grain=False)
    for x, why in bad:
        lettering.below(x, why)
    title = f"Board {layout.board.label}"
    if heading is not None:
        top = min((room.top for room in canvas.lettered), default=whole.top)
        _heading(canvas, heading, min(top, whole.top) - 4.0)
        title = plain(heading)
    return canvas.finish(title, least_width=WIDE)


def scale_of(layout: BoardLayout) -> Scale:
    """Return the scale of a board: that of its length, and a larger one of its width if need be."""
    long, wide, _ = (float(size) for size in layout.board.sizes)
    along = min(WIDE / long, HIGHEST / wide, _SCALE)
    lettered = [each.across for each in layout.placed]
    lettered += [each.across for each in layout.fallen if each.keep]
    narrowest = min((float(high - low) for low, high in lettered), default=wide)
    wanted = max(along, min(_STRIP / narrowest, along * _STRETCHED))
    return Scale(along, max(along, min(wanted, HIGH / wide)))


def _heading(canvas: Canvas, heading: Text, bottom: float) -> None:
    words = plain(heading)
    lines = Canvas()
    end = caption(lines, 0.0, 0.0, words, bold=True, room=WIDE)
    canvas.place(lines, 0.0, bottom - end)


def _fallen(canvas: Canvas, room: Rect, fallen: Fallen) -> None:
    """Draw what falls: kept, outlined twice; else hatched."""
    if fallen.keep:
        canvas.rect(room, pen=_OUTLINE)
        if min(room.width, room.height) > 3 * _INSIDE:
            canvas.rect(room.grown(-_INSIDE), pen=_OUTLINE)
    else:
        canvas.hatch(room)


def _bad_wood(canvas: Canvas, layout: BoardLayout, scale: Scale) -> list[tuple[float, str]]:
    """Hatch bad wood both ways; return where on paper the reason of each stands below the board.

    A raw edge is good where a blank keeps it.
    """
    found = []
    for bad in bad_places(layout.board):
        if bad.why == TAPER:
            continue
        kept = [one.along for one in layout.placed if bad.why == WANEY and one.across[0] == 0]
        rooms = [scale.rect(along, bad.across) for along in _beside(bad.along, kept)]
        for room in rooms:
            for rising in (True, False):
                canvas.hatch(room, spacing=1.2, rising=rising)
            canvas.rect(room, pen=HATCH)
        found += [(room.middle[0], bad.why) for room in rooms[-1:]]
    return found


def _beside(whole: Reach, kept: Sequence[Reach]) -> Iterator[Reach]:
    """Yield what of a length lies beside others."""
    begin = whole[0]
    for low, high in sorted(kept):
        if begin < low:
            yield begin, low
        begin = max(begin, high)
    if begin < whole[1]:
        yield begin, whole[1]


def _bark(canvas: Canvas, board: StockBoard, whole: Rect, scale: Scale) -> None:
    """Draw a line that wanders along each edge under bark, inside the straight one."""
    here, there = board.line.sizes[1], board.line.other_width
    if board.line.waney > 1:
        canvas.polyline(wavy(whole.left, whole.right, whole.bottom, -1.0), FINE)
    if board.line.waney:
        left = -float(here or board.sizes[1]) * scale.across
        right = left if there is None else -float(there) * scale.across
        slope = (right - left) / (whole.right - whole.left)
        points = wavy(whole.left, whole.right, 0.0, 1.0)
        far = [(x, left + slope * (x - whole.left) + down) for x, down in points]
        canvas.polyline(far, FINE)


def _outline(canvas: Canvas, board: StockBoard, whole: Rect, scale: Scale) -> None:
    """Draw the outline; of a slab that tapers, the far edge slopes, and nothing is beyond it."""
    here, there = board.line.sizes[1], board.line.other_width
    if here is None or there is None or here == there:
        canvas.rect(whole, pen=_OUTLINE)
        return
    left, right = (-float(wide) * scale.across for wide in (here, there))
    far = ((whole.left, left), (whole.right, right))
    corner = (whole.right, whole.top) if there < here else (whole.left, whole.top)
    canvas.polygon((*far, corner), fill="white", pen=None)
    canvas.polygon(((whole.left, 0.0), *far, (whole.right, 0.0)), pen=_OUTLINE)


def _cut_lines(canvas: Canvas, layout: BoardLayout, scale: Scale) -> None:
    for cut in sorted(layout.cuts, key=lambda cut: -cut.stage):
        canvas.lines([_line(cut, scale)], _PENS[min(cut.stage, len(_PENS) - 1)])


def _line(cut: SawCut, scale: Scale) -> tuple[Point, Point]:
    """Return the line of a cut, in the middle of what the saw takes, from its start on."""
    room = scale.rect(cut.along, cut.across)
    middle = float(cut.at + cut.kerf / 2)
    if cut.saw == "crosscut":
        x = room.left + middle * scale.along
        return (x, room.top), (x, room.bottom)
    y = room.bottom - middle * scale.across
    return (room.left, y), (room.right, y)


def _number(lettering: Lettering, cut: SawCut, layout: BoardLayout, scale: Scale) -> None:
    start, end = _line(cut, scale)
    through = cut.across == (Fraction(0), layout.board.sizes[1])
    if cut.saw == "crosscut" and through:
        lettering.above(cut.number, start)
    elif cut.saw == "crosscut":
        lettering.along(cut.number, start, end, disc=True)
    else:
        lettering.along(cut.number, start, end, disc=False)


def _references(canvas: Canvas, whole: Rect) -> None:
    """Draw the bars at the reference end and below the reference edge."""
    left, low = whole.left - _APART, whole.bottom + _APART
    canvas.rect(Rect(left - _BAR, whole.top, left, low + _BAR), fill="black", pen=None)
    canvas.rect(Rect(left, low, whole.right, low + _BAR), fill="black", pen=None)


def _letters(layout: BoardLayout, scale: Scale) -> list[tuple[Rect, str]]:
    """Return what stands in each place: the blank's letter, and how many leaves it gives."""
    return [(scale.rect(each.along, each.across), _lettered(each.blank)) for each in layout.placed]


def _lettered(blank: NamedBlank) -> str:
    return f"{blank.letter} {blank.leaves}×" if blank.leaves > 1 else blank.letter


def _size(fallen: Fallen, worth: tuple[Reach, Reach], say: Say) -> Text:
    """Return the figures of a leftover, as the list of cuts has them."""
    long, wide = (high - low for low, high in worth)
    shown = say.setting if worth == (fallen.along, fallen.across) else say.size
    return (shown(long), " × ", shown(wide))
