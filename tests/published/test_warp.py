"""What warp costs, against the worked figures of TRADE A1 and against the circle itself (J1)."""

from fractions import Fraction
from math import sqrt

import pytest

from dryfit.wood import warp
from dryfit.wood.warp import Warp, cup_left, flat_thickness, margin, twist_left

BOARD = Warp(Fraction(2400), Fraction(160), Fraction(34), cup=Fraction(4))


def arc(cup: float, width: float, strip: float) -> float:
    """The sagitta of a strip on the circle that a cup over the width makes (plane geometry)."""
    radius = width**2 / (8 * cup) + cup / 2
    return radius - sqrt(radius**2 - strip**2 / 4)


def test_j1_cup_costs_itself_once() -> None:
    """TRADE A1.6: 34 thick, 160 wide, cup 4, 1 to clean up: 29 left.

    Taking 2 x cup for the loss in `flat_thickness` would leave 25.
    """
    assert flat_thickness(BOARD, BOARD.length, BOARD.width) == 29


def test_j1_a_strip_keeps_the_square_of_its_share() -> None:
    """TRADE A1.6: ripped to 50 the cup is 0.39, and 32.6 are left.

    A cup in proportion to the width, in `cup_left`, would be 1.25 and leave 31.75.
    """
    strip = Fraction(50)
    assert cup_left(BOARD, strip) == Fraction(25, 64)
    assert float(cup_left(BOARD, strip)) == pytest.approx(0.39, abs=0.005)
    assert float(flat_thickness(BOARD, BOARD.length, strip)) == pytest.approx(32.6, abs=0.05)


@pytest.mark.parametrize(("parts", "left"), [(2, 1.00), (3, 0.44)])
def test_halves_and_thirds_of_a_cupped_board(parts: int, left: float) -> None:
    # TRADE A1.1: cup 4 over 200, calculated there.
    board = Warp(Fraction(2000), Fraction(200), Fraction(30), cup=Fraction(4))
    strip = board.width / parts
    assert float(cup_left(board, strip)) == pytest.approx(left, abs=0.005)
    assert float(cup_left(board, strip)) == pytest.approx(arc(4, 200, float(strip)), rel=0.005)


def test_j1_twist_falls_in_proportion() -> None:
    """Half as long and half as wide a piece has a quarter of the twist, a third as long a third.

    A square of it, in `twist_left`, would give a sixteenth and a ninth (TRADE A1.4).
    """
    board = Warp(Fraction(1800), Fraction(200), Fraction(30), twist=Fraction(12))
    assert twist_left(board, Fraction(900), Fraction(100)) == 3
    assert twist_left(board, Fraction(600), Fraction(200)) == 4


def test_twist_costs_half_where_the_board_is_wedged_level() -> None:
    board = Warp(Fraction(1800), Fraction(200), Fraction(30), twist=Fraction(6))
    whole = (board.length, board.width)
    assert flat_thickness(board, *whole) == 26
    assert flat_thickness(board, *whole, wedged=False) == 23


def test_all_that_a_board_has_adds_up() -> None:
    # A1.5: 1 cup + 2 bow + 3 / 2 twist + 2 for a bandsawn face off 40.
    board = Warp(*map(Fraction, (1000, 100, 40)), *map(Fraction, (1, 2, 3)))
    left = flat_thickness(board, board.length, board.width, warp.CLEAN_UP_BANDSAWN)
    assert left == Fraction(67, 2)
    # Half the length: bow a quarter, twist a half.
    shorter = flat_thickness(board, Fraction(500), board.width, warp.CLEAN_UP_BANDSAWN)
    assert shorter == 40 - 1 - Fraction(1, 2) - Fraction(3, 4) - 2


def test_half_a_millimetre_is_kept_for_the_hand() -> None:
    # TRADE I1: 30 does not come out of 29, and does out of the strips.
    assert margin(Fraction(29), Fraction(30)) < 0
    assert margin(flat_thickness(BOARD, BOARD.length, Fraction(50)), Fraction(30)) > 2
