"""Pocket screws: lengths, penetration and places (TRADE B16; from memory where it says so)."""

from fractions import Fraction

import pytest

from dryfit.joinery.pocket_screws import (
    crowded,
    edge_distance,
    penetration,
    stays_inside,
    usual_count,
    usual_length,
)
from dryfit.quantities import Display
from dryfit.quantities.units import INCH

MM = Display("mm", Fraction(1))


# TRADE B16 [memory]: 18 to 19 take 32, 12 take 25, 25 to 28 take 38, 38 take 64.
@pytest.mark.parametrize(
    ("thick", "screw"), [(12, 25), (18, 32), (19, 32), (25, 38), (28, 38), (38, 64)]
)
def test_the_screw_goes_by_the_thickness_that_is_bored(thick: int, screw: int) -> None:
    assert usual_length(Fraction(thick), Fraction(60), MM) == screw


def test_in_inches_a_screw_of_one_and_a_quarter_holds_three_quarters() -> None:
    inches = Display("in", INCH / 16)
    assert usual_length(INCH * 3 / 4, INCH * 2, inches) == INCH * 5 / 4


def test_a_screw_of_32_goes_16_into_its_mate() -> None:
    # TRADE B16: 0.966 x 32 - 15 = 15.912.
    assert penetration(Fraction(32)) == Fraction(15912, 1000)
    assert stays_inside(Fraction(32), Fraction(19))
    assert not stays_inside(Fraction(32), Fraction(18))


def test_in_a_thin_mate_the_next_shorter_screw_is_taken() -> None:
    # 0.966 x 25 - 15 = 9.15: 3 less than 13, but not than 12.
    assert usual_length(Fraction(19), Fraction(13), MM) == 25
    assert usual_length(Fraction(19), Fraction(12), MM) is None


@pytest.mark.parametrize(
    ("row", "count", "edge"),
    [(30, 1, None), (40, 2, 10), (60, 2, 20), (190, 2, 20), (191, 3, 20), (400, 4, 20)],
)
def test_screws_stand_20_from_the_edges_and_150_apart(
    row: int, count: int, edge: int | None
) -> None:
    assert usual_count(Fraction(row)) == count
    assert not crowded(Fraction(row), count)
    if edge is not None:
        assert edge_distance(Fraction(row)) == edge


def test_three_find_no_room_in_a_rail_of_60() -> None:
    assert crowded(Fraction(60), 3)
    assert crowded(Fraction(19), 1)
