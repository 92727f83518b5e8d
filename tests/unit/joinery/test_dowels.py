"""Dowels: as thick, as long and as far apart as the trade has them (TRADE B5, H16)."""

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from tests.pieces.reading import mm

from dryfit.diagnostics import Source, Span
from dryfit.geometry.box import Box
from dryfit.joinery.cut import Placed
from dryfit.joinery.dowels import (
    DowelSizes,
    crowded,
    depth_in_face,
    dowel_boxes,
    dowel_holes,
    edge_distance,
    glue_room,
    middles,
    usual_count,
    usual_diameter,
    usual_length,
)
from dryfit.quantities import Display

SPAN = Span(Source("notes.dryfit", ""), 1, 1, 1)
MM, INCHES = Display("mm"), Display("in")
EIGHT = DowelSizes(
    3, Fraction(8), Fraction(40), in_guest=Fraction(27), in_host=Fraction(16), edge=Fraction(20)
)


def test_the_worked_row_of_the_trade() -> None:
    """W 100, m 20, n 3: 20, 50, 80 (TRADE B5, reckoned there)."""
    width = Fraction(100)
    assert edge_distance(width, MM) == 20
    assert usual_count(width, Fraction(20)) == 3
    assert middles(Fraction(0), width, EIGHT) == mm(20, 50, 80)


@pytest.mark.parametrize(
    ("thickness", "diameter"),
    [(18, 6), (22, 8), (25, 8), (30, 10), (40, 12), (12, 6)],
)
def test_a_dowel_is_a_third_of_the_wood_as_it_is_sold(thickness: int, diameter: int) -> None:
    """Common practice (TRADE B5, S14): a third, never more than half."""
    assert usual_diameter(Fraction(thickness), (), MM) == diameter


def test_inch_pieces_take_inch_dowels() -> None:
    three_quarters = Fraction("25.4") * 3 / 4
    assert usual_diameter(three_quarters, (), INCHES) == Fraction("6.35")
    assert glue_room(INCHES) == Fraction("3.175")


def test_depths_of_a_dowel_in_end_grain_and_in_a_face() -> None:
    # 8 x 40 into a side of 22: 16 there (two diameters), 40 + 3 - 16 = 27 in the end.
    assert usual_length(Fraction(8)) == 40
    assert depth_in_face(Fraction(8), Fraction(22), MM) == 16
    # In 18 no more than leaves 6: 12.
    assert depth_in_face(Fraction(8), Fraction(18), MM) == 12


@pytest.mark.parametrize(
    ("row", "count", "is_crowded"),
    [(60, 2, False), (60, 3, True), (30, 2, True), (22, 1, True), (24, 1, False)],
)
def test_dowels_need_room(row: int, count: int, is_crowded: bool) -> None:
    edge = edge_distance(Fraction(row), MM)
    assert crowded(Fraction(row), replace(EIGHT, count=count, edge=edge)) == is_crowded


SIDE = Placed(
    "side",
    "side",
    Box((Fraction(0),) * 3, (Fraction(22), Fraction(240), Fraction(400))),
    (2, 1, 0),
    (-1, -1, 1),
)


@given(st.integers(50, 200), st.integers(1, 6), st.sampled_from([6, 8, 10]))
def test_holes_meet_at_the_contact_and_hold_the_dowel(width: int, count: int, thick: int) -> None:
    rail = Placed(
        "rail",
        "rail",
        Box(
            (Fraction(22), Fraction(100), Fraction(40)),
            (Fraction(400), Fraction(122), Fraction(40 + width)),
        ),
        (0, 2, 1),
        (-1, -1, 1),
    )
    touch = rail.box.contact(SIDE.box)
    assert touch is not None
    axis, region = touch
    sizes = replace(EIGHT, count=count, diameter=Fraction(thick))
    assume(not crowded(Fraction(width), sizes))
    holes = dowel_holes(rail, SIDE, region, (axis, 1), sizes, SPAN)
    pieces = dowel_boxes(region, axis, 1, sizes)
    assert len(holes) == 2 * count == 2 * len(pieces)
    for piece in pieces:
        shares = [
            (hole.copy, own) for hole in holes if (own := hole.box.overlap(piece)) is not None
        ]
        assert {copy for copy, _ in shares} == {"rail", "side"}
        # Together the two holes have room for all of the dowel.
        assert sum((own.volume() for _, own in shares), Fraction(0)) == piece.volume()
    assert all(
        hole.box.overlap(SIDE.box if hole.copy == "side" else rail.box) == hole.box
        for hole in holes
    )
