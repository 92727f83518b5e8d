"""Where along a rail its buttons stand: in their usual places, or aside of what is in the way.

How many there are may be written, where each stands never is: so all places give way.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction

from dryfit.geometry.box import Box
from dryfit.joinery.buttons import (
    BETWEEN_SLOTS,
    ButtonSizes,
    ButtonSlot,
    button_box,
    button_places,
    buttons_along,
    half_slot,
)
from dryfit.joinery.cut import Cut, Placed, bounded, from_side
from dryfit.placing.button_slots import inner_face
from dryfit.placing.free_places import Blocked

_PLAY = Fraction(1)
"""Between a button and what stands beside it, so that it goes in and can slide."""


@dataclass(frozen=True, slots=True)
class Row:
    """The buttons of one rail: their slot, and how far the top may carry them along it, in mm.

    `in_groove` tells that a declared groove is their slot; `low` and `high` are the shoulders
    that they stand between.
    """

    rail: Placed
    slot: ButtonSlot
    in_groove: bool
    sizes: ButtonSizes
    slide: Fraction
    low: Fraction
    high: Fraction


@dataclass(frozen=True, slots=True)
class Moved:
    """A button that stands aside: how far from its usual place, in mm, and what stands there."""

    by: Fraction
    what: str


@dataclass(frozen=True, slots=True)
class Stood:
    """The middles of a row's buttons along the rail, in order, and those that stand aside.

    `kept_out` is what takes the room of those that found none; empty where there is none.
    """

    row: Row
    places: tuple[Fraction, ...]
    moved: tuple[Moved, ...]
    kept_out: str = ""


def shared_out(count: int, rows: Sequence[Row], most: Sequence[int]) -> list[int]:
    """Return how many of `count` buttons each row takes, none more than its `most`.

    Each takes one, then each long one another, then always the one whose stand furthest apart: so
    the usual number of all rows is shared out as is usual.
    """
    counts = [0] * len(rows)
    for _ in range(count):
        open_ones = [index for index, room in enumerate(most) if counts[index] < room]
        if open_ones:
            counts[min(open_ones, key=lambda index: _rank(rows[index], counts[index]))] += 1
    return counts


def _rank(row: Row, count: int) -> tuple[int, Fraction]:
    if count == 0:
        return 0, Fraction(0)
    if count == 1:
        return (1 if buttons_along(row.high - row.low) > 1 else 3), Fraction(0)
    first, second, *_ = button_places(row.low, row.high, count)
    return 2, first - second


def blocked_along(row: Row, copies: Iterable[Placed], cuts: Iterable[Cut]) -> tuple[Blocked, ...]:
    """Return the stretches of a rail in which no button can have its middle, and why.

    `copies` are all that may stand beside it, `cuts` those that are made before any glue-up.
    """
    rail, along = row.rail, row.rail.axes[0]
    axis, side = inner_face(rail)
    body = button_box(rail, side, axis, row.low, row.sizes)
    half = row.sizes.breadth / 2 + row.slide + _PLAY
    found = [
        Blocked(copy.box.low[along] - half, copy.box.high[along] + half, f"the {copy.part}")
        for copy in copies
        if copy.name != rail.name and _meet(copy.box, body, along)
    ]
    slot = _grown(_slot_box(row), along)
    half = half_slot(row.sizes, row.slide) + BETWEEN_SLOTS
    for cut in cuts:
        if cut.copy != rail.name or cut.after is not None or cut.form is not None:
            continue
        if (cut.role, cut.axis, cut.side) == ("groove", axis, side) or not _meet(
            cut.box, slot, along
        ):
            continue
        what = f"the {cut.role}{f' for the {cut.mate}' if cut.mate else ''}"
        found.append(Blocked(cut.box.low[along] - half, cut.box.high[along] + half, what))
    return tuple(found)


def _slot_box(row: Row) -> Box:
    top = row.rail.box.high[2] - row.slot.offset
    box = from_side(row.rail.box, *inner_face(row.rail), row.slot.depth)
    return bounded(box, 2, top - row.slot.width, top)


def _grown(box: Box, along: int) -> Box:
    for axis in (each for each in range(3) if each != along):
        box = bounded(box, axis, box.low[axis] - BETWEEN_SLOTS, box.high[axis] + BETWEEN_SLOTS)
    return box


def _meet(one: Box, two: Box, along: int) -> bool:
    return all(
        one.low[axis] < two.high[axis] and two.low[axis] < one.high[axis]
        for axis in range(3)
        if axis != along
    )


def stood_in_row(row: Row, count: int, blocked: Sequence[Blocked]) -> Stood:
    """Return where the buttons of a row stand, fewer than `count` where there is no room for more.

    `blocked` are the stretches in which no button can have its middle.
    """
    usual = button_places(row.low, row.high, count)
    kept = [place for place in usual if _in_the_way(place, blocked) is None]
    moved: list[Moved] = []
    kept_out = ""
    for place in usual:
        what = _in_the_way(place, blocked)
        free = None if what is None else _nearest(row, place, blocked, kept)
        if what is not None and free is not None:
            kept.append(free)
            moved.append(Moved(free - place, what))
        elif what is not None:
            kept_out = what
    return Stood(row, tuple(sorted(kept)), tuple(moved), kept_out)


def _in_the_way(place: Fraction, blocked: Sequence[Blocked]) -> str | None:
    return next((each.what for each in blocked if each.low < place < each.high), None)


def _nearest(
    row: Row, place: Fraction, blocked: Sequence[Blocked], kept: Sequence[Fraction]
) -> Fraction | None:
    half = half_slot(row.sizes, row.slide)
    apart, low, high = 2 * half + BETWEEN_SLOTS, row.low + half, row.high - half
    edges = [edge for each in blocked for edge in (each.low, each.high)]
    edges += [edge for other in kept for edge in (other - apart, other + apart)]
    free = [
        edge
        for edge in (*edges, low, high)
        if low <= edge <= high
        and _in_the_way(edge, blocked) is None
        and all(abs(edge - other) >= apart for other in kept)
    ]
    return min(free, key=lambda edge: (abs(edge - place), edge), default=None)
