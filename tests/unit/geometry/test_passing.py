"""What goes round a corner, leans under a lintel and stands up; held against plain geometry."""

from __future__ import annotations

import math
from fractions import Fraction

import pytest

from dryfit.geometry.passing import (
    diagonal,
    goes_round,
    leaning_width,
    longest_round,
    root,
    stands_up,
)


def turned(long: float, thick: float, first: float, second: float) -> bool:
    """Turn the rectangle step by step, its outer side between the walls, and look at the corner."""
    for step in range(2001):
        angle = step / 2000 * math.pi / 2
        # From (x, 0) on one outer wall to (0, y) on the other; inwards is away from the origin.
        x, y = long * math.cos(angle), long * math.sin(angle)
        along = ((-x) / long, y / long)
        inwards = (along[1], -along[0])
        corner = (first - x, second)
        depth = corner[0] * inwards[0] + corner[1] * inwards[1]
        if depth < thick - 1e-9:
            return False
    return True


CORNERS = [(720, 900, 300), (900, 900, 0), (600, 1200, 450), (1100, 700, 640), (800, 800, 790)]


@pytest.mark.parametrize(("first", "second", "thick"), CORNERS)
def test_the_longest_that_goes_round_is_the_longest_that_can_be_turned_or_slid(
    first: int, second: int, thick: int
) -> None:
    longest = int(longest_round(Fraction(thick), Fraction(first), Fraction(second)))
    for length in (longest - 1, longest):
        slid = thick <= first and length <= second
        assert slid or turned(length, thick, first, second)
    assert not turned(longest + 2, thick, first, second)
    assert longest + 2 > min(first, second)


def test_too_thick_for_either_passage_never_goes_round() -> None:
    assert not goes_round(Fraction(2000), Fraction(800), Fraction(700), Fraction(900))
    assert longest_round(Fraction(950), Fraction(700), Fraction(900)) == 0


def test_short_things_are_pushed_round_without_being_turned() -> None:
    assert goes_round(Fraction(900), Fraction(700), Fraction(700), Fraction(900))
    assert not turned(900, 700, 700, 900)


def test_a_root_is_rounded_up() -> None:
    assert root(Fraction(2)) == Fraction(1415, 1000)
    assert root(Fraction(9)) == 3
    assert diagonal(Fraction(3), Fraction(4)) == 5


@pytest.mark.parametrize(("ceiling", "stands"), [(2022, False), (2023, True)])
def test_what_stands_up_turns_by_its_diagonal(ceiling: int, stands: bool) -> None:
    assert stands_up(Fraction(2000), Fraction(300), Fraction(ceiling)) is stands


def test_leaning_is_as_wide_as_its_corners_are_apart() -> None:
    long, thick, height = 2100, 300, 1980
    width = leaning_width(Fraction(long), Fraction(thick), Fraction(height))
    assert width is not None
    # Lean it by hand: find the angle at which it is just so high, and measure across.
    angle = math.asin(height / math.hypot(long, thick)) - math.atan2(thick, long)
    across = long * math.cos(angle) + thick * math.sin(angle)
    assert float(width) == pytest.approx(across, abs=0.01)


def test_what_need_not_lean_or_cannot_is_told_by_none() -> None:
    assert leaning_width(Fraction(1900), Fraction(300), Fraction(1980)) is None
    assert leaning_width(Fraction(2500), Fraction(2000), Fraction(1980)) is None
