"""Leaning members: the sheared design box against trigonometry worked here in floats."""

from __future__ import annotations

from fractions import Fraction
from math import hypot, sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dryfit.geometry.box import Box
from dryfit.geometry.lean import Lean, rounded_root

EIGHTH = Fraction(1, 8)


def test_a_foot_stands_out_by_the_rise_per_run() -> None:
    # 1 in 8 over 400 is 50 to the left; 1 in 10 is 40 to the front.
    lean = Lean((-EIGHTH, -Fraction(1, 10)), Fraction(400))
    foot, seat, top = (
        lean.placed((Fraction(60), Fraction(50), Fraction(height))) for height in (0, 400, 440)
    )
    assert [int(size) for size in (*foot, *seat, *top)] == [10, 10, 0, 60, 50, 400, 65, 54, 440]


def test_corners_come_in_the_order_of_the_box() -> None:
    box = Box((Fraction(0),) * 3, (Fraction(40), Fraction(40), Fraction(400)))
    corners = Lean((-EIGHTH, Fraction(0)), Fraction(400)).corners(box)
    assert [(int(x), int(y), int(z)) for x, y, z in corners[:5]] == [
        (-50, 0, 0),
        (-10, 0, 0),
        (-50, 40, 0),
        (-10, 40, 0),
        (0, 0, 400),
    ]


def test_the_slope_is_longer_than_the_height() -> None:
    # By hand: 400 * sqrt(1 + 1/64 + 1/64) = 400 * 1.0155048 = 406.2019.
    lean = Lean((EIGHTH, EIGHTH), Fraction(0))
    assert lean.along(Fraction(400)) == Fraction(406_202, 1000)
    assert lean.stretch(Fraction(40)) == Fraction(620, 1000)


def test_a_root_is_rounded_once_and_half_up() -> None:
    assert rounded_root(Fraction(2)) == Fraction(1414, 1000)
    assert rounded_root(Fraction(9)) == 3
    assert rounded_root(Fraction(0)) == 0
    with pytest.raises(ValueError, match="-1"):
        rounded_root(Fraction(-1))


ratios = st.fractions(min_value=-Fraction(1, 2), max_value=Fraction(1, 2), max_denominator=64)
heights = st.fractions(min_value=1, max_value=2000, max_denominator=64)


@given(ratios, ratios, heights)
def test_the_slope_is_the_distance_of_two_placed_points(
    across: Fraction, back: Fraction, height: Fraction
) -> None:
    lean = Lean((across, back), height)
    low = lean.placed((Fraction(0), Fraction(0), Fraction(0)))
    high = lean.placed((Fraction(0), Fraction(0), height))
    apart = sqrt(sum(float(a - b) ** 2 for a, b in zip(low, high, strict=True)))
    assert abs(float(lean.along(height)) - apart) <= 0.000501
    assert abs(apart - float(height) * hypot(1, float(across), float(back))) < 1e-8
