"""Biscuits: pressed ovals of wood in slots of both members, which keep faces level (TRADE B6)."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from math import ceil

from dryfit.geometry.box import Box
from dryfit.joinery.cut import Placed
from dryfit.joinery.loose_pieces import (
    Pocket,
    in_a_row,
    narrowest,
    piece_boxes,
    row_axis,
    spaced,
)

THICK = Fraction(4)
"""Thickness of all biscuits and width of their slots, mm (TRADE B6, from memory)."""
GLUE_ROOM = Fraction(1)
"""Each slot is so much deeper than half a biscuit, mm (TRADE B6, from memory)."""
LEAST_WOOD = Fraction(12)
"""Thinner wood shows a swollen biscuit on its face, mm (TRADE H17)."""
BEHIND = Fraction(3, 2)
"""What stays at least behind a slot, mm: #10 in a face of 12, the thinnest for it (TRADE B6)."""
BESIDE = Fraction(5)
"""Wood that stays beside a slot along its row, mm: common practice, so that no end breaks out."""
_EDGE = Fraction(60)
_PITCH = Fraction(150)


@dataclass(frozen=True, slots=True)
class Biscuit:
    """A size as it is sold: its number, length and width, and the thinnest wood for it; mm."""

    number: int
    length: Fraction
    width: Fraction
    least: Fraction

    @property
    def depth(self) -> Fraction:
        """Return how deep its slot is in either part."""
        return self.width / 2 + GLUE_ROOM


SOLD = (
    Biscuit(20, Fraction(56), Fraction(23), Fraction(15)),
    Biscuit(10, Fraction(53), Fraction(19), Fraction(12)),
    Biscuit(0, Fraction(47), Fraction(15), Fraction(10)),
)
"""Sizes, the largest first (TRADE B6, from memory); the wood for #0 is common practice."""


@dataclass(frozen=True, slots=True)
class Room:
    """What the two members leave for a biscuit: along the row, across it, and how deep; mm."""

    row: Fraction
    thick: Fraction
    deep: Fraction


def of_length(length: Fraction) -> Biscuit | None:
    """Return the biscuit sold that is so long, or None."""
    return next((each for each in SOLD if each.length == length), None)


def fits(biscuit: Biscuit, room: Room) -> bool:
    """Return whether one biscuit finds room: wood beside, behind and at the ends of its slot."""
    thick = room.thick >= biscuit.least and room.deep >= biscuit.depth + BEHIND
    return thick and room.row >= biscuit.length + 2 * BESIDE


def usual_size(room: Room) -> Biscuit:
    """Return the largest biscuit that finds room (common practice), else the smallest sold."""
    return next((each for each in SOLD if fits(each, room)), SOLD[-1])


def usual_count(row: Fraction, biscuit: Biscuit) -> int:
    """Return how many stand in a row: at most 150 apart, 60 from its ends (B6: 50 to 75).

    One alone where two would stand nearer than half their length.
    """
    inner = row - 2 * _EDGE
    if inner < biscuit.length * Fraction(3, 2):
        return 1
    return 1 + ceil(inner / _PITCH)


def middles(low: Fraction, high: Fraction, count: int) -> tuple[Fraction, ...]:
    """Return the middles from low to high: 60 from the ends of the row, nearer in a short one."""
    return spaced(low, high, count, min(_EDGE, (high - low) / (2 * count)))


def crowded(row: Fraction, count: int, biscuit: Biscuit) -> bool:
    """Return whether less than 5 mm of wood stay between two slots, or beside the first."""
    return narrowest(row, middles(Fraction(0), row, count), biscuit.length) < BESIDE


def mouths_of(region: Box, axis: int, count: int, biscuit: Biscuit) -> tuple[Box, ...]:
    """Return the mouths of the slots in the contact face whose normal is `axis`."""
    along = row_axis(region, axis)
    places = middles(region.low[along], region.high[along], count)
    return tuple(in_a_row(region, axis, places, biscuit.length, THICK))


def biscuit_boxes(mouths: tuple[Box, ...], axis: int, side: int, one: Biscuit) -> tuple[Box, ...]:
    """Return the box around each biscuit in its slots; the guest lies at `side` of the contact."""
    return piece_boxes(mouths, axis, side, one.width / 2, one.width)


def slot_of(biscuit: Biscuit) -> Pocket:
    """Return what is cut for a biscuit: the same slot in both parts."""
    return Pocket("mortise", "biscuit slot", biscuit.depth, biscuit.depth)


def room_for(pair: tuple[Placed, Placed], region: Box, axis: int) -> Room:
    """Return what two members leave where they touch in a face whose normal is `axis`."""
    along = row_axis(region, axis)
    (across,) = {0, 1, 2} - {axis, along}
    deep = min(placed.box.extent(axis) for placed in pair)
    return Room(region.extent(along), region.extent(across), deep)
