"""A cut along a part at a fence, as a section seen from where the part is fed.

Saws stand with the fence on the right of the blade.  A router table's fence is behind the bit; its
section is drawn the same way, so that one picture is learned.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from dryfit.booklet.drawing.canvas import DASHED, OUTLINE, Canvas, Svg
from dryfit.booklet.drawing.dimension import Span, dimension_beside, dimensions_below
from dryfit.booklet.drawing.lying import Lying, alike, named
from dryfit.booklet.drawing.rect import Rect
from dryfit.booklet.drawing.shapes import (
    Notes,
    caption,
    draw_body,
    draw_cut,
    draw_fence,
    draw_mark,
    draw_table,
    foot_note,
    leader,
    scale_note,
)
from dryfit.booklet.text import Say, Text
from dryfit.plan.setting import Setting

_ROOM = 72.0
_NARROW = 50.0
_FIGURES = 17.0
_TALLEST = 32.0
_FENCE_ABOVE = 4.0
_FENCE = 7.0
_WASTE = 9.0
_BELOW_TABLE = 4.0
_SAW_ABOVE = 4.0
_FOOT = 1.5
_WHOLE, _HALF, _CAPTION = 122.0, 64.0, 58.0
_ENDS = frozenset({"R", "R2"})


@dataclass(frozen=True, slots=True)
class Rip:
    """The settings of a cut along a fence, mm: near and far side of the cutter, height if any."""

    near: Fraction
    far: Fraction | None
    height: Fraction | None
    cutter: Text
    measure: str | None


def rip_of(fence: Setting, height: Setting | None, cutter: Text) -> Rip:
    """Return the settings of a cut along a fence in plain numbers."""
    above = Fraction(height.value) if height is not None else None
    return Rip(Fraction(fence.value), fence.far, above, cutter, fence.waits)


def rip_drawing(
    rip: Rip, lyings: Sequence[Lying], say: Say, title: str, *, noted: Notes = frozenset()
) -> Svg:
    """Return the section through fence, part and cutter, one for each way of holding.

    Several stand two in a row where all are narrow enough.
    """
    canvas = Canvas()
    groups = alike(lyings, whole=False)
    left = -max(_paper_width(rip, group[0])[0] for group in groups) - _FIGURES
    pair = len(groups) > 1
    sheets = [_sheet(rip, group, say, left, _CAPTION if pair else _WHOLE) for group in groups]
    if pair and any(sheet.width() > _HALF for sheet, _ in sheets):
        pair = False
        sheets = [_sheet(rip, group, say, left, _WHOLE) for group in groups]
    y = row = 0.0
    for index, (sheet, down) in enumerate(sheets):
        right = _HALF if pair and index % 2 else 0.0
        row = row if right else y
        canvas.place(sheet, right, row)
        y = max(y, row + down)
    goes_on = "The part goes on above. " if any(_stands(way) for way in lyings) else ""
    note = f"From where you feed. {goes_on}{scale_note(broken=False)}"
    return canvas.finish(title, note=foot_note(canvas, left, y, note, noted, room=116.0))


def _sheet(
    rip: Rip, group: Sequence[Lying], say: Say, left: float, room: float
) -> tuple[Canvas, float]:
    """Return the section of parts that lie alike, with its heading, and where it ends."""
    sheet = Canvas()
    top = caption(sheet, left, 0.0, named(group), bold=True, room=room)
    return sheet, _section(sheet, rip, group[0], say, top)


def _stands(way: Lying) -> bool:
    """Return whether the part stands on an end, held by a jig."""
    return way.marks[2] in _ENDS


def _drawn_high(rip: Rip, way: Lying) -> float:
    """Return how much of the part is drawn, mm; of what stands on its end only the foot is."""
    high = float(way.sizes[2])
    return min(high, _FOOT * float(rip.height)) if _stands(way) and rip.height else high


def _paper_width(rip: Rip, way: Lying) -> tuple[float, float]:
    """Return how wide the part comes on paper, with its waste, and the scale."""
    through = not way.regions
    wide = float(rip.far if rip.far is not None else rip.near) if through else float(way.sizes[1])
    tallest = max(_drawn_high(rip, way), float(rip.height or 0))
    # The figures of a groove stand beside it, where a rip has room for them inside.
    room = _ROOM - _WASTE if through else _NARROW
    scale = min(1.5, room / wide, _TALLEST / tallest)
    return wide * scale + (_WASTE if through else 0.0), scale


def _section(canvas: Canvas, rip: Rip, way: Lying, say: Say, top: float) -> float:
    through = not way.regions
    far = float(rip.far if rip.far is not None else rip.near)
    high = _drawn_high(rip, way)
    tallest = max(high, float(rip.height or 0))
    width, scale = _paper_width(rip, way)
    above = 0.0 if rip.height is not None else _SAW_ABOVE
    # The fence rises above the part, and ends below what is written over the section.
    fence = max(high * scale + _FENCE_ABOVE, 14.0)
    table = top + max(tallest * scale + above, fence) + 1.0
    left = -width
    draw_table(canvas, left - 2, _FENCE + 3, table)
    part_top = table - high * scale
    if through:
        canvas.hatch(Rect(left, part_top, -far * scale, table))
    for region in way.regions:
        near_side, far_side = (float(side) * scale for side in region.from_fence)
        low, up = (float(side) * scale for side in region.from_table)
        draw_cut(canvas, Rect(-far_side, table - up, -near_side, table - low))
    if _stands(way):
        outline = (0.0, table), (0.0, part_top), (left, part_top), (left, table), (0.0, table)
        sides = ((outline[0], outline[1]), (outline[2], outline[3]), (outline[3], outline[4]))
        canvas.lines(sides, OUTLINE)
    else:
        draw_body(canvas, 0.0, left, part_top, table, breaks=(), open_end=through)
    draw_fence(canvas, Rect(0, table - fence, _FENCE, table))
    guide = "jig" if _stands(way) else "fence"
    canvas.text((_FENCE + 1.5, table - 5.0), guide, anchor="start")
    _cutters(canvas, rip, way, scale, table, tallest)
    _marks(canvas, rip, way, scale, table, (left + (_WASTE if through else 0.0), part_top))
    if rip.height is not None:
        level = table - float(rip.height) * scale
        dimension_beside(canvas, table, level, (say.setting(rip.height),), at=left - 5,
                         edge=-far * scale - 0.8)  # fmt: skip
    spans = [
        Span(-at * scale, 0.0, ("about " if rip.measure else "", say.setting(exact)), note)
        for at, exact, note in _distances(rip, way)
    ]
    return dimensions_below(canvas, spans, table + 0.5, start=table + _BELOW_TABLE + 4.0) + 3.0


def _distances(rip: Rip, way: Lying) -> list[tuple[float, Fraction, str]]:
    """Return what to dimension from the fence: near and far side, or the passes' near sides."""
    measured = f"{rip.measure}, " if rip.measure else ""
    fences = [step.fence for step in way.passes if step.fence is not None]
    if len(fences) > 1:
        ordinals = [f"pass {number}, near side" for number in range(1, len(fences) + 1)]
        return [(float(at), at, words) for at, words in zip(fences, ordinals, strict=True)]
    found = [(float(rip.near), rip.near, f"{measured}near side")]
    if rip.far is not None and way.regions:
        found.append((float(rip.far), rip.far, "far side"))
    return [row for row in found if row[0] > 0]


