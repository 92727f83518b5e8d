"""Biscuits: as large and as far apart as the trade has them (TRADE B6, H17)."""

from fractions import Fraction

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from tests.pieces.reading import mm

from dryfit.diagnostics import Source, Span
from dryfit.geometry.box import Box
from dryfit.joinery.biscuits import (
    BESIDE,
    SOLD,
    Room,
    biscuit_boxes,
    crowded,
    middles,
    mouths_of,
    of_length,
    slot_of,
    usual_count,
    usual_size,
)
from dryfit.joinery.cut import Placed
from dryfit.joinery.loose_pieces import pockets

SPAN = Span(Source("notes.dryfit", ""), 1, 1, 1)


def box_of(*bounds: tuple[int, int]) -> Box:
    (left, right), (front, back), (low, high) = bounds
    lows = (Fraction(left), Fraction(front), Fraction(low))
    return Box(lows, (Fraction(right), Fraction(back), Fraction(high)))


TWENTY, TEN, NOUGHT = SOLD


def test_the_sizes_that_are_sold() -> None:
    """TRADE B6, from memory there: number, length, width, and half of it and 1 deep."""
    assert [(each.number, each.length, each.width, each.depth) for each in SOLD] == [
        (20, *mm(56, 23), Fraction("12.5")),
        (10, *mm(53, 19), Fraction("10.5")),
        (0, *mm(47, 15), Fraction("8.5")),
    ]
    assert of_length(Fraction(53)) == TEN
    assert of_length(Fraction(50)) is None


@pytest.mark.parametrize(
    ("row", "thick", "deep", "number"),
    [
        # T >= 15 for #20, 12 for #10 (TRADE B6).
        (300, 18, 18, 20),
        (300, 15, 15, 20),
        (300, 14, 14, 10),
        (300, 12, 12, 10),
        (300, 10, 18, 0),
        # Half a #20 and 1 is 12.5, which in a face of 13 leaves too little behind it.
        (300, 18, 13, 10),
        # 5 beside the slot: 56 + 10 in 66, 53 + 10 in 63, 47 + 10 in 57.
        (66, 18, 18, 20),
        (65, 18, 18, 10),
        (60, 18, 18, 0),
    ],
)
def test_the_largest_that_finds_room(row: int, thick: int, deep: int, number: int) -> None:
    assert usual_size(Room(Fraction(row), Fraction(thick), Fraction(deep))).number == number


@pytest.mark.parametrize(
    ("row", "places"),
    [
        # 60 from the ends, not more than 150 apart: 800 - 120 = 680 is five gaps of 136.
        (800, (60, 196, 332, 468, 604, 740)),
        (420, (60, 210, 360)),
        (240, (60, 180)),
        # 300 is three thirds with a biscuit in the middle of each.
        (300, (50, 150, 250)),
        # Two would stand 80 apart, less than 84: one.
        (200, (100,)),
        (70, (35,)),
    ],
)
def test_where_they_stand(row: int, places: tuple[int, ...]) -> None:
    count = usual_count(Fraction(row), TWENTY)
    assert middles(Fraction(0), Fraction(row), count) == mm(*places)


@pytest.mark.parametrize(
    ("row", "count", "is_crowded"),
    # Two of 56 stand at a quarter: row / 2 - 56 between them, row / 4 - 28 beside.
    [(132, 2, False), (131, 2, True), (66, 1, False), (65, 1, True)],
)
def test_biscuits_need_room(row: int, count: int, is_crowded: bool) -> None:
    assert crowded(Fraction(row), count, TWENTY) == is_crowded


@given(st.integers(60, 400), st.integers(1, 4), st.sampled_from(SOLD))
def test_slots_meet_at_the_contact_and_hold_the_biscuit(
    width: int, count: int, one: object
) -> None:
    biscuit = next(each for each in SOLD if each == one)
    assume(not crowded(Fraction(width), count, biscuit))
    side = Placed("side", "side", box_of((0, 22), (0, 600), (0, 400)), (2, 1, 0), (-1, -1, 1))
    box = box_of((22, 400), (100, 100 + width), (40, 58))
    shelf = Placed("shelf", "shelf", box, (0, 1, 2), (-1, -1, 1))
    touch = shelf.box.contact(side.box)
    assert touch is not None
    axis, region = touch
    mouths = mouths_of(region, axis, count, biscuit)
    slots = pockets(shelf, side, mouths, (axis, 1), slot_of(biscuit), SPAN)
    pieces = biscuit_boxes(mouths, axis, 1, biscuit)
    assert len(slots) == 2 * count == 2 * len(pieces)
    for piece in pieces:
        shares = [
            (slot.copy, own) for slot in slots if (own := slot.box.overlap(piece)) is not None
        ]
        # Half of it in either part, and 1 mm of room before each.
        assert [(name, own.extent(axis)) for name, own in shares] == [
            ("side", biscuit.width / 2),
            ("shelf", biscuit.width / 2),
        ]
    for slot in slots:
        assert slot.box.extent(axis) == biscuit.width / 2 + 1
        assert slot.box.low[1] >= 100 + BESIDE
        assert slot.box.high[1] <= 100 + width - BESIDE
