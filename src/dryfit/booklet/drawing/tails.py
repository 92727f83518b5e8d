"""Tails on the end of a board, as they are marked: from edge E, on the face, the end up.

The figures are those of the end grain, where the lines are squared across; from there the sides
slope to the shoulder line.  Pins have no picture: the tails themselves mark them.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction

from dryfit.booklet.drawing.canvas import DASHED, FINE, Canvas, Svg
from dryfit.booklet.drawing.dimension import Span, dimension_beside, dimensions_below
from dryfit.booklet.drawing.rect import Rect
from dryfit.booklet.drawing.shapes import caption, draw_body, draw_mark
from dryfit.booklet.text import Say
from dryfit.joinery.feature import Feature
from dryfit.kinds.roles import TAIL
from dryfit.placing.model import Model, Part
from dryfit.plan.plan import Step

_WIDEST = 96.0
_BELOW = 7.0
_AROUND = 4.0


@dataclass(frozen=True, slots=True)
class TailEnd:
    """An end of a part with what is sawn out between its tails, in order from E."""

    part: Part
    surface: str
    sockets: tuple[Feature, ...]


def tail_ends(model: Model, step: Step) -> tuple[TailEnd, ...]:
    """Return the ends on which a step cuts tails; hands that are alike there count once."""
    known = {part.name: part for part in model.parts}
    found: dict[tuple[str, str], TailEnd] = {}
    for work in (work for operation in step.operations for work in operation.work):
        part = known.get(work.part)
        for each in part.features if part is not None else ():
            if part is None or each.role != TAIL or each.id not in work.features:
                continue
            end = found.get((part.name, each.surface), TailEnd(part, each.surface, ()))
            if each not in end.sockets:
                sockets = tuple(sorted((*end.sockets, each), key=lambda one: one.along))
                found[part.name, each.surface] = TailEnd(part, each.surface, sockets)
    return tuple(found.values())


def tails_drawing(ends: Sequence[TailEnd], say: Say, title: str) -> Svg:
    """Return the ends one below the other, those of one figure drawn once."""
    canvas = Canvas()
    top = 0.0
    for names, end in _alike(ends):
        top = _end(canvas, names, end, say, top)
    caption(canvas, 0.0, top, "Hatched: sawn and chopped out. To scale.")
    return canvas.finish(title)


def _alike(ends: Iterable[TailEnd]) -> list[tuple[str, TailEnd]]:
    found: dict[object, tuple[list[str], TailEnd]] = {}
    for end in ends:
        figure = (end.part.width, tuple((each.along, each.depth) for each in end.sockets))
        names, _ = found.setdefault((figure, end.part.name), ([], end))
        names.append(end.surface)
    return [
        (f"{end.part.name}, end {' and '.join(names)}, on its face", end)
        for names, end in found.values()
    ]


def _end(canvas: Canvas, heading: str, end: TailEnd, say: Say, top: float) -> float:
    top = caption(canvas, 0.0, top, heading, bold=True)
    wide, deep = end.part.width, end.sockets[0].depth
    scale = min(1.0, _WIDEST / float(wide))
    right, shoulder = float(wide) * scale, top + float(deep) * scale
    bottom = shoulder + _BELOW
    for each in end.sockets:
        canvas.polygon(
            [(float(at) * scale, shoulder if low else top) for at, low in _corners(each)],
            pen=FINE,
        )
        narrow, far = (float(at) * scale for at, _ in _corners(each)[:2])
        canvas.hatch(Rect(narrow, top, far, shoulder))
    canvas.lines([((0.0, shoulder), (right, shoulder))], DASHED)
    draw_body(canvas, 0.0, right, top, bottom, breaks=())
    draw_mark(canvas, (-_AROUND, (top + shoulder) / 2), "E")
    dimension_beside(canvas, top, shoulder, (say.setting(deep),), at=right + 5.0, edge=right + 0.8)
    marks = sorted({at for each in end.sockets for at, low in _corners(each) if not low})
    spans = [Span(0.0, float(at) * scale, (say.setting(at),)) for at in marks if 0 < at < wide]
    spans.append(Span(0.0, right, (say.size(wide),)))
    return dimensions_below(canvas, spans, bottom, start=bottom + 1.0) + 4.0


def _corners(socket: Feature) -> tuple[tuple[Fraction, bool], ...]:
    """Return the corners from the end round to the shoulder, each with whether it lies there."""
    low, high = socket.along
    flare = socket.flare
    if flare is None:
        return (low, False), (high, False), (high, True), (low, True)
    return (
        (low + flare.low, False),
        (high - flare.high, False),
        (high + flare.high, True),
        (low - flare.low, True),
    )
