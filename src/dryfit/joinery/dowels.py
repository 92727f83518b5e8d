"""Dowels: loose round pins that two butted members share (TRADE B5)."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise
from math import ceil

from dryfit.diagnostics import Span
from dryfit.geometry.box import Box
from dryfit.joinery.cut import Cut, Placed
from dryfit.joinery.loose_pieces import (
    Pocket,
    in_a_row,
    piece_boxes,
    pockets,
    row_axis,
    spaced,
)
from dryfit.quantities import Display
from dryfit.quantities.units import INCH

_SOLD_MM = tuple(Fraction(size) for size in (6, 8, 10, 12))
_SOLD_INCH = tuple(INCH * size for size in (Fraction(1, 4), Fraction(3, 8), Fraction(1, 2)))
_THIN_MM = (Fraction(4), Fraction(5))
_THIN_INCH = tuple(INCH * size for size in (Fraction(1, 8), Fraction(3, 16)))
"""Dowels for boards that take none of the usual ones (common practice)."""

_LENGTH_STEP_MM, _LENGTH_STEP_INCH = Fraction(1), INCH / 16
_EDGE_MM, _EDGE_INCH, _EDGE_NARROW = Fraction(20), INCH * Fraction(3, 4), Fraction(10)
_WIDE = Fraction(80)
_PITCH = Fraction(50)


@dataclass(frozen=True, slots=True)
class DowelSizes:
    """How many dowels a joint takes, their diameter and length, and how deep they go in; mm.

    `in_guest` and `in_host` are the depths of the holes, `edge` how far the first and the last
    middle stand from the ends of their row.
    """

    count: int
    diameter: Fraction
    length: Fraction
    in_guest: Fraction
    in_host: Fraction
    edge: Fraction


def glue_room(display: Display) -> Fraction:
    """Return by how much both holes together are deeper than the dowel is long (B5: 1/8 in)."""
    return display.either(Fraction(3), INCH / 8)


def floor_of(display: Display) -> Fraction:
    """Return what stays at least behind a hole in a face (B5: 6 mm)."""
    return display.either(Fraction(6), INCH / 4)


def usual_diameter(thickness: Fraction, faces: tuple[Fraction, ...], display: Display) -> Fraction:
    """Return the dowel sold that is nearest to a third of the thinner member, at most half (B5).

    `faces` is the wood behind each face that a hole is bored into; where none of the usual dowels
    holds there by more than half of its diameter, a thinner one is taken.
    """
    usual, thin = (_SOLD_MM, _THIN_MM) if display.unit == "mm" else (_SOLD_INCH, _THIN_INCH)
    for sold in (usual, thin):
        fitting = [
            size
            for size in sold
            if size <= thickness / 2
            and all(depth_in_face(size, face, display) > size / 2 for face in faces)
        ]
        if fitting:
            return min(fitting, key=lambda size: (abs(size - thickness / 3), size))
    return usual[0]


def usual_length(diameter: Fraction) -> Fraction:
    """Return five diameters: 8 x 40, 10 x 50 as dowels are sold (common practice)."""
    return 5 * diameter


def length_that_fits(usual: Fraction, room: Fraction, display: Display) -> Fraction:
    """Return the usual length, or the longest that goes into holes `room` deep, both together.

    It is cut off to a whole mm or sixteenth of an inch; where no length fits it is the usual one.
    """
    if usual + glue_room(display) <= room:
        return usual
    step = display.either(_LENGTH_STEP_MM, _LENGTH_STEP_INCH)
    shorter = (room - glue_room(display)) // step * step
    return shorter if shorter > 0 else usual


def usual_count(row: Fraction, edge: Fraction) -> int:
    """Return how many stand in a row so long: two, and one more for each 50 mm (B5: 100 has 3)."""
    inner = (row - 2 * edge) / _PITCH
    return max(2, 1 + ceil(inner))


def edge_distance(row: Fraction, display: Display) -> Fraction:
    """Return how far the first and the last middle stand from the ends of the row (B5)."""
    usual = display.either(_EDGE_MM, _EDGE_INCH)
    return usual if row >= _WIDE else max(_EDGE_NARROW, row / 4)


def depth_in_face(diameter: Fraction, thickness: Fraction, display: Display) -> Fraction:
    """Return how deep the hole in a face or an edge goes: two diameters, less where it is thin."""
    return min(2 * diameter, thickness - floor_of(display))


def middles(low: Fraction, high: Fraction, sizes: DowelSizes) -> tuple[Fraction, ...]:
    """Return where dowels stand along a row from low to high: equally far from one another."""
    return spaced(low, high, sizes.count, sizes.edge)


def dowel_boxes(region: Box, axis: int, side: int, sizes: DowelSizes) -> tuple[Box, ...]:
    """Return the box around each dowel in its holes; the guest lies at `side` of the contact.

    What the holes are deeper than the dowel is left at the guest's end.
    """
    return piece_boxes(dowel_mouths(region, axis, sizes), axis, side, sizes.in_host, sizes.length)


def dowel_holes(
    guest: Placed, host: Placed, region: Box, facing: tuple[int, int], row: DowelSizes, span: Span
) -> tuple[Cut, ...]:
    """Return the holes of all dowels in both members; `facing` is the host's face (axis, side)."""
    hole = Pocket("hole", "dowel hole", row.in_guest, row.in_host)
    return pockets(guest, host, dowel_mouths(region, facing[0], row), facing, hole, span)


def dowel_mouths(region: Box, axis: int, sizes: DowelSizes) -> Iterator[Box]:
    """Yield the mouth of each hole in a contact face whose normal is `axis`."""
    along = row_axis(region, axis)
    places = middles(region.low[along], region.high[along], sizes)
    return in_a_row(region, axis, places, sizes.diameter, sizes.diameter)


def crowded(row: Fraction, sizes: DowelSizes) -> bool:
    """Return whether dowels stand nearer than two diameters, or at an edge (H16)."""
    places = middles(Fraction(0), row, sizes)
    near = any(two - one < 2 * sizes.diameter for one, two in pairwise(places))
    return near or places[0] < Fraction(3, 2) * sizes.diameter
