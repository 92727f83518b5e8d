"""A cut at a stop from the maker's place: how high the cutter stands, and what that is made of."""

from __future__ import annotations

from fractions import Fraction

from dryfit.booklet.drawing.canvas import DASHED, FINE, Canvas, width_of
from dryfit.booklet.drawing.cut_at_stop import STOP, Crosscut, goes_on, part_end, shown_height
from dryfit.booklet.drawing.dimension import dimension_beside
from dryfit.booklet.drawing.lying import Lying, Region
from dryfit.booklet.drawing.rect import Rect
from dryfit.booklet.drawing.ruler import Ruler
from dryfit.booklet.drawing.shapes import draw_body, draw_cut, draw_table, leader
from dryfit.booklet.text import Say, Text

_BELOW_TABLE = 4.0
_ROOM_FOR_HEIGHT = 9.0
_RIGHT = 116.0


def front_view(
    canvas: Canvas, cut: Crosscut, way: Lying, scale: Ruler, say: Say, top: float
) -> float:
    """Draw the part on the sled from the maker's place; return where the view ends."""
    rise = scale.scale
    height = cut.height if cut.height is not None else Fraction(0)
    high = float(height)
    part_high, base = shown_height(way), float(cut.base)
    table = top + max(max(high, base + part_high) * rise, _ROOM_FOR_HEIGHT) + 1.0
    floor = table - base * rise
    right = part_end(way, scale)
    draw_table(canvas, -STOP - 2, right + 4, table)
    if base:
        sled = Rect(-STOP, floor, right + 2, table)
        canvas.rect(sled, fill="white", pen=FINE)
    for region in way.regions:
        _hatch_front(canvas, region, scale, floor)
    if not way.regions:
        waste = Rect(scale.at(float(cut.far or cut.near)), floor - part_high * rise, right, floor)
        canvas.hatch(waste)
    open_end = goes_on(way, scale)
    draw_body(canvas, 0.0, right, floor - part_high * rise, floor, breaks=scale.breaks(),
              open_end=open_end)  # fmt: skip
    if part_high < float(way.sizes[2]):  # the part goes on upwards
        level = floor - part_high * rise
        canvas.rect(Rect(0.0, level - 0.5, right, level + 0.5), fill="white", pen=None)
        canvas.lines([((0.0, level), (right, level))], DASHED)
    stop = Rect(-STOP + 1, floor - max(part_high * rise, 5.0), 0, floor)
    canvas.rect(stop, fill="black", pen=None)
    blade = _blade(cut, scale, table - high * rise, table + _BELOW_TABLE)
    canvas.rect(blade, fill="black", pen=None)
    figure = dimension_beside(canvas, table, table - high * rise, (say.setting(height),),
                              at=right + 7, edge=blade.right + 0.8)  # fmt: skip
    _sum_of_height(canvas, cut, way, say, figure)
    beside = blade.middle[0] + 4 + width_of(cut.cutter) < figure.left - 1
    level = table + (5.0 if beside else 8.0)
    leader(canvas, (blade.middle[0], blade.bottom), (blade.middle[0] + 3, level), cut.cutter)
    return level + 3.0


def _sum_of_height(canvas: Canvas, cut: Crosscut, way: Lying, say: Say, figure: Rect) -> None:
    """Write below the height what it is made of: the sled's base and the depth of the cut."""
    if cut.height is None or not cut.base or not way.regions:
        return
    deep = cut.height - cut.base
    first: Text = (say.setting(cut.base), " +")
    then: Text = (say.setting(deep), " deep")
    made: Text = (*first, " ", *then)
    fits = figure.left + width_of(made) <= _RIGHT
    for line, text in enumerate((made,) if fits else (first, then)):
        canvas.text((figure.left, figure.bottom + 3.4 + 5.2 * line), text, anchor="start")


def _hatch_front(canvas: Canvas, region: Region, scale: Ruler, floor: float) -> None:
    low, high = (float(side) * scale.scale for side in region.from_table)
    left, right = (scale.at(float(side)) for side in region.from_stop)
    draw_cut(canvas, Rect(left, floor - high, right, floor - low))


def _blade(cut: Crosscut, scale: Ruler, top: float, bottom: float) -> Rect:
    near = scale.at(float(cut.near))
    far = scale.at(float(cut.far)) if cut.far is not None else near + 0.6
    return Rect(near, top, max(far, near + 0.6), bottom)
