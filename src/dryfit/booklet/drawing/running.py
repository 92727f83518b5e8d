"""Running dimensions: figures in a row, all counted from one mark, as a tape is read.

Where places lie closer together than their figures are wide, the figures are spread and the lines
to them bent, in the order of the places.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from dryfit.booklet.drawing.canvas import FINE, Canvas, width_of
from dryfit.booklet.drawing.lettering import CAP_HEIGHT
from dryfit.booklet.text import Text

FIGURE = 5.0
"""Font size in mm of a running figure."""

_AIR = 2.6
STEP = FIGURE * CAP_HEIGHT + 1.6
"""Height of a line of figures, mm."""

_STEM = 2.2
_BEND = 3.4


@dataclass(frozen=True, slots=True)
class Tick:
    """A place on paper, mm, with its distance from the mark as a figure; a size is set in bold."""

    at: float
    figure: Text
    size: bool = False


def running_below(
    canvas: Canvas,
    ticks: Sequence[Tick],
    top: float,
    *,
    room: tuple[float, float],
    start: float = 0.0,
) -> float:
    """Write ticks along x in rows below a view that ends at `top`; return the bottom.

    `room` is how far to the left and to the right figures may reach, `start` from where down.
    """
    ordered = sorted(ticks, key=lambda tick: tick.at)
    widths = [width_of(tick.figure, size=FIGURE, bold=tick.size) + _AIR for tick in ordered]
    count = 1
    if not ordered:
        return top
    wide = room[1] - room[0]
    while count < len(ordered) and sum(_stepped(widths, count)) > wide - max(widths) / 2:
        count += 1
    height, bent = STEP, max(top, start) + _STEM
    places = spread([tick.at for tick in ordered], _stepped(widths, count), room)
    for index, (tick, at) in enumerate(zip(ordered, places, strict=True)):
        row = index % count
        level = bent + _BEND + row * height
        canvas.lines([((tick.at, top), (tick.at, bent))], FINE)
        canvas.lines([((tick.at, bent), (at, bent + _BEND))], FINE)
        if row:
            canvas.lines([((at, bent + _BEND), (at, level))], FINE)
        middle = at, level + height / 2
        canvas.text(middle, tick.figure, size=FIGURE, bold=tick.size)
    return bent + _BEND + count * height


def running_beside(
    canvas: Canvas, ticks: Sequence[Tick], left: float, *, room: tuple[float, float]
) -> float:
    """Write ticks along y in a column to the right of a view that ends at `left`.

    Returns how far the figures reach.  `room` is how far up and down they may reach.
    """
    ordered = sorted(ticks, key=lambda tick: tick.at)
    places = spread([tick.at for tick in ordered], [STEP] * len(ordered), room)
    right = left
    for tick, at in zip(ordered, places, strict=True):
        canvas.lines([((left, tick.at), (left + _STEM, tick.at))], FINE)
        canvas.lines([((left + _STEM, tick.at), (left + _STEM + _BEND, at))], FINE)
        where = left + _STEM + _BEND + 1.0, at
        done = canvas.text(where, tick.figure, size=FIGURE, bold=tick.size, anchor="start")
        right = max(right, done.right)
    return right


def spread(
    places: Sequence[float], widths: Sequence[float], room: tuple[float, float]
) -> list[float]:
    """Return places as near to the wanted ones as they can be without two being too close.

    `places` in order; each takes the width beside it, half to either side.  What runs out of the
    room is pushed back into it as far as all fit.
    """
    groups: list[tuple[float, list[float]]] = []  # where the middle of a group is, its widths
    for place, width in zip(places, widths, strict=True):
        middle, row = place, [width]
        while groups and groups[-1][0] + sum(groups[-1][1]) / 2 > middle - sum(row) / 2:
            before, earlier = groups.pop()
            count, more = len(earlier), len(row)
            row = [*earlier, *row]
            middle = (before * count + middle * more) / (count + more)
        middle = max(middle, room[0] + sum(row) / 2)
        middle = max(min(middle, room[1] - sum(row) / 2), room[0] + sum(row) / 2)
        groups.append((middle, row))
        groups = _settled(groups)
    found = []
    for middle, row in groups:
        at = middle - sum(row) / 2
        for width in row:
            found.append(at + width / 2)
            at += width
    return found


def _settled(groups: list[tuple[float, list[float]]]) -> list[tuple[float, list[float]]]:
    """Return groups of which none runs into the one before it, joined from the last on."""
    while len(groups) > 1:
        (before, earlier), (middle, row) = groups[-2], groups[-1]
        if before + sum(earlier) / 2 <= middle - sum(row) / 2 + 1e-9:
            break
        both = [*earlier, *row]
        right = middle + sum(row) / 2
        groups = [*groups[:-2], (right - sum(both) / 2, both)]
    return groups


def _stepped(widths: Sequence[float], count: int) -> list[float]:
    """Return how much room each figure takes where neighbours stand in different rows."""
    return list(widths) if count == 1 else [max(widths) / count] * len(widths)
