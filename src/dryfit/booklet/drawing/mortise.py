"""A stopped cut between two limits, such as a mortise: from above, and as a section.

The fence is behind the part.  The end that touches is on the side that the setting names, so that
left and right hands come out as mirror images.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from dryfit.booklet.drawing.canvas import OUTLINE, Canvas, Svg
from dryfit.booklet.drawing.dimension import Span, dimension_beside, dimensions_below
from dryfit.booklet.drawing.lying import Lying, alike, named
from dryfit.booklet.drawing.rect import Rect
from dryfit.booklet.drawing.ruler import Ruler, ruler
from dryfit.booklet.drawing.shapes import (
    Notes,
    caption,
    draw_body,
    draw_cut,
    draw_fence,
    draw_mark,
    draw_stop,
    draw_table,
    foot_note,
    place_mark,
    scale_note,
)
from dryfit.booklet.text import Say
from dryfit.joinery.feature import Range
from dryfit.plan.setting import Setting

_ROOM = 70.0
_LEFT = -20.0
_TALLEST = 26.0
_TALLEST_OF_SEVERAL = 18.0
_FENCE = 4.0
_AROUND = 12.0
_STOP = 7.0
_OFF_BREAK = 6.5


@dataclass(frozen=True, slots=True)
class Stopped:
    """The settings of a stopped cut, mm: from the end to both limits, from the fence, and deep.

    `limits` is None where the part is cut to its marks.  `rests` is whether the part lies still
    against its stop; along a router table's fence it moves from one stop to the other.
    """

    limits: tuple[Fraction, Fraction] | None
    fence: Setting | None
    depth: Fraction | None
    side: str
    rests: bool = True


def stopped_of(
    stop: Setting | None, fence: Setting | None, depth: Setting | None, *, rests: bool = True
) -> Stopped:
    """Return the settings of a stopped cut in plain numbers; without a stop it is cut to marks."""
    deep = Fraction(depth.value) if depth is not None else None
    if stop is None:
        return Stopped(None, fence, deep, "left")
    begin = Fraction(stop.value)
    return Stopped((begin, stop.far or begin), fence, deep, stop.side or "left", rests)


def stopped_drawing(
    cut: Stopped,
    lyings: Sequence[Lying],
    say: Say,
    title: str,
    *,
    section: bool = True,
    noted: Notes = frozenset(),
) -> Svg:
    """Return the view from above and the section of a stopped cut, for each way of holding.

    Without `section` it is left out: the depth was drawn before and stays.
    """
    groups = alike(lyings, whole=True)
    tallest = _TALLEST if len(groups) == 1 else _TALLEST_OF_SEVERAL
    canvas = Canvas()
    y = 0.0
    for index, group in enumerate(groups):
        y = _from_above(canvas, cut, group, _ruler(cut, group[0], tallest), say, y)
        if index == 0 and section:
            y = _section(canvas, cut, group[0], say, y)
    broken = any(_ruler(cut, group[0], tallest).breaks() for group in groups)
    note = f"You stand at the lower edge. {scale_note(broken=broken)}"
    return canvas.finish(title, note=foot_note(canvas, _LEFT, y, note, noted))


def _ruler(cut: Stopped, way: Lying, tallest: float) -> Ruler:
    length = float(way.sizes[0])
    scale = min(1.2, tallest / float(way.sizes[1]))
    around = _AROUND / scale
    wanted = [(0.0, around), (length - around, length)]
    ends = (float(end) for limits in _limits(cut, way) for end in limits)
    wanted += [(end - around, end + around) for end in ends]
    if cut.side == "left":
        return ruler(length, wanted, room=_ROOM, scale=scale)
    return ruler(length, wanted, room=_ROOM, scale=scale, start=_ROOM, direction=-1)


def _limits(cut: Stopped, way: Lying) -> tuple[Range, ...]:
    """Return where the cut begins and ends: as the stops are set, else as the marks say."""
    if cut.limits is not None:
        return (cut.limits,)
    return tuple(dict.fromkeys(region.from_stop for region in way.regions))


def _measured(cut: Stopped, way: Lying) -> list[Fraction]:
    """Return the distances from the end that are written: limits, or middles of drilled holes."""
    if way.regions and all(region.drilled for region in way.regions):
        return sorted({(r.from_stop[0] + r.from_stop[1]) / 2 for r in way.regions})
    return sorted({at for row in _limits(cut, way) for at in row})


def _from_above(
    canvas: Canvas, cut: Stopped, group: Sequence[Lying], scale: Ruler, say: Say, top: float
) -> float:
    way = group[0]
    top = caption(canvas, _LEFT, top, f"From above: {named(group)}", bold=True)
    fence = top + _FENCE
    high = float(way.sizes[1]) * scale.scale
    ends = scale.at(0.0), scale.end
    left, right = min(ends), max(ends)
    out = -1.0 if cut.side == "left" else 1.0
    before, behind = (10.0, 3.0) if out < 0 else (3.0, 10.0)
    draw_fence(canvas, Rect(left - before, top, right + behind, fence))
    for region in way.regions:
        near, far = (float(side) * scale.scale for side in region.from_fence)
        xs = sorted(scale.at(float(side)) for side in region.from_stop)
        draw_cut(canvas, Rect(xs[0], fence + near, xs[1], fence + far), drilled=region.drilled)
    draw_body(canvas, ends[0], ends[1], fence, fence + high, breaks=scale.breaks())
    block = sorted((ends[0], ends[0] + out * _STOP))
    label = (left - 11, "end") if out < 0 else (right + 11, "start")
    canvas.text((label[0], top + _FENCE / 2), "fence", anchor=label[1])
    if cut.limits is not None and cut.rests:
        stop = Rect(block[0], fence + high * 0.4, block[1], fence + high)
        draw_stop(canvas, stop, on_left=cut.side == "left")
    places = _measured(cut, way)
    limits = sorted(scale.at(float(at)) for at in places)
    if cut.fence is not None:
        # A near side that stands in the fence, as of a rabbet, has no distance to draw.
        sides = [at for at, _ in _from_fence(cut.fence, way)]
        distance = next((at for at in sides if at), sides[0])
        level = fence + float(distance) * scale.scale
        at, edge = (right + 6.0, limits[-1]) if out < 0 else (left - 6.0, limits[0])
        dimension_beside(canvas, fence, level, (say.setting(distance),), at=at, edge=edge)
    spans = [Span(ends[0], scale.at(float(at)), (say.setting(at),)) for at in places]
    bottom = dimensions_below(canvas, spans, fence + high, start=fence + high + 1.0) + 3.0
    body = Rect(left, fence, right, fence + high)
    place_mark(canvas, way.marks[0], [(ends[0] - out * 4.6, body.middle[1])], body)
    if way.known[1]:
        steps = [ends[0] - out * (4.6 + step) for step in range(int(right - left) - 4)]
        clear = [x for x in steps if all(abs(x - at) > _OFF_BREAK for at in scale.breaks())]
        place_mark(canvas, way.marks[1], [(x, fence + 4.4) for x in clear], body)
    return bottom


def _from_fence(fence: Setting, way: Lying) -> tuple[tuple[Fraction, str], ...]:
    """Return the distances from the fence with their names: a drill is set by its centre."""
    near, far = Fraction(fence.value), fence.far
    if far is None:
        return ((near, ""),)
    if way.regions and all(region.drilled for region in way.regions):
        return (((near + far) / 2, "centre"),)
    return (near, "near side"), (far, "far side")


def _section(canvas: Canvas, cut: Stopped, way: Lying, say: Say, top: float) -> float:
    """Draw the part's section with the cut from above, the fence on the left behind it."""
    top = caption(canvas, _LEFT, top, "Section through the cut", bold=True)
    scale = min(1.2, _TALLEST / float(max(way.sizes[1:])))
    wide, high = (float(size) * scale for size in way.sizes[1:])
    table = top + high + 1.0
    left = 4.0
    draw_table(canvas, left - 12, left + wide + 10, table)
    for region in way.regions:
        near, far = (float(side) * scale for side in region.from_fence)
        low, up = (float(side) * scale for side in region.from_table)
        draw_cut(canvas, Rect(left + near, table - up, left + far, table - low))
    canvas.rect(Rect(left, table - high, left + wide, table), pen=OUTLINE)
    draw_fence(canvas, Rect(left - 6, table - high - 1, left, table))
    if way.known[2] and high > 8:
        draw_mark(canvas, (left + wide - 5, table - 4.4), way.marks[2])
    if cut.fence is not None and cut.fence.far is not None:
        spans = [
            Span(left, left + float(at) * scale, (say.setting(at),), name)
            for at, name in _from_fence(cut.fence, way)
        ]
        bottom = dimensions_below(canvas, spans, table + 0.5, start=table + 1.0)
    else:
        bottom = table + 2.0
    if cut.depth is not None:
        from_below = all(region.from_table[0] == 0 for region in way.regions)
        surface = table if from_below else table - high
        deepest = surface + float(cut.depth) * scale * (-1.0 if from_below else 1.0)
        figure = dimension_beside(
            canvas,
            surface,
            deepest,
            (say.setting(cut.depth),),
            at=left + wide + 5,
            edge=left + wide + 0.8,
        )
        canvas.text((figure.right + 1.4, figure.middle[1]), "deep", anchor="start")
    return bottom + 3.0