def _cutters(
    canvas: Canvas, rip: Rip, way: Lying, scale: float, table: float, tallest: float
) -> None:
    """Draw the cutter where it stands, and dashed where other passes put it."""
    kerf = float(rip.far - rip.near) if rip.far is not None else 0.0
    above = float(rip.height) if rip.height is not None else tallest + _SAW_ABOVE / scale

    def at(near: float) -> Rect:
        right = -near * scale
        return Rect(min(right - kerf * scale, right - 0.6), table - above * scale, right,
                    table + _BELOW_TABLE)  # fmt: skip

    blade = at(float(rip.near))
    canvas.rect(blade, fill="black", pen=None)
    for step in way.passes:
        if step.fence is not None and step.fence != rip.near:
            canvas.rect(at(float(step.fence)), pen=DASHED)
    middle = blade.middle[0]
    leader(canvas, (middle, blade.bottom), (middle + 3, table + _BELOW_TABLE + 2), rip.cutter)


def _marks(
    canvas: Canvas,
    rip: Rip,
    way: Lying,
    scale: float,
    table: float,
    corner: tuple[float, float],
) -> None:
    """Letter the surface at the fence and the one on the table, where there is room for them."""
    left, part_top = corner
    if table - part_top < 7.5:
        return
    if way.known[1] and float(rip.near) * scale > 9:
        draw_mark(canvas, (-4.6, (table + part_top) / 2), way.marks[1])
    taken = [(-float(rip.far or rip.near) * scale - 1, -float(rip.near) * scale + 1)]
    taken += [
        (-float(region.from_fence[1]) * scale, -float(region.from_fence[0]) * scale)
        for region in way.regions
    ]
    if way.known[2]:
        for step in range(int(-left) - 8):
            x = -14.0 - step
            if x - 4 > left and all(x + 5 < a or b < x - 5 for a, b in taken):
                draw_mark(canvas, (x, table - 4.4), way.marks[2])
                return
