"""A cut across a part at a stop: from the maker's place, and from above.

The sled's fence is on the maker's side and the stop on the left, as the operations assume.  Both
views share one scale along the stop, so that the cutter stands in one line on the sheet.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from dryfit.booklet.drawing.canvas import BOLD, Canvas, Svg
from dryfit.booklet.drawing.crosscut_front import front_view
from dryfit.booklet.drawing.cut_at_stop import STOP, Crosscut, goes_on, part_end, ruler_for
from dryfit.booklet.drawing.dimension import Span, dimensions_below
from dryfit.booklet.drawing.lying import Lying, alike, named
from dryfit.booklet.drawing.rect import Rect
from dryfit.booklet.drawing.ruler import Ruler
from dryfit.booklet.drawing.shapes import (
    Notes,
    caption,
    draw_body,
    draw_cut,
    draw_fence,
    draw_mark,
    draw_stop,
    foot_note,
    leader,
    scale_note,
)
from dryfit.booklet.text import Say, Text

_FENCE = 4.0
_NARROW = 36.0
_SIDE = 62.0
_NARROW_CAPTION = 56.0
_CAPTION = 118.0


def crosscut_drawing(
    cut: Crosscut,
    lyings: Sequence[Lying],
    say: Say,
    title: str,
    *,
    front: bool = True,
    noted: Notes = frozenset(),
) -> Svg:
    """Return the views of one setting: one from the maker's place, one from above for each way.

    Without `front` the first is left out: the height was drawn before and stays.
    Ways of holding that look alike share a view; left and right hands never do.
    """
    scale = ruler_for(cut, lyings)
    whole = any(not goes_on(way, scale) for way in lyings)
    groups = alike(lyings, whole=whole)
    canvas = Canvas()
    y = 0.0
    if cut.height is not None and front:
        y = caption(canvas, -STOP, y, f"From where you stand{_lies_on(cut, lyings[0])}", bold=True)
        y = front_view(canvas, cut, lyings[0], scale, say, y) + 2.0
    y = _plans(canvas, cut, groups, scale, say, y)
    waits = f" The stop waits for the measured {cut.measure}." if cut.measure else ""
    note = scale_note(broken=bool(scale.breaks())) + waits
    return canvas.finish(title, note=foot_note(canvas, -STOP, y, note, noted, room=_CAPTION))


def _lies_on(cut: Crosscut, way: Lying) -> str:
    down = f": {way.marks[2]} down" if way.known[2] else ""
    on = f" on the {cut.guide}" if cut.base and down else ""
    return down + on


def _plans(
    canvas: Canvas,
    cut: Crosscut,
    groups: Sequence[Sequence[Lying]],
    scale: Ruler,
    say: Say,
    top: float,
) -> float:
    """Draw a view from above for each group, two side by side where they are narrow enough.

    The figures stand below the first view only: they are the same for all.
    """
    narrow = scale.end <= _NARROW and len(groups) > 1
    y = row = top
    for index, group in enumerate(groups):
        sheet = Canvas()
        down = _plan(sheet, cut, group, scale, _NARROW_CAPTION if narrow else _CAPTION)
        if index == 0:
            down = _figures(sheet, cut, group[0], scale, say, down)
            for spacer in group[0].spacers():
                down = _spaced(sheet, cut, group[0], scale, say, down, spacer)
        right = _SIDE if narrow and index % 2 else 0.0
        row = row if right else y
        canvas.place(sheet, right, row)
        y = max(y, row + down)
    return y


def _plan(
    canvas: Canvas, cut: Crosscut, group: Sequence[Lying], scale: Ruler, room: float
) -> float:
    """Draw the part from above with its end at the stop; return where the view ends."""
    top = caption(canvas, -STOP, 0.0, f"From above: {_names(group)}", bold=True, room=room)
    return _lay(canvas, cut, group[0], scale, top, Fraction(0)) + 3.0


def _figures(
    canvas: Canvas, cut: Crosscut, way: Lying, scale: Ruler, say: Say, bottom: float
) -> float:
    """Write below a view how far the cutter stands from the stop; return where they end."""
    fence = bottom - 3.0
    spans = []
    if say.display.rounded(cut.near, fitted=True):
        spans.append(Span(0.0, scale.at(float(cut.near)), _distance(cut, say), "near side"))
    if cut.far is not None and way.regions:
        spans.append(Span(0.0, scale.at(float(cut.far)), (say.setting(cut.far),), "far side"))
    return dimensions_below(canvas, spans, fence - _FENCE, start=fence + 0.5) + 2.5


def _spaced(
    canvas: Canvas,
    cut: Crosscut,
    way: Lying,
    scale: Ruler,
    say: Say,
    top: float,
    spacer: Fraction,
) -> float:
    """Draw the part from above with a spacer at the stop: the other limit of the cut."""
    top = caption(canvas, -STOP, top, "The same with the spacer at the stop")
    bottom = _lay(canvas, cut, way, scale, top, spacer)
    begin = scale.at(float(spacer))
    spans = [Span(0.0, begin, (say.setting(spacer),), "spacer")]
    if cut.near != spacer:
        from_end = (say.setting(cut.near - spacer),)
        spans.append(Span(begin, scale.at(float(cut.near)), from_end, f"from {way.marks[0]}"))
    return dimensions_below(canvas, spans, bottom - _FENCE, start=bottom + 0.5) + 2.5


def _lay(
    canvas: Canvas, cut: Crosscut, way: Lying, scale: Ruler, top: float, spacer: Fraction
) -> float:
    """Draw stop, spacer, part, cutter and fence from above; return the fence's lower side."""
    high = float(way.sizes[1]) * scale.scale
    part_top = top + 3.0
    fence = part_top + high
    begin = scale.at(float(spacer)) if spacer else 0.0
    right = part_end(way, scale)
    for region in way.regions:
        near_side, far_side = (float(side) * scale.scale for side in region.from_fence)
        left, end = (scale.at(float(side + spacer)) for side in region.from_stop)
        draw_cut(canvas, Rect(left, fence - far_side, end, fence - near_side))
    if not way.regions:
        canvas.hatch(Rect(scale.at(float(cut.far or cut.near)), part_top, right, fence))
    draw_body(canvas, begin, right, part_top, fence, breaks=scale.breaks(),
              open_end=goes_on(way, scale))  # fmt: skip
    draw_fence(canvas, Rect(-STOP - 2, fence, right + 4, fence + _FENCE))
    draw_stop(canvas, Rect(-STOP + 1, part_top + high * 0.3, 0, fence))
    if spacer:
        body = Rect(0, part_top + high * 0.25, begin, fence)
        canvas.rect(body, fill="white")
        canvas.hatch(body, spacing=0.9, rising=False)
    _draw_blade_from_above(canvas, cut, scale, part_top - 3.0, fence + _FENCE)
    draw_mark(canvas, (begin + 5.0, part_top + high / 2), way.marks[0])
    if way.known[1]:
        free = _free_place(cut, way, scale, begin, right, spacer)
        if free is not None:
            draw_mark(canvas, (free, fence - 4.2), way.marks[1])
    leader(canvas, (right + 3, fence + _FENCE / 2), (right + 7, fence + _FENCE / 2), "fence")
    return fence + _FENCE


