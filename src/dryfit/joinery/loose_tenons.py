"""Loose tenons: strips of wood in mortises of both butted members (TRADE B4)."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from math import ceil

from dryfit.geometry.box import Box
from dryfit.joinery.loose_pieces import (
    Pocket,
    in_a_row,
    narrowest,
    piece_boxes,
    row_axis,
    spaced,
)
from dryfit.joinery.proportions import LEAST_END_GRAIN, edge_shoulder, glue_gap
from dryfit.quantities import Display
from dryfit.quantities.units import INCH

_LEAST_WIDE = 2
_MOST_WIDE = 5
_ONE_EACH = Fraction(120)
KERF = Fraction(3)
"""What the saw takes of a strip at each tenon that is cut from it, mm: common practice."""


@dataclass(frozen=True, slots=True)
class LooseTenon:
    """How many a joint takes, their sizes, and how deep their mortises are in both parts; mm."""

    count: int
    length: Fraction
    thickness: Fraction
    width: Fraction
    in_guest: Fraction
    in_host: Fraction


def least_depth(display: Display) -> Fraction:
    """Return how deep a mortise is at least (B4: 20 mm)."""
    return display.either(Fraction(20), INCH * 3 / 4)


def deepest(extent: Fraction, display: Display) -> Fraction:
    """Return how deep a mortise may be in a part that is so deep there (B3.1: 5 mm behind it)."""
    return extent - edge_shoulder(display)


def usual_depth(extent: Fraction, display: Display) -> Fraction:
    """Return how deep a mortise usually is (B4: 25 mm, here also 1 in), less in thin wood.

    In whole steps, as it is told and written.
    """
    usual = display.either(Fraction(25), INCH)
    return min(usual, display.down(deepest(extent, display)))


def usual_count(row: Fraction) -> int:
    """Return how many stand in a row so long: one for each 120 mm (common practice)."""
    return max(1, ceil(row / _ONE_EACH))


def usual_width(row: Fraction, thickness: Fraction, count: int, display: Display) -> Fraction:
    """Return the width of each: five times its thickness (B3.1, B4), less where the row is short.

    12 mm of wood then stay between and beside them (H10), in whole steps of mm or 1/16 in.
    """
    room = (row - (count + 1) * LEAST_END_GRAIN) / count
    return min(_MOST_WIDE * thickness, display.down(room))


def too_narrow(width: Fraction, thickness: Fraction) -> bool:
    """Return whether a tenon is nearer to a peg: less than twice as wide as thick."""
    return width < _LEAST_WIDE * thickness


def depths(
    length: Fraction, guest: Fraction, host: Fraction, display: Display
) -> tuple[Fraction, Fraction]:
    """Return how deep a tenon so long asks the mortises to be in guest and host.

    Half each; where one part is too thin for it, the rest goes into the other.
    """
    both = length + 2 * glue_gap(display)
    in_host = min(both / 2, deepest(host, display))
    in_guest = min(both - in_host, deepest(guest, display))
    return in_guest, both - in_guest


def middles(low: Fraction, high: Fraction, tenon: LooseTenon) -> tuple[Fraction, ...]:
    """Return where tenons stand along a row from low to high, with equal wood beside them."""
    gap = (high - low - tenon.count * tenon.width) / (tenon.count + 1)
    return spaced(low, high, tenon.count, gap + tenon.width / 2)


def crowded(row: Fraction, tenon: LooseTenon, display: Display) -> bool:
    """Return whether less wood than an edge shoulder stays between mortises, or beside one."""
    wood = narrowest(row, middles(Fraction(0), row, tenon), tenon.width)
    return wood < edge_shoulder(display)


def mouths_of(region: Box, axis: int, tenon: LooseTenon) -> tuple[Box, ...]:
    """Return the mouths of the mortises in the contact face whose normal is `axis`."""
    along = row_axis(region, axis)
    places = middles(region.low[along], region.high[along], tenon)
    return tuple(in_a_row(region, axis, places, tenon.width, tenon.thickness))


def tenon_boxes(
    mouths: tuple[Box, ...], axis: int, side: int, tenon: LooseTenon, display: Display
) -> tuple[Box, ...]:
    """Return the box around each tenon: it ends before the bottoms of both mortises."""
    in_host = tenon.in_host - glue_gap(display)
    return piece_boxes(mouths, axis, side, in_host, tenon.length)


def mortise_of(tenon: LooseTenon) -> Pocket:
    """Return what is cut for a loose tenon in both parts."""
    return Pocket("mortise", "loose mortise", tenon.in_guest, tenon.in_host)


def strip_for(count: int, length: Fraction) -> Fraction:
    """Return how long a strip has to be for so many tenons, mm."""
    return count * (length + KERF)
