"""Lips on paper: hatched along the edges of a part's face, and a strip as it is glued on."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from fractions import Fraction

from dryfit.booklet.drawing.canvas import FINE, Canvas, Svg
from dryfit.booklet.drawing.dimension import Span, dimension_beside, dimensions_below
from dryfit.booklet.drawing.part_views import PartView, Side
from dryfit.booklet.drawing.rect import Rect
from dryfit.booklet.drawing.ruler import Ruler
from dryfit.booklet.drawing.shapes import caption, draw_body, draw_mark
from dryfit.booklet.text import Say, Text, joined
from dryfit.placing.lip import Lip
from dryfit.placing.model import Part

_HATCH = 0.9
_SHEET = 26.0
"""Of the core so much is drawn beside a strip; mm on paper."""
_LARGEST = 1.0
_TALLEST = 26.0


def draw_lips(
    canvas: Canvas, part: Part, view: PartView, side: Side, scale: Ruler, top: float
) -> None:
    """Hatch the lips in a view of a part; what covers the edge that looks at the maker is not."""
    for lip in part.lips:
        rect = _strip(part, lip, view, side, scale, top)
        if rect is not None:
            canvas.hatch(rect, spacing=_HATCH)
            canvas.rect(rect, pen=FINE)


def lips_told(part: Part, say: Say) -> tuple[Text, ...]:
    """Return the line below a sheet that says what is hatched along the edges of a part."""
    if not part.lips:
        return ()
    rows = ((f"{lip.surface} ", say.size(lip.thickness)) for lip in part.lips)
    return (("Lips, hatched: ", *joined(rows, ", ")),)


def _strip(
    part: Part, lip: Lip, view: PartView, side: Side, scale: Ruler, top: float
) -> Rect | None:
    high, thick = view.height * scale.scale, float(lip.thickness) * scale.scale
    left, right = sorted((scale.at(0.0), scale.end))
    if lip.surface in {"E", "E2"}:
        if side == "E":
            return None
        above = view.marked_above == (lip.surface == "E")
        return Rect(
            left, top if above else top + high - thick, right, top + (thick if above else high)
        )
    near, far = 0.0, 0.0
    if side == "F":
        # The strips of the edges run over those of the ends.
        upper, lower = ("E", "E2") if view.marked_above else ("E2", "E")
        near, far = (_on(part.lips, edge) * scale.scale for edge in (upper, lower))
    x = (left, left + thick) if lip.surface == "R" else (right - thick, right)
    return Rect(x[0], top + near, x[1], top + high - far)


def _on(lips: Iterable[Lip], surface: str) -> float:
    return sum(float(lip.thickness) for lip in lips if lip.surface == surface)


def strip_drawing(part: Part, lips: Sequence[Lip], proud: Fraction, say: Say, title: str) -> Svg:
    """Return the core's edges from their ends, with the strips standing `proud` of both faces."""
    canvas = Canvas()
    whom = " and ".join(lip.surface for lip in lips)
    top = caption(canvas, 0.0, 0.0, f"{part.name}: {whom} before the trim", bold=True)
    scale = min(_LARGEST, _TALLEST / float(part.thickness + 2 * proud))
    over, high = float(proud) * scale, float(part.thickness) * scale
    core = top + over, top + over + high
    # The strips of one part stand at both sides of one core, which goes on between them.
    left = next((lip for lip in lips if lip.surface in {"E", "R"}), None)
    right = next((lip for lip in lips if lip.surface in {"E2", "R2"}), None)
    wide = [float(lip.thickness) * scale if lip is not None else 0.0 for lip in (left, right)]
    edge = wide[0] + 2 * _SHEET
    spans: list[Span] = []
    for lip, rect in (
        (left, Rect(0.0, core[0] - over, wide[0], core[1] + over)),
        (right, Rect(edge, core[0] - over, edge + wide[1], core[1] + over)),
    ):
        if lip is not None:
            canvas.hatch(rect, spacing=_HATCH)
            canvas.rect(rect)
            draw_mark(
                canvas,
                (
                    rect.middle[0] - 12.0 if lip is right else rect.right + 12.0,
                    (core[0] + core[1]) / 2,
                ),
                lip.surface,
            )
            spans.append(Span(rect.left, rect.right, (say.setting(lip.thickness),)))
    draw_body(canvas, wide[0], edge, *core, breaks=(wide[0] + _SHEET,))
    end = edge + wide[1]
    strip = (say.setting(part.thickness + 2 * proud),)
    dimension_beside(canvas, core[0] - over, core[1] + over, strip, at=end + 7, edge=end + 0.8)
    bottom = dimensions_below(canvas, spans, core[1] + over + 0.8, start=core[1] + over + 2.0)
    note = "Hatched: the strip, proud of both faces. To scale, shortened at the break."
    caption(canvas, 0.0, bottom + 2.0, note)
    return canvas.finish(title)
