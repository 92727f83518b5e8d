"""Carrying and tilting: what general geometry and public examples say.

- The longest ladder round a right corner is (a^(2/3) + b^(2/3))^(3/2): general knowledge, a
  problem of any calculus book (read at problemcorner.missouristate.edu, problem 32, unsolved).
- A box 4.3 x 0.2 x 0.07 m, tilted, in a passage 1.5 m wide and 2.5 m high that turns a corner:
  math.stackexchange.com question 51671 (read), which needs (L/2 + c) / root 2 of width, with L the
  length of the tilted box in plan.
- A case 2000 x 300 stands up under 2022.4 mm, one of 2090 needs 2111.4 (Pythagoras).
"""

import math
from fractions import Fraction

import pytest

from dryfit.geometry.passing import diagonal, goes_round, leaning_width, longest_round
from dryfit.piece.declared.site import WayIn
from dryfit.placing.loads import through


@pytest.mark.parametrize(("first", "second"), [(720, 900), (1000, 1000), (600, 1500)])
def test_the_ladder_of_the_calculus_books(first: int, second: int) -> None:
    ladder = (first ** (2 / 3) + second ** (2 / 3)) ** 1.5
    assert longest_round(Fraction(0), Fraction(first), Fraction(second)) == math.floor(ladder)


def test_the_box_that_is_tilted_round_a_corner() -> None:
    long, thick, width, height = Fraction(4300), Fraction(200), Fraction(1500), Fraction(2500)
    plan = leaning_width(long, thick, height)
    assert plan is not None
    needed = (float(plan) / 2 + 70) / math.sqrt(2)
    assert needed < float(width)
    assert goes_round(plan, Fraction(70), width, width)
    assert not goes_round(
        plan, Fraction(70), Fraction(math.floor(needed) - 1), Fraction(math.floor(needed) - 1)
    )
    assert not goes_round(long, Fraction(70), width, width)


def test_the_same_box_as_a_load() -> None:
    way = WayIn(Fraction(1500), Fraction(2500), Fraction(1500), span=None)  # type: ignore[arg-type]
    assert (
        through(way, (Fraction(4300), Fraction(70), Fraction(200)))
        == "tilted, one end up under the lintel"
    )


@pytest.mark.parametrize(
    ("high", "needs"), [(2000, Fraction(20224, 10)), (2090, Fraction(21115, 10))]
)
def test_standing_up_by_pythagoras(high: int, needs: Fraction) -> None:
    assert abs(diagonal(Fraction(high), Fraction(300)) - needs) < Fraction(1, 10)
