"""Wooden buttons that hold a solid top and let it move (TRADE B22, B26.2)."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass, replace
from fractions import Fraction
from math import ceil, floor

from dryfit.geometry.box import Box
from dryfit.joinery.cut import Cut, Placed, bounded
from dryfit.quantities import Display
from dryfit.quantities.units import INCH

_FROM_END = Fraction(50)
_BREADTH = Fraction(28)
_SPACING = Fraction(300)
_PULL = Fraction(1)
_SLACK = Fraction(1, 2)
_UNDER = Fraction(7, 2)
SLOT_PLAY = Fraction(1)
"""How much longer a slot is than its button at either end; common practice."""
BETWEEN_SLOTS = Fraction(3)
"""The least wall between a button's slot and another mortise (TRADE B3.5)."""


@dataclass(frozen=True, slots=True)
class ButtonSlot:
    """The slot that a button's tongue enters: from the rail's top edge, width, depth; mm."""

    offset: Fraction
    width: Fraction
    depth: Fraction


@dataclass(frozen=True, slots=True)
class ButtonSizes:
    """A button: its length along the tongue, breadth and thickness, and its tongue; mm.

    `set_down` is from the button's top to the tongue's top: 1 mm less than the slot's offset, so
    that the screw pulls the top down.  `stand_off` keeps the body clear of the rail by the
    movement of one side and 1/2 mm; the tongue is as long as its engagement and the stand-off.
    """

    length: Fraction
    breadth: Fraction
    thickness: Fraction
    set_down: Fraction
    tongue: Fraction
    tongue_thickness: Fraction
    engagement: Fraction
    stand_off: Fraction


def usual_slot(display: Display, chisels: Collection[Fraction] = ()) -> ButtonSlot:
    """Return the usual slot: 12 from the top, 6 wide, 9 deep; 1/2, 1/4, 3/8 in (TRADE B22).

    It is as wide as one of the shop's `chisels`, where that has any: the nearest to 6 mm.
    """
    if display.unit == "mm":
        slot = ButtonSlot(Fraction(12), Fraction(6), Fraction(9))
    else:
        slot = ButtonSlot(INCH / 2, INCH / 4, INCH * 3 / 8)
    wide = min(chisels, key=lambda each: (abs(each - slot.width), each), default=slot.width)
    return replace(slot, width=wide)


def button_sizes(slot: ButtonSlot, side_movement: Fraction) -> ButtonSizes:
    """Return a button for a slot, when each side of the top may move by `side_movement` mm.

    TRADE B26.2: stand-off = movement a side + 0.5, tongue = engagement + stand-off, depth less
    engagement at least the movement a side; engagement 6 or what the depth allows.
    """
    stand_off = side_movement + _SLACK
    engagement = min(Fraction(6), slot.depth - side_movement)
    return ButtonSizes(
        length=Fraction(40),
        breadth=_BREADTH,
        thickness=slot.offset + slot.width + _UNDER - _PULL - _SLACK,
        set_down=slot.offset - _PULL,
        tongue=engagement + stand_off,
        tongue_thickness=slot.width - _SLACK,
        engagement=engagement,
        stand_off=stand_off,
    )


def buttons_along(clear: Fraction) -> int:
    """Return how many buttons a rail of that clear length takes: 150 to 300 apart, at least 2."""
    if clear <= 2 * _FROM_END:
        return 1
    return max(2, ceil((clear - 2 * _FROM_END) / _SPACING) + 1)


def half_slot(sizes: ButtonSizes, slide: Fraction) -> Fraction:
    """Return half the length of a button's own slot, mm: it is 1 mm longer than it at either end.

    `slide` is how far the top may carry the button along the rail, to either side, in mm.
    """
    return sizes.breadth / 2 + SLOT_PLAY + slide


def buttons_at_most(clear: Fraction, slide: Fraction = Fraction(0)) -> int:
    """Return how many buttons fit side by side between two shoulders, each with a slot.

    `slide` lengthens each slot at both ends, mm; `BETWEEN_SLOTS` stays between two of them.
    """
    slot = _BREADTH + 2 * (SLOT_PLAY + slide)
    if clear < slot:
        return 0
    return max(1, floor((clear - 2 * _FROM_END) / (slot + BETWEEN_SLOTS)) + 1)


def button_places(low: Fraction, high: Fraction, count: int) -> tuple[Fraction, ...]:
    """Return the middles of `count` buttons between two shoulders, 50 mm from either."""
    if count == 1:
        return ((low + high) / 2,)
    first, last = low + _FROM_END, high - _FROM_END
    return tuple(first + (last - first) * index / (count - 1) for index in range(count))


def button_box(rail: Placed, side: int, axis: int, place: Fraction, sizes: ButtonSizes) -> Box:
    """Return a button's box under a top that lies on the rail.

    The rail runs along its own length axis; `axis`, `side` name its inner face; `place` is the
    button's middle along the rail.
    """
    along = rail.axes[0]
    # The tongue bears on the slot's upper side; the body hangs short of the top until it is
    # screwed up.
    top = rail.box.high[2] - _PULL
    inner = rail.box.high[axis] if side > 0 else rail.box.low[axis]
    start = inner - side * sizes.engagement
    end = start + side * sizes.length
    box = bounded(rail.box, 2, top - sizes.thickness, top)
    box = bounded(box, along, place - sizes.breadth / 2, place + sizes.breadth / 2)
    return bounded(box, axis, min(start, end), max(start, end))


def button_cuts(name: str, box: Box, side: int, axis: int, sizes: ButtonSizes) -> tuple[Cut, ...]:
    """Return the two cuts that leave the tongue, above and below it."""
    tip = (
        bounded(box, axis, box.low[axis], box.low[axis] + sizes.tongue)
        if side > 0
        else bounded(box, axis, box.high[axis] - sizes.tongue, box.high[axis])
    )
    above = bounded(tip, 2, box.high[2] - sizes.set_down, box.high[2])
    under = box.high[2] - sizes.set_down - sizes.tongue_thickness
    below = bounded(tip, 2, box.low[2], under)
    return (
        Cut(name, above, "end lap", "button tongue", 2, 1, "slip", None, None),
        Cut(name, below, "end lap", "button tongue", 2, -1, "slip", None, None),
    )
