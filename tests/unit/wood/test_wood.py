from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dryfit.wood import (
    Moisture,
    all_species,
    assumption,
    button_stand_off,
    dry_engagement,
    least_engagement,
    movement,
    moving,
    panel_gap,
    panel_width,
    species,
)

HOUSE = Moisture(now=Fraction(8), driest=Fraction(6), dampest=Fraction(11))
RED_OAK = moving("red oak", None, HOUSE)

_sizes = st.fractions(50, 1200, max_denominator=64)
_coefficients = st.sampled_from([wood.tangential for wood in all_species()])
_woods = st.sampled_from([wood.name for wood in all_species()])


@pytest.mark.parametrize(
    ("name", "full_name"),
    [
        ("ash", "white ash"),
        ("Ash", "white ash"),
        ("oak", "red oak"),
        ("hard maple", "sugar maple"),
        ("brown ash", "white ash"),
        ("douglas fir", "Douglas-fir"),
        ("yellow poplar", "yellow-poplar"),
        ("white  oak", "white oak"),
    ],
)
def test_a_wood_is_found_by_what_makers_call_it(name: str, full_name: str) -> None:
    found = species(name)
    assert found is not None
    assert found.name == full_name


@pytest.mark.parametrize("name", ["plywood", "birch plywood", "", "unobtainium", "ash tray"])
def test_what_is_no_wood_of_the_tables_is_none(name: str) -> None:
    assert species(name) is None


def test_a_plain_name_is_told_as_an_assumption_and_a_full_name_is_not() -> None:
    ash = species("ash")
    assert ash is not None
    assert assumption("ash", ash) == "ash is taken to be white ash"
    assert assumption("White Ash", ash) is None
    fir = species("douglas fir")
    assert fir is not None
    assert assumption("douglas fir", fir) is None


def test_every_wood_is_found_by_its_name_and_marked_with_its_source() -> None:
    for wood in all_species():
        assert species(wood.name) is wood
        assert wood.mark in {"read", "derived", "memory"}
        assert wood.source
        assert 0 < wood.radial < wood.tangential < Fraction("0.005")


def test_the_boards_of_a_bench_top_move_two_millimetres_to_each_side() -> None:
    # White ash 360 mm wide, 4 % of moisture: 360 * 0.00274 * 4 = 3.9456 mm in all.
    each = moving("ash").over_the_year(Fraction(360)) / 2
    assert each == Fraction("1.9728")
    assert button_stand_off(each) == Fraction("2.4728")


def test_a_panel_in_grooves_by_hand() -> None:
    # 300 between the grooves, 9 deep, 3 % to come: (300 + 18 - 2) / (1 + 0.01107).
    width = panel_width(Fraction(300), Fraction(9), RED_OAK)
    assert width == Fraction(316) / Fraction("1.01107")
    assert float(width) == pytest.approx(312.54, abs=0.005)
    assert float(panel_gap(width, RED_OAK)) == pytest.approx(2.73, abs=0.005)
    engaged = dry_engagement(width, Fraction(300), RED_OAK)
    assert float(engaged) == pytest.approx(5.117, abs=0.005)
    assert engaged > least_engagement(Fraction(9)) == 5
    assert least_engagement(Fraction(12)) == 6


@given(_sizes, st.fractions(5, 15, max_denominator=8), _woods)
def test_a_panel_has_just_its_gap_on_each_side_and_a_millimetre_when_dampest(
    sight: Fraction, depth: Fraction, name: str
) -> None:
    wood = moving(name, None, HOUSE)
    width = panel_width(sight, depth, wood)
    gap = panel_gap(width, wood)
    assert width + 2 * gap == sight + 2 * depth
    swollen = width + movement(width, wood.across, HOUSE.now, HOUSE.dampest)
    assert sight + 2 * depth - swollen == 2


@given(_sizes, _coefficients, st.integers(6, 14), st.integers(6, 14), st.integers(6, 14))
def test_movement_adds_up_and_comes_back(
    size: Fraction, coefficient: Fraction, first: int, second: int, third: int
) -> None:
    def moved(start: int, end: int) -> Fraction:
        return movement(size, coefficient, Fraction(start), Fraction(end))

    assert moved(first, second) + moved(second, third) == moved(first, third)
    assert moved(first, second) == -moved(second, first)
    assert (moved(first, second) > 0) == (second > first)
