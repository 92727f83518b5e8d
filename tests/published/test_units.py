"""Exact sizes of units, against their definitions and against pint's own tables."""

from fractions import Fraction

import pint
import pytest

from dryfit.quantities.border import cubic_metres_and_board_feet
from dryfit.quantities.read import read_quantity
from dryfit.quantities.units import INCH, UNITS

FEET = 12 * INCH

# pint's own tables are independent of ours.
PINT: pint.UnitRegistry[Fraction] = pint.UnitRegistry(non_int_type=Fraction)


def test_an_inch_is_25_4_mm_exactly() -> None:
    # International yard and pound agreement, 1959 (from memory); repeated in every public table.
    assert read_quantity("1 in").value == Fraction(254, 10)
    assert read_quantity("1 ft").value == Fraction(3048, 10)


@pytest.mark.parametrize("name", sorted(set(UNITS) - {"'", '"', "''", "mins", "hrs", "m"}))
def test_a_unit_has_the_size_that_pint_gives_it(name: str) -> None:
    unit = UNITS[name]
    base = {(1, 0, 0): "mm", (0, 1, 0): "min", (0, 0, 1): "deg"}[
        unit.kind.length, unit.kind.time, unit.kind.angle
    ]
    size = PINT.Quantity(Fraction(1), name).to(base).magnitude
    assert float(size) == pytest.approx(float(unit.size), rel=1e-12)


@pytest.mark.parametrize(
    ("size", "length", "board_feet"),
    [
        # Worked examples of three public pages on the board foot (read): nominal inches and feet.
        ((1, 3), 8, 2),
        ((4, 3), 2, 2),
        ((1, 12), 10, 10),
        ((1, 6), 2, 1),
        ((2, 12), 1, 2),
    ],
)
def test_board_feet_of_the_published_examples(
    size: tuple[int, int], length: int, board_feet: int
) -> None:
    volume = size[0] * INCH * size[1] * INCH * length * FEET
    assert cubic_metres_and_board_feet(volume)[1] == board_feet


def test_a_board_foot_is_144_cubic_inches_and_so_many_cubic_metres() -> None:
    # 0.002359737216 m3: read on a public page; exactly 144 in3 by the agreement on the inch.
    cubic_metres, board_feet = cubic_metres_and_board_feet(144 * INCH**3)
    assert cubic_metres == Fraction(2359737216, 10**12)
    assert board_feet == 1


def test_pint_has_the_same_board_foot_in_its_own_tables() -> None:
    theirs = PINT.Quantity(Fraction(1), "m ** 3").to("board_foot").magnitude
    assert cubic_metres_and_board_feet(Fraction(10**9))[1] == theirs
