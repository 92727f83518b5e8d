"""A part on paper as it is marked out: its face and its edge, all cuts counted from R, E and F.

Left and right hands lie side by side as a pair, with the edges together that are measured from: so
a maker lays them on the bench, and one line struck across serves both.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction

from dryfit.booklet.drawing.balloons import draw_balloon, radius_of
from dryfit.booklet.drawing.canvas import FINE, Canvas, Svg, text_room, width_of
from dryfit.booklet.drawing.form_words import forms_told
from dryfit.booklet.drawing.hole_rows import is_within, rows_told, within_rows
from dryfit.booklet.drawing.lips import draw_lips, lips_told
from dryfit.booklet.drawing.part_views import PartView, Side, draw_view, part_view
from dryfit.booklet.drawing.ruler import Ruler, Stretch, ruler
from dryfit.booklet.drawing.running import STEP, Tick, running_below, running_beside, spread
from dryfit.booklet.drawing.shapes import MARK, caption, draw_mark
from dryfit.booklet.drawing.sloping_side import draw_compound
from dryfit.booklet.drawing.splayed_leg import draw_splayed
from dryfit.booklet.labels import Labels
from dryfit.booklet.text import Say, Text
from dryfit.geometry.frame import SURFACES, THICKNESS, WIDTH
from dryfit.joinery.feature import Feature
from dryfit.kinds.roles import TAIL
from dryfit.placing.model import Copy, Model, Part

ALL = 158.0
HALF = 84.0
"""Width of a sheet on paper, and of one with few figures, of which two stand side by side; mm."""

_FOR_HALF = 5
"""Figures along the part that half a sheet has room for."""

_LEFT = 16.0
FIGURES = 24.0
"""Room for figures on the right, mm."""

_TALLEST = 26.0
_TALLEST_OF_TWO = 19.0
_AROUND = 9.0
_PAIR = 2.5
_LETTERS = 6.6
"""From the letter of one hand to that of the next, at least; mm."""

_MATE = 4.6
_WORD = re.compile(r" *[^ ]+ *")
_UNDER = {"F": WIDTH, "E": THICKNESS}


@dataclass(frozen=True, slots=True)
class _Hand:
    """A hand of a part with the copies that are of it."""

    copy: Copy
    labels: tuple[str, ...]


def part_sheets(part: Part, model: Model, labels: Labels) -> tuple[Svg, ...]:
    """Return both views of a part: a sheet for each pair of hands, or for one alone."""
    say = Say(model.display)
    waiting = _hands(part, labels)
    every = len(waiting) > 1
    if part.slopes_out is not None:
        return (_sloping(part, labels, say),)
    if part.sloped is not None:
        return (_splayed(part, waiting, labels, say),)
    sheets = []
    while waiting:
        pair = _pair(waiting)
        waiting = tuple(hand for hand in waiting if hand not in pair)
        canvas = Canvas()
        wide = HALF if len(along_places(part)) < _FOR_HALF and part.thickness < part.width else ALL
        top = _heading(canvas, part, pair if every else (), labels, wide)
        scale = scale_along([part], room=wide - _LEFT - FIGURES)
        top = _views(canvas, part, pair, scale, (labels, say), top)
        own = [each for hand in pair for each in _of(part, hand.copy)]
        for line in (*rows_told(own, say), *forms_told(part, say), *lips_told(part, say)):
            top = words_below(canvas, line, top, wide)
        hands = f", hand {' and '.join(hand.copy.hand for hand in pair)}" if every else ""
        sheets.append(canvas.finish(f"{part.name}{hands}, face and edge"))
    return tuple(sheets)


def _splayed(part: Part, hands: Sequence[_Hand], labels: Labels, say: Say) -> Svg:
    """Return the sides of a splayed leg unrolled: nothing on it is square."""
    canvas = Canvas()
    top = _heading(canvas, part, hands if len(hands) > 1 else (), labels, ALL)
    top = draw_splayed(canvas, (part,), say, top)
    for line in forms_told(part, say):
        top = words_below(canvas, line, top, ALL)
    return canvas.finish(f"{part.name}, its sides unrolled")


def _sloping(part: Part, labels: Labels, say: Say) -> Svg:
    """Return the sides of a board unrolled whose mitres are square to nothing."""
    canvas = Canvas()
    top = _heading(canvas, part, (), labels, ALL)
    top = draw_compound(canvas, (part,), say, top)
    for line in forms_told(part, say):
        top = words_below(canvas, line, top, ALL)
    return canvas.finish(f"{part.name}, its sides unrolled")


def words_below(canvas: Canvas, line: Text, top: float, wide: float) -> float:
    """Write a sentence with its quantities, in lines no longer than `wide`; return the bottom."""
    rows: list[Text] = [()]
    for piece in line:
        for word in _WORD.findall(piece) if isinstance(piece, str) else (piece,):
            last = rows[-1][-1] if rows[-1] else ""
            parted = isinstance(last, str) and last.endswith(" ")
            if parted and width_of((*rows[-1], word)) > wide:
                rows.append((word,))
            else:
                rows[-1] = (*rows[-1], word)
    for row in rows:
        canvas.text((-_LEFT / 2, top + 2.4), row, anchor="start")
        top += 6.0
    return top


def _heading(
    canvas: Canvas, part: Part, hands: Sequence[_Hand], labels: Labels, wide: float
) -> float:
    letter = labels.part(part.name)
    count = f", {len(part.copies)} of them" if len(part.copies) > 1 else ""
    whom = ""
    if hands:
        rows = (f"hand {hand.copy.hand}: {', '.join(hand.labels)}" for hand in hands)
        whom = f"; {'; '.join(rows)}"
    return caption(
        canvas, -_LEFT / 2, 0.0, f"{letter} {part.name}{count}{whom}", bold=True, room=wide
    )


def _hands(part: Part, labels: Labels) -> tuple[_Hand, ...]:
    found = []
    for hand in part.hands():
        copies = tuple(copy for copy in part.copies if copy.hand == hand)
        found.append(_Hand(copies[0], tuple(labels.copy(copy.name) for copy in copies)))
    return tuple(found)


def _pair(hands: Sequence[_Hand]) -> tuple[_Hand, ...]:
    """Return the first hand with its mirror image, if there is one."""
    first = hands[0]
    turned = first.copy.frame.handedness()
    other = next((hand for hand in hands if hand.copy.frame.handedness() != turned), None)
    return (first,) if other is None else (first, other)


def _views(
    canvas: Canvas,
    part: Part,
    pair: Sequence[_Hand],
    scale: Ruler,
    told: tuple[Labels, Say],
    top: float,
) -> float:
    labels, say = told
    own = tuple({each for hand in pair for each in _of(part, hand.copy)})
    features = [feature for feature in part.features if feature in own]
    top = _mates(canvas, features, part, scale, labels, top)
    bottom, start = _view(canvas, part, pair, "F", scale, say, top)
    ticks = _along(part, features, scale, say)
    room = (-_LEFT, scale.end + FIGURES)
    bottom = running_below(canvas, ticks, bottom, room=room, start=start)
    return max(_view(canvas, part, pair, "E", scale, say, bottom + 4.0)) + 4.0


def _view(
    canvas: Canvas,
    part: Part,
    pair: Sequence[_Hand],
    side: Side,
    scale: Ruler,
    say: Say,
    top: float,
) -> tuple[float, float]:
    """Draw one view of each hand, the sides together from which they are measured.

    Returns where the lowest ends, and from where down all is free beside it.
    """
    views = [(part_view(part, hand.copy, side), hand) for hand in pair]
    views.sort(key=lambda row: row[0].marked_above)
    begin = top
    for index, (view, hand) in enumerate(views):
        draw_view(canvas, view, scale, top)
        draw_lips(canvas, part, view, side, scale, top)
        high = view.height * scale.scale
        _marks(canvas, view, side, hand if len(pair) > 1 else None, scale, top)
        if index == len(views) - 1:
            features = _of(part, hand.copy)
            marked = top if view.marked_above else top + high
            down = 1.0 if view.marked_above else -1.0
            ticks = _across(part, features, side, (marked, down * scale.scale), say)
            needed = len(ticks) * STEP
            room = (top - 2.0, top - 2.0 + max(high + 4.0, needed))
            running_beside(canvas, ticks, scale.end + 1.0, room=room)
            begin = room[1] if room[1] > top + high + 2.5 else top
        # Thin edges stand so far apart that the letters of the hands clear one another.
        step = max(high + _PAIR, _LETTERS) if len(pair) > 1 else high + _PAIR
        top += step
    return top - step + high, begin


def _marks(
    canvas: Canvas, view: PartView, side: Side, hand: _Hand | None, scale: Ruler, top: float
) -> None:
    """Write R at the left end, E or F at the side that is counted from, and the hand."""
    high = view.height * scale.scale
    middle = top + high / 2
    edge = "E" if side == "F" else "F"
    half = text_room((0.0, 0.0), "R", size=MARK, bold=True).grown(0.9).height / 2
    narrow = high < 4 * half + 1.0
    inset = min(half + 0.4, high / 2)
    at = top + inset if view.marked_above else top + high - inset
    draw_mark(canvas, (-4.0, at), edge)
    draw_mark(canvas, (-9.5, middle) if narrow else (-4.0, (2 * middle - at)), "R")
    if hand is not None:
        canvas.text((-13.5 if narrow else -9.5, middle), hand.copy.hand, bold=True)


def _mates(
    canvas: Canvas,
    features: Sequence[Feature],
    part: Part,
    scale: Ruler,
    labels: Labels,
    top: float,
) -> float:
    """Write above the view which part goes where: its letter over the middle of its joint."""
    places: dict[tuple[str, Fraction], None] = {}
    for feature in features:
        letter = labels.part(feature.mate or "")
        if letter:
            low, high = _range_along(feature, part)
            places[letter, (low + high) / 2] = None
    if not places:
        return top + 1.0
    rows = sorted((scale.at(float(at)), letter) for letter, at in places)
    kept = [row for index, row in enumerate(rows) if index == 0 or rows[index - 1] != row]
    widths = [2 * radius_of(letter, size=_MATE) + 0.8 for _, letter in kept]
    spots = spread([at for at, _ in kept], widths, (-_LEFT, scale.end + FIGURES))
    centre = top + 3.8
    for (at, _), spot in zip(kept, spots, strict=True):
        canvas.lines([((spot, centre), (at, centre + 6.2))], FINE)
    for (_, letter), spot in zip(kept, spots, strict=True):
        draw_balloon(canvas, (spot, centre), letter, size=_MATE)
    return centre + 6.6


def _along(part: Part, features: Sequence[Feature], scale: Ruler, say: Say) -> list[Tick]:
    """Return where cuts begin and end along the part, bores by their middles, and its length."""
    ticks = [Tick(scale.at(float(at)), (say.setting(at),)) for at in _places(part, features)]
    waits = part.untaken("length") is not None
    length: Text = ("about ", say.size(part.length)) if waits else (say.size(part.length),)
    return [*ticks, Tick(scale.end, length, size=True)]


def _across(
    part: Part,
    features: Sequence[Feature],
    side: Side,
    on_paper: tuple[float, float],
    say: Say,
) -> list[Tick]:
    """Return what is counted across a view from the marked side: limits of cuts, and the size."""
    direction = _UNDER[side]
    size = part.width if direction == WIDTH else part.thickness
    places = {
        at
        for feature in features
        for at in _limits_across(feature, part, direction)
        if SURFACES[feature.surface][0] != direction or feature.kind != "hole"
    }
    start, step = on_paper
    ticks = [
        Tick(start + step * float(at), (say.setting(at),)) for at in sorted(places) if 0 < at < size
    ]
    waits = direction == WIDTH and part.untaken("width") is not None
    # A sheet is as thick as it measures, which is seldom a whole or half millimetre.
    measured = part.stock == "sheet" and direction != WIDTH
    whole = say.setting(size) if measured else say.size(size)
    full: Text = ("about ", whole) if waits else (whole,)
    return [*ticks, Tick(start + step * float(size), full, size=True)]


def _limits(limits: tuple[Fraction, Fraction], feature: Feature) -> Iterable[Fraction]:
    """Return what is counted of a cut: where it begins and ends; of a bore the middle."""
    low, high = limits
    return ((low + high) / 2,) if feature.kind == "hole" else limits


def _limits_across(feature: Feature, part: Part, direction: int) -> Iterable[Fraction]:
    """Return what is counted across: of tails the lines on the end grain, of pins none.

    Pins are marked from the tails that they go between.
    """
    low, high = feature.ranges((part.length, part.width, part.thickness))[direction]
    if feature.flare is None or direction != WIDTH:
        return _limits((low, high), feature)
    if feature.role != TAIL:
        return ()
    return low + feature.flare.low, high - feature.flare.high


def _range_along(feature: Feature, part: Part) -> tuple[Fraction, Fraction]:
    return feature.ranges((part.length, part.width, part.thickness))[0]


def _of(part: Part, copy: Copy) -> list[Feature]:
    return [feature for feature in part.features if copy.hand in feature.hands]


def along_places(part: Part) -> tuple[Fraction, ...]:
    """Return where cuts begin and end along a part, bores by their middles; mm from R.

    Of a row of pin holes these are the first and the last.
    """
    return _places(part, part.features)


def _places(part: Part, features: Sequence[Feature]) -> tuple[Fraction, ...]:
    inner = within_rows(features)
    shown = (each for each in features if not is_within(each, inner))
    places = {at for each in shown for at in _limits(_range_along(each, part), each)}
    return tuple(at for at in sorted(places) if 0 < at < part.length)


def scale_along(parts: Sequence[Part], *, room: float) -> Ruler:
    """Return the scale along parts of one length, as much of it between breaks as there is room."""
    high = float(max(max(part.width, part.thickness) for part in parts))
    pair = any(len(part.hands()) > 1 for part in parts)
    scale = min(1.0, (_TALLEST_OF_TWO if pair else _TALLEST) / high)
    for more in (8.0, 5.0, 3.0, 2.0, 1.4):
        found = _ruler(parts, scale, more * _AROUND / scale, room)
        if found.scale == scale:
            return found
    return _ruler(parts, scale, _AROUND / scale, room)


def _ruler(parts: Sequence[Part], scale: float, around: float, room: float) -> Ruler:
    length = float(parts[0].length)
    wanted: list[Stretch] = [(0.0, around), (length - around, length)]
    inner = within_rows(cut for part in parts for cut in part.features)
    cuts = ((each, cut) for each in parts for cut in each.features if not is_within(cut, inner))
    for part, feature in cuts:
        low, far = (float(at) for at in _range_along(feature, part))
        # Of what runs on alike only the ends are of interest.
        wanted += [(low - around / 2, low + around / 2), (far - around / 2, far + around / 2)]
        curved = feature.form is not None and feature.form.kind == "curve"
        if curved or far - low < 4 * around:
            wanted.append((low, far))
    return ruler(length, wanted, room=room, scale=scale)
