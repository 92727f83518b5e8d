"""Fingers that fill a width, and the widths and fingers next to what does not (TRADE B13, H12)."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dryfit.joinery.box_joint import fingers_in, nearest_counts, nearest_widths, usual_finger


@pytest.mark.parametrize(("width", "finger", "count"), [(104, 8, 13), (96, 8, 12), (100, 8, None)])
def test_whole_fingers_fill_a_width(width: int, finger: int, count: int | None) -> None:
    # TRADE B13: 96 / 8 is 12, an even number; 104 gives 13 and looks alike from both edges.
    assert fingers_in(Fraction(width), Fraction(finger)) == count


def test_what_stands_next_to_a_width_that_does_not_divide() -> None:
    # 100 / 8 is 12.5 (H12): 96 or 104 wide, or 13 or 11 fingers.
    assert nearest_widths(Fraction(100), Fraction(8)) == (Fraction(96), Fraction(104))
    assert nearest_counts(Fraction(100), Fraction(8)) == (11, 13)


@given(st.fractions(min_value=20, max_value=400), st.fractions(min_value=3, max_value=20))
def test_the_numbers_offered_are_odd_and_fill_the_width(width: Fraction, finger: Fraction) -> None:
    for each in nearest_counts(width, finger):
        assert each % 2 == 1
        assert fingers_in(width, width / each) == each


def test_a_finger_that_nobody_sized_is_a_cutter_that_divides_the_width_oddly() -> None:
    bits = [Fraction(each) for each in (6, 8, 10, 12)]
    assert usual_finger(Fraction(104), Fraction(12), bits) == 8
    # 90 / 6 is 15 and 90 / 10 is 9; both are 2 off from two thirds of 12: the narrower.
    assert usual_finger(Fraction(90), Fraction(12), bits) == 6
    assert usual_finger(Fraction(97), Fraction(12), bits) is None