def _draw_blade_from_above(
    canvas: Canvas, cut: Crosscut, scale: Ruler, top: float, bottom: float
) -> None:
    near = scale.at(float(cut.near))
    far = scale.at(float(cut.far)) if cut.far is not None else near
    canvas.lines([((x, top), (x, bottom)) for x in sorted({near, far})], BOLD)
    if far > near:
        canvas.rect(Rect(near, top - 1.5, far, top + 1.8), fill="black", pen=None)


def _free_place(
    cut: Crosscut, way: Lying, scale: Ruler, begin: float, right: float, spacer: Fraction
) -> float | None:
    """Return an x where a mark at the fence covers no cut, blade or break; None without room."""
    near = scale.at(float(cut.near))
    far = scale.at(float(cut.far)) if cut.far is not None else near
    taken = [(near, far), (begin, begin + 8.5), *((at - 2, at + 2) for at in scale.breaks())]
    taken += [
        (scale.at(float(r.from_stop[0] + spacer)), scale.at(float(r.from_stop[1] + spacer)))
        for r in way.regions
    ]
    if not way.regions:
        taken.append((far, right))
    half = 4.6
    steps = int((right - begin) // 1.0)
    for step in range(steps):
        x = begin + 10 + step
        if x + half > right:
            return None
        if all(x + half < a or b < x - half for a, b in taken):
            return x
    return None


def _distance(cut: Crosscut, say: Say) -> Text:
    figure = say.setting(cut.near)
    return ("about ", figure) if cut.measure else (figure,)


def _names(group: Sequence[Lying]) -> str:
    """Return parts, hands and how each is turned, in the order of the cuts."""
    turns: dict[str, list[Lying]] = {}
    for way in group:
        turns.setdefault(named((way,)), []).append(way)
    alike_turned: dict[str, list[str]] = {}
    several = len({way.marks[2] for way in group}) > 1
    for name, ways in turns.items():
        alike_turned.setdefault(_turns(ways, several=several), []).append(name)
    return "; ".join(f"{', '.join(names)}: {how}" for how, names in alike_turned.items())


def _turns(ways: Sequence[Lying], *, several: bool) -> str:
    """Return which ends come to the stop, and, where the group has several, which side is down."""
    pairs = list(dict.fromkeys((way.marks[0], way.marks[2]) for way in ways))
    ends = list(dict.fromkeys(end for end, _ in pairs))
    sides = list(dict.fromkeys(down for _, down in pairs))
    if not several:
        return f"{', then '.join(ends)} at the stop"
    if len(pairs) == len(ends) * len(sides) > len(ends):
        return f"{', then '.join(ends)} at the stop, each with {' and then '.join(sides)} down"
    return f"{', then '.join(f'{end} with {down} down' for end, down in pairs)} at the stop"
