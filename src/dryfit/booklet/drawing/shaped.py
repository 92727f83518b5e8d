"""Tapers, curves and bevels as they are set and sawn: on the jig, at the fence, beside a line.

On the jig the part is seen from above, its stop block on the left; at the fence in section, from
where it is fed; beside a line from the side, what is cut away below.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from math import sqrt

from dryfit.booklet.drawing.canvas import BOLD, DASHED, FINE, OUTLINE, Canvas, Svg
from dryfit.booklet.drawing.dimension import Span, dimension_beside, dimensions_below
from dryfit.booklet.drawing.rect import Point, Rect
from dryfit.booklet.drawing.shapes import caption, draw_fence, draw_mark, draw_table, leader
from dryfit.booklet.text import Say
from dryfit.geometry.frame import SURFACES
from dryfit.joinery.feature import Feature
from dryfit.placing.model import Model, Part
from dryfit.plan.operation import Work
from dryfit.plan.plan import Step
from dryfit.plan.setting import Setting

SHAPES = frozenset({"taper", "curve", "bevel"})
"""Kinds of operations that have a picture of their own."""

_LONG = 92.0
_HIGH = 26.0
_WIDE = 66.0
_ROOM = 118.0
_BLOCK = 5.0
_ARC = 24
"""Straight pieces of which an arch is drawn."""


@dataclass(frozen=True, slots=True)
class _Cut:
    """A shape of a part with the row of work that cuts it."""

    part: Part
    feature: Feature
    work: Work

    @property
    def sizes(self) -> tuple[Fraction, Fraction, Fraction]:
        return self.part.length, self.part.width, self.part.thickness

    @property
    def normal(self) -> int:
        return SURFACES[self.feature.surface][0]

    @property
    def toward(self) -> str:
        assert self.feature.form is not None
        assert self.feature.form.toward is not None
        return self.feature.form.toward


def shaped_drawing(
    model: Model, step: Step, values: dict[str, Setting], say: Say, title: str
) -> Svg | None:
    """Return the picture of a step of tapers, curves or bevels, or None where it has none."""
    canvas = Canvas()
    return canvas.finish(title) if draw_shapes(canvas, model, step, values, say) > 0 else None


def draw_shapes(
    canvas: Canvas, model: Model, step: Step, values: dict[str, Setting], say: Say
) -> float:
    """Draw the tapers, curves and bevels of a step below one another, each figure once.

    Returns the bottom y, 0 where there is none.
    """
    y = 0.0
    drawn: set[tuple[object, ...]] = set()
    for cut in _cuts(model, step):
        place = cut.sizes[cut.normal] if "jig" in values else cut.feature.along
        figure = (cut.part.name, cut.feature.kind, cut.feature.depth, place)
        if figure in drawn:
            continue
        drawn.add(figure)
        if "jig" in values:
            y = _on_jig(canvas, cut, values, say, y)
        elif cut.feature.role == "bevel":
            y = _bevelled(canvas, cut, values, say, y)
        else:
            y = _from_side(canvas, cut, say, y)
    return y


def _cuts(model: Model, step: Step) -> Iterator[_Cut]:
    parts = {part.name: part for part in model.parts}
    for operation in step.operations:
        for work in operation.work:
            part = parts.get(work.part)
            for feature in part.features if part is not None else ():
                if part is not None and feature.id in work.features and feature.role in SHAPES:
                    yield _Cut(part, feature, work)


def _on_jig(canvas: Canvas, cut: _Cut, values: dict[str, Setting], say: Say, top: float) -> float:
    """Draw the part on the jig, from above; along it everything is drawn shorter than it is."""
    left, run = Fraction(values["jig"].value), Fraction(values["stop"].value)
    full = cut.sizes[cut.normal]
    words = f"From above: {cut.part.name} on the taper jig, fed to the right"
    y = caption(canvas, -_BLOCK, top, words, bold=True, room=_ROOM)
    long, high = _LONG / float(cut.part.length), min(1.0, _HIGH / float(full))
    slope = float(full - left) / float(run)

    def cleat(along: float) -> float:
        return (float(left) + slope * along) * high

    far = float(cut.part.length)
    edge = y + cleat(far) + 8.0
    end = far * long
    faces = [(0.0, edge - cleat(0)), (end, edge - cleat(far))]
    across = float(full) * high
    outer = [(x, level + across) for x, level in faces]
    begins = float(run) * long
    canvas.polygon(
        (faces[0], faces[1], outer[1], (begins, edge), (0.0, edge)), fill="white", pen=OUTLINE
    )
    _hatched(canvas, ((0.0, edge), (begins, edge), (0.0, edge + float(full - left) * high)))
    canvas.polygon((*((x, level - 4.0) for x, level in faces), *faces[::-1]), pen=FINE)
    canvas.rect(Rect(-_BLOCK, edge - cleat(0) - 4.0, 0.0, edge), fill="black", pen=None)
    canvas.lines([((-_BLOCK - 4, edge), (end + 8, edge))], BOLD)
    leader(canvas, (end + 2, edge), (end + 6, edge + 5), "edge of the jig: the cut")
    leader(canvas, (end * 0.3, edge - cleat(far * 0.3) - 2.0), (end * 0.3 + 4, y + 1.0), "cleat")
    canvas.text((-_BLOCK - 1.0, edge - cleat(0) - 2.0), "stop block", anchor="end")
    dimension_beside(
        canvas, edge, edge - cleat(0), (say.setting(left),), at=-_BLOCK - 8, edge=-_BLOCK
    )
    dimension_beside(
        canvas, edge, edge - cleat(float(run)), (say.setting(full),), at=begins + 3, edge=begins
    )
    low = edge + float(full - left) * high
    y = dimensions_below(canvas, [Span(0.0, begins, (say.setting(run),))], edge, start=low + 1.0)
    note = (
        "Hatched: the strip that comes off. The slant is drawn steeper than it is. Which marks lie "
        "down, at the cleat and at the block is listed beside it."
    )
    return caption(canvas, -_BLOCK - 4, y + 1.0, note, room=_ROOM) + 2.0


def _bevelled(canvas: Canvas, cut: _Cut, values: dict[str, Setting], say: Say, top: float) -> float:
    """Draw the section: the fence on the right, the side that loses most on the table."""
    fence = values.get("fence")
    wide, high = cut.sizes[cut.normal], cut.sizes[SURFACES[cut.toward][0]]
    scale = min(1.5, _WIDE / float(wide), _HIGH / float(high))
    seen = "From where you feed" if fence is not None else "In section"
    y = caption(canvas, -_WIDE, top, f"{seen}: {cut.part.name}", bold=True, room=_ROOM) + 8.0
    table = y + float(high) * scale
    outer, off = -float(wide) * scale, float(cut.feature.depth) * scale
    corner: tuple[Point, ...] = ((outer, y), (outer, table), (outer + off, table))
    canvas.polygon(((0.0, y), (outer, y), (outer + off, table), (0.0, table)), pen=OUTLINE)
    _hatched(canvas, corner)
    draw_mark(canvas, (-float(wide) * scale / 2, table - 3.2), cut.toward)
    if fence is not None:
        draw_table(canvas, outer - 8, 12.0, table)
        draw_fence(canvas, Rect(0.0, y - 4.0, 7.0, table))
        canvas.text((9.0, table - 5.0), "fence", anchor="start")
        lean = off / (float(high) * scale)
        canvas.lines([((outer + off, table), (outer - lean * 6.0, y - 6.0))], BOLD)
    else:
        canvas.lines([((outer + off, table), (outer, y))], BOLD)
    spans = [Span(outer, outer + off, (say.setting(cut.feature.depth),))]
    if fence is not None:
        spans.append(Span(outer + off, 0.0, (say.setting(Fraction(fence.value)),), "at the table"))
    y = dimensions_below(canvas, spans, table + 0.5, start=table + 3.0)
    angle = dict(cut.feature.form.sizes)["angle"] if cut.feature.form else Fraction(0)
    note = f"Hatched: what comes off, {float(angle):g} degrees from a square cut."
    return caption(canvas, -_WIDE, y + 1.0, note, room=_ROOM) + 2.0


def _from_side(canvas: Canvas, cut: _Cut, say: Say, top: float) -> float:
    """Draw a taper or a curve beside its line, the surface that is cut into below."""
    feature = cut.feature
    axis = SURFACES[cut.toward][0]
    length, deep = cut.sizes[axis], cut.sizes[cut.normal]
    first = "E" if axis == 1 else "F" if axis == 2 else "R"
    start, end = feature.ranges(cut.sizes)[axis]
    scale = min(1.0, _LONG / float(length), _HIGH * 2 / float(deep))
    words = f"{cut.part.name}, {first} on the left, {feature.surface} below"
    y = caption(canvas, 0.0, top, words, bold=True, room=_ROOM)
    low, right = y + float(deep) * scale, float(length) * scale
    line = [(x * scale, low - off * scale) for x, off in _line(cut, start, end)]
    canvas.polyline(((0.0, low), (0.0, y), (right, y), (right, low)), OUTLINE)
    canvas.lines(
        [((0.0, low), (float(start) * scale, low)), ((float(end) * scale, low), (right, low))]
    )
    _hatched(canvas, ((float(start) * scale, low), *line, (float(end) * scale, low)))
    canvas.polyline(line, BOLD)
    canvas.lines([((float(start) * scale, low), (float(end) * scale, low))], DASHED)
    draw_mark(canvas, (5.0, y + 4.0), first)
    at, deepest = min(line, key=lambda point: point[1])
    canvas.lines([((at, deepest), (right, deepest))], DASHED)
    dimension_beside(
        canvas, low, deepest, (say.setting(feature.depth),), at=right + 4, edge=right + 0.8
    )
    places = [place for place in (start, end) if 0 < place < length]
    spans = [Span(0.0, float(place) * scale, (say.setting(place),)) for place in places]
    spans.append(Span(0.0, right, (say.size(length),)))
    return dimensions_below(canvas, spans, low + 0.5, start=low + 2.0) + 3.0


def _line(cut: _Cut, start: Fraction, end: Fraction) -> list[Point]:
    """Return points of the line of a cut: along the part, and how much is off there, in mm."""
    deep = float(cut.feature.depth)
    if cut.feature.role == "taper":
        thin_at_start = cut.toward in {"R", "E", "F"}
        return [(float(start), deep if thin_at_start else 0.0),
                (float(end), 0.0 if thin_at_start else deep)]  # fmt: skip
    half, middle = float(end - start) / 2, float(start + end) / 2
    shares = [2 * step / _ARC - 1 for step in range(_ARC + 1)]
    if deep > half:
        return [(middle + half * share, deep * (1 - share * share)) for share in shares]
    radius = (half * half + deep * deep) / (2 * deep)
    return [
        (middle + half * share, sqrt(radius**2 - (half * share) ** 2) - (radius - deep))
        for share in shares
    ]


def _hatched(canvas: Canvas, corners: tuple[Point, ...]) -> None:
    """Draw what is cut away: a fine outline, with lines straight across the way that it runs."""
    canvas.polygon(corners, pen=FINE)
    left, right = min(x for x, _ in corners), max(x for x, _ in corners)
    steps = max(2, int((right - left) // 1.8))
    for step in range(1, steps):
        x = left + (right - left) * step / steps
        levels = sorted(_crossings(corners, x))
        pairs = zip(levels[::2], levels[1::2], strict=False)
        canvas.lines([((x, low), (x, high)) for low, high in pairs], FINE)


def _crossings(corners: tuple[Point, ...], x: float) -> Iterator[float]:
    for (ax, ay), (bx, by) in zip(corners, (*corners[1:], corners[0]), strict=True):
        if min(ax, bx) < x <= max(ax, bx):
            yield ay + (by - ay) * (x - ax) / (bx - ax)
