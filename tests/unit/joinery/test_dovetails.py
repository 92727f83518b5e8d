"""How many tails, how wide, how steep; and sloping sockets as two halves (TRADE B14, B15)."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dryfit.geometry.box import Box
from dryfit.joinery.dovetails import (
    HARDWOOD_SLOPE,
    SOFTWOOD_SLOPE,
    Tails,
    pin_ranges,
    tail_ranges,
    tail_width,
    usual_count,
    usual_lap,
)
from dryfit.joinery.flare import Flare, halves
from dryfit.quantities import Display
from dryfit.wood import species

INCH = Fraction("25.4")
MM, INCHES = Display("mm"), Display("in")


def test_three_tails_in_three_and_seven_eighths() -> None:
    # TRADE B14: W 3 7/8, half pins and pins 1/4, 3 tails: 0.958 in.
    quarter = INCH / 4
    width = INCH * Fraction(31, 8)
    assert usual_count(width, quarter, INCH) == 3
    tail = tail_width(width, 3, quarter, quarter)
    assert float(tail / INCH) == pytest.approx(0.958, abs=0.0005)


@pytest.mark.parametrize(
    ("thickness", "lap"), [("18", 5), ("20", 5), ("12", 4), ("10", 4), ("25", 7)]
)
def test_a_lap_of_a_quarter_and_four_at_least(thickness: str, lap: int) -> None:
    # TRADE B15: 1/4 to 1/3 of the thickness, 4 mm at least.
    assert usual_lap(Fraction(thickness), MM) == lap


def test_a_lap_in_inches() -> None:
    assert usual_lap(INCH * 3 / 4, INCHES) == INCH * 3 / 16


@pytest.mark.parametrize(
    ("wood", "soft"),
    [
        ("ponderosa pine", True),
        ("grand fir", True),
        ("western redcedar", True),
        ("red oak", False),
        ("cedar elm", False),
        ("basswood", False),
    ],
)
def test_conifers_are_softwood(wood: str, soft: bool) -> None:
    # Common knowledge of botany, from memory: basswood is soft, but a hardwood.
    known = species(wood)
    assert known is not None
    assert known.softwood is soft


@given(
    st.integers(1, 8),
    st.fractions(min_value=40, max_value=300),
    st.sampled_from([SOFTWOOD_SLOPE, HARDWOOD_SLOPE]),
)
def test_tails_and_pins_fill_the_width_between_them(
    count: int, width: Fraction, slope: Fraction
) -> None:
    pin = Fraction(6)
    tail = tail_width(width, count, pin, pin)
    tails = tail_ranges(Fraction(0), Tails(count, tail, pin, pin, slope), slope * 18)
    pins = pin_ranges(Fraction(0), width, tails)
    assert len(pins) == count + 1
    total = sum((high - low for low, high in (*tails, *pins)), Fraction(0))
    assert total == width


def _volume(ranges: tuple[tuple[Fraction, Fraction], ...]) -> Fraction:
    lows = (ranges[0][0], ranges[1][0], ranges[2][0])
    return Box(lows, (ranges[0][1], ranges[1][1], ranges[2][1])).volume()


@given(
    st.fractions(min_value=0, max_value=2),
    st.fractions(min_value=0, max_value=2),
    st.sampled_from(["R", "R2", "F", "B"]),
)
def test_the_halves_of_a_socket_take_as_much_as_the_socket(
    low: Fraction, high: Fraction, toward: str
) -> None:
    ranges = (
        (Fraction(0), Fraction(18)),
        (Fraction(10), Fraction(30)),
        (Fraction(0), Fraction(12)),
    )
    both = halves(ranges, Flare(low, high, toward))
    assert sum(_volume(each) for each in both) == _volume(ranges)
    narrow, wide = (each[1][1] - each[1][0] for each in both)
    assert wide - narrow == 2 * (low + high) / 2
