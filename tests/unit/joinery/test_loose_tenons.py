"""Loose tenons: as wide, as long and as deep as the trade has them (TRADE B4, B3.1, H10)."""

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from tests.pieces.reading import mm

from dryfit.diagnostics import Source, Span
from dryfit.geometry.box import Box
from dryfit.joinery.cut import Placed
from dryfit.joinery.loose_pieces import piece_sizes, pockets
from dryfit.joinery.loose_tenons import (
    LooseTenon,
    crowded,
    depths,
    middles,
    mortise_of,
    mouths_of,
    strip_for,
    tenon_boxes,
    too_narrow,
    usual_count,
    usual_depth,
    usual_width,
)
from dryfit.quantities import Display

SPAN = Span(Source("notes.dryfit", ""), 1, 1, 1)


def box_of(*bounds: tuple[int, int]) -> Box:
    (left, right), (front, back), (low, high) = bounds
    lows = (Fraction(left), Fraction(front), Fraction(low))
    return Box(lows, (Fraction(right), Fraction(back), Fraction(high)))


MM, INCHES = Display("mm"), Display("in")
INCH = Fraction("25.4")
ONE = LooseTenon(1, Fraction(48), Fraction(8), Fraction(36), Fraction(25), Fraction(25))


@pytest.mark.parametrize(
    ("extent", "depth"),
    # 25 (B4); 5 stay behind it: 27 - 5, and 27.5 - 5 in whole mm.
    [("60", 25), ("30", 25), ("29", 24), ("27", 22), ("27.5", 22)],
)
def test_how_deep(extent: str, depth: int) -> None:
    assert usual_depth(Fraction(extent), MM) == depth


def test_inch_pieces_are_mortised_an_inch() -> None:
    assert usual_depth(3 * INCH, INCHES) == INCH
    # 1 1/8 less 3/16 is 15/16.
    assert usual_depth(INCH * 9 / 8, INCHES) == INCH * 15 / 16


@pytest.mark.parametrize(
    ("row", "count", "width"),
    [
        # Five times 8, where 12 stay on either side.
        (100, 1, 40),
        (64, 1, 40),
        (60, 1, 36),
        # Over 120 two, over 240 three; (140 - 36) / 2 = 52 is more than 40.
        (120, 1, 40),
        (140, 2, 40),
        (250, 3, 40),
    ],
)
def test_how_many_and_how_wide(row: int, count: int, width: int) -> None:
    assert usual_count(Fraction(row)) == count
    assert usual_width(Fraction(row), Fraction(8), count, MM) == width


def test_too_narrow_for_a_tenon() -> None:
    # 12 on either side of 39 leave 15: less than two times 8.
    assert too_narrow(usual_width(Fraction(39), Fraction(8), 1, MM), Fraction(8))
    assert not too_narrow(usual_width(Fraction(40), Fraction(8), 1, MM), Fraction(8))


@pytest.mark.parametrize(
    ("length", "guest", "host", "in_guest", "in_host"),
    [
        # 40 and 1 at either end are 42: half each.
        (40, 380, 60, "21", "21"),
        # 60 + 2 = 62; 5 stay behind 30, so 25 there and 37 in the other.
        (60, 380, 30, "37", "25"),
        (60, 30, 380, "25", "37"),
    ],
)
def test_a_written_length_is_shared(
    length: int, guest: int, host: int, in_guest: str, in_host: str
) -> None:
    shares = depths(Fraction(length), Fraction(guest), Fraction(host), MM)
    assert shares == (Fraction(in_guest), Fraction(in_host))


def test_equal_wood_between_and_beside() -> None:
    two = replace(ONE, count=2, width=Fraction(26))
    # 100 less 52 are three gaps of 16: 16 to 42, 58 to 84.
    assert middles(Fraction(0), Fraction(100), two) == mm(29, 71)
    # 67 leave three gaps of 5, 66 less.
    assert not crowded(Fraction(67), two, MM)
    assert crowded(Fraction(66), two, MM)


def test_a_strip_has_room_for_the_saw() -> None:
    assert strip_for(4, Fraction(40)) == 4 * 43


@given(st.integers(50, 240), st.integers(1, 3), st.sampled_from([6, 8, 10]))
def test_mortises_hold_the_tenon_and_room_for_glue(width: int, count: int, thick: int) -> None:
    stile = Placed("stile", "stile", box_of((0, 60), (0, 24), (0, 700)), (2, 0, 1), (-1, -1, 1))
    box = box_of((60, 440), (0, 24), (40, 40 + width))
    rail = Placed("rail", "rail", box, (0, 2, 1), (-1, -1, 1))
    tenon = replace(ONE, count=count, thickness=Fraction(thick), width=3 * Fraction(thick))
    assume(not crowded(Fraction(width), tenon, MM))
    touch = rail.box.contact(stile.box)
    assert touch is not None
    axis, region = touch
    mouths = mouths_of(region, axis, tenon)
    cuts = pockets(rail, stile, mouths, (axis, 1), mortise_of(tenon), SPAN)
    pieces = tenon_boxes(mouths, axis, 1, tenon, MM)
    assert len(cuts) == 2 * count == 2 * len(pieces)
    for piece in pieces:
        assert piece_sizes(piece, region) == mm(48, 3 * thick, thick)
        assert (piece.low[0], piece.high[0]) == mm(36, 84)
        shares = [(cut.copy, own) for cut in cuts if (own := cut.box.overlap(piece)) is not None]
        assert sum((own.volume() for _, own in shares), Fraction(0)) == piece.volume()
    assert {(cut.copy, cut.box.low[0], cut.box.high[0]) for cut in cuts} == {
        ("stile", *mm(35, 60)),
        ("rail", *mm(60, 85)),
    }
