"""Parts of one length side by side, as they are laid together to be marked: one set of lines.

Lines that several share are struck across all of them with one square, from the end R that lies
flush in all.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction

from dryfit.booklet.drawing.canvas import FINE, OUTLINE, Canvas, Svg, width_of
from dryfit.booklet.drawing.lettering import SMALLEST
from dryfit.booklet.drawing.part_sheet import ALL, FIGURES, along_places, scale_along
from dryfit.booklet.drawing.ruler import GAP, Ruler
from dryfit.booklet.drawing.running import Tick, running_below
from dryfit.booklet.drawing.shapes import caption, draw_mark, zigzag
from dryfit.booklet.labels import Labels
from dryfit.booklet.text import Say
from dryfit.placing.model import Model, Part

FEW = 3
"""Copies below which nothing is gained by laying them together."""

_HIGH = 7.5
_MOST = 10
_LINES = 2


@dataclass(frozen=True, slots=True)
class Family:
    """Parts of one length that share lines: each part with where its lines are, mm from R."""

    rows: tuple[tuple[Part, tuple[Fraction, ...]], ...]

    def copies(self) -> int:
        """Return how many pieces of wood it has."""
        return sum(len(part.copies) for part, _ in self.rows)


def families(parts: Iterable[Part]) -> tuple[Family, ...]:
    """Return the families that are worth laying together, in the order of the notes.

    Parts belong together where they are equally long and all the lines of one are lines of the
    other; what waits for a measurement is left out.
    """
    found: list[list[tuple[Part, tuple[Fraction, ...]]]] = []
    for part in parts:
        places = along_places(part)
        if part.untaken("length") is not None or len(places) < _LINES or part.sloped is not None:
            continue
        for rows in found:
            first, others = rows[0]
            shared = set(places) <= set(others) or set(others) <= set(places)
            if first.length == part.length and shared:
                rows.append((part, places))
                break
        else:
            found.append([(part, places)])
    made = (Family(tuple(rows)) for rows in found)
    return tuple(family for family in made if family.copies() >= FEW)


def marking_out(family: Family, model: Model, labels: Labels) -> Svg:
    """Return the copies of a family side by side, with the lines across those that bear them."""
    canvas = Canvas()
    say = Say(model.display)
    names = "; ".join(part.written for part, _ in family.rows)
    top = caption(canvas, 0.0, 0.0, f"Together: {names}", bold=True, room=ALL) + 1.0
    strips = _strips(family, labels)
    left = max(width_of(label, bold=True) for label, _, _ in strips) + 12.0
    scale = scale_along([part for part, _ in family.rows], room=ALL - left - FIGURES)
    begin = top
    for label, _, places in strips:
        _strip(canvas, label, places, scale, top)
        top += _HIGH
    draw_mark(canvas, (-5.0, (begin + top) / 2), "R")
    every = sorted({at for _, _, places in strips for at in places})
    length = family.rows[0][0].length
    ticks = [Tick(scale.at(float(at)), (say.setting(at),)) for at in every]
    ticks.append(Tick(scale.end, (say.size(length),), size=True))
    running_below(canvas, ticks, top, room=(-left, scale.end + FIGURES))
    return canvas.finish(f"Marked out together: {names}")


def _strips(family: Family, labels: Labels) -> list[tuple[str, Part, tuple[Fraction, ...]]]:
    """Return a strip for each copy, or for the first and last few of very many."""
    rows = []
    for part, places in family.rows:
        many = len(part.copies) > _MOST // len(family.rows)
        apart = len(part.hands()) > 1
        copies = sorted(part.copies, key=lambda copy: copy.hand)
        for copy in copies[:1] if many else copies:
            name = labels.copy(copy.name)
            if many:
                name = f"{name}\u2013{labels.copy(copies[-1].name)}"
            rows.append((f"{name} {copy.hand}" if apart and not many else name, part, places))
    return rows


def _strip(
    canvas: Canvas, label: str, places: Sequence[Fraction], scale: Ruler, top: float
) -> None:
    bottom = top + _HIGH
    for index, (begin, end) in enumerate(scale.stretches):
        left = scale.at(begin) - (GAP / 4 if index else 0.0)
        right = scale.at(end) + (GAP / 4 if index < len(scale.stretches) - 1 else 0.0)
        canvas.lines([((left, y), (right, y)) for y in (top, bottom)], OUTLINE)
    ends = (scale.start, scale.end)
    canvas.lines([((x, top), (x, bottom)) for x in ends], OUTLINE)
    for at in scale.breaks():
        for half in (-GAP / 4, GAP / 4):
            canvas.polyline(zigzag(at + half, top, bottom), FINE)
    canvas.lines([((x, top), (x, bottom)) for x in (scale.at(float(at)) for at in places)], OUTLINE)
    canvas.text((-9.5, (top + bottom) / 2), label, bold=True, anchor="end", size=SMALLEST)
