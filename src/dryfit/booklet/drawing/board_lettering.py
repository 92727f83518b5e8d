"""What is written on the drawing of a board: numbers of cuts, letters of blanks, sizes, faults.

Nothing covers anything else: each finds the first free place, the numbers before the letters.
"""

from __future__ import annotations

from collections.abc import Iterable
from itertools import chain, count
from math import hypot

from dryfit.booklet.drawing.canvas import FINE, OUTLINE, Canvas, text_room, width_of
from dryfit.booklet.drawing.lettering import CAP_HEIGHT, SMALLEST
from dryfit.booklet.drawing.rect import Point, Rect
from dryfit.booklet.text import Text

_RADIUS = 2.9
_AIR = 0.5
_LINE = 0.25
_STEP = 1.0
_ARROW = 9.0
"""Length of an arrow along the grain beside a letter, mm."""

_TIP = 1.5


class Lettering:
    """The letters and numbers of one board; `whole` is the board with its bars on paper."""

    def __init__(self, canvas: Canvas, whole: Rect) -> None:
        self._canvas = canvas
        self._whole = whole
        self._taken: list[Rect] = []

    def above(self, number: int, start: Point) -> None:
        """Write the number of a cut through the whole width above the board, in a disc."""
        half = _half(number, disc=True)
        x, top = start
        for row in count(1):
            y = self._whole.top - row * (2 * _RADIUS + _AIR) + _RADIUS - _AIR
            room = _around((x, y), half)
            if self._free(room):
                break
        self._canvas.lines([((x, top), (x, y))], FINE)
        self._mark(number, (x, y), disc=True)

    def along(self, number: int, start: Point, end: Point, *, disc: bool) -> None:
        """Write the number of a cut on its line, as near its start as there is room."""
        half = _half(number, disc=disc)
        (x, y), (u, v) = start, end
        long = max(abs(u - x), abs(v - y), _STEP)
        across, down = (u - x) / long, (v - y) / long
        first = half + _AIR
        places = [
            (x + across * at, y + down * at) for at in _steps(first, max(first, long - half - _AIR))
        ]
        free = (place for place in places if self._free(_around(place, half)))
        self._mark(number, next(free, places[0]), disc=disc)

    def within(self, room: Rect, words: Text | str, *, grain: bool) -> bool:
        """Write words inside a piece, arrows along the grain beside them; False without room."""
        x, y = room.middle
        spare = max(0.0, (room.width - width_of(words, bold=True)) / 2)
        for shift in chain.from_iterable((at, -at) for at in _steps(0.0, spare)):
            letter = text_room((x + shift, y), words, bold=True)
            inside = room.left <= letter.left and letter.right <= room.right
            upright = room.top <= letter.top and letter.bottom <= room.bottom
            if inside and upright and self._free(letter):
                self._canvas.text((x + shift, y), words, bold=True)
                self._taken.append(letter)
                if grain:
                    self._arrows(room, letter)
                return True
        return False

    def beside(self, target: Point, words: Text | str) -> None:
        """Write words above the board with a line to the piece that is too small for them."""
        self._outside(target, words, -1.0, self._whole.top)

    def below(self, x: float, words: str) -> None:
        """Write what is wrong with bad wood below the board."""
        self._outside((x, self._whole.bottom - _AIR), words, 1.0, self._whole.bottom)

    def _outside(self, target: Point, words: Text | str, side: float, edge: float) -> None:
        half = width_of(words, bold=True) / 2
        # Inside the length of the board, so that words at an end make no drawing wider.
        x = min(max(target[0], self._whole.left + half), self._whole.right - half)
        for row in count(1):
            y = edge + side * (row * (SMALLEST + _AIR) - SMALLEST / 2)
            letter = text_room((x, y), words, bold=True)
            if self._free(letter):
                break
        inner = letter.top if side > 0 else letter.bottom
        self._canvas.lines([(target, (x, inner - side * _AIR / 2))], FINE)
        self._canvas.text((x, y), words, bold=True)
        self._taken.append(letter)

    def _arrows(self, room: Rect, letter: Rect) -> None:
        """Draw an arrow along the grain on both sides of a letter where there is room."""
        y = room.middle[1]
        for side, edge, end in ((-1.0, letter.left, room.left), (1.0, letter.right, room.right)):
            begin = edge + side * 1.5
            tip = begin + side * min(_ARROW, abs(end - begin) - 1.5)
            if abs(tip - edge) < 3 * _TIP or (tip - begin) * side <= 0:
                continue
            low, high = sorted((begin, tip))
            if self._free(Rect(low, y - _TIP / 2, high, y + _TIP / 2)):
                back = tip - side * _TIP
                heads = [((tip, y), (back, y - _TIP / 2)), ((tip, y), (back, y + _TIP / 2))]
                self._canvas.lines([((begin, y), (tip, y)), *heads], FINE)

    def _mark(self, number: int, at: Point, *, disc: bool) -> None:
        half = _half(number, disc=disc)
        room = _around(at, half)
        if disc:
            self._canvas.circle(at, half)
        else:
            self._canvas.rect(room, fill="white", pen=OUTLINE)
        self._canvas.text(at, str(number), bold=True)
        self._taken.append(room)

    def _free(self, room: Rect) -> bool:
        return not any(room.grown(_AIR / 2).meets(other) for other in self._taken)


def _half(number: int, *, disc: bool) -> float:
    """Return half of how wide the sign of a number is; its corners stay inside a disc."""
    wide, high = width_of(str(number), bold=True) / 2, SMALLEST * CAP_HEIGHT / 2
    return max(_RADIUS, (hypot(wide, high) if disc else wide) + _AIR + _LINE)


def _around(at: Point, half: float) -> Rect:
    x, y = at
    return Rect(x - half, y - half, x + half, y + half)


def _steps(begin: float, end: float) -> Iterable[float]:
    """Yield places from the begin to the end, always the begin."""
    return (begin + at * _STEP for at in range(int((end - begin) // _STEP) + 1))
