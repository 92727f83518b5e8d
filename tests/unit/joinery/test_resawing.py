"""Leaves out of a slab, by the worked rows of TRADE A8.1."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest
from tests.pieces.reading import changed, checked, codes

from dryfit.joinery.resawing import thickest_leaf, thickness_for

INCH = Fraction(254, 10)
TABLE = (Path(__file__).parents[3] / "examples" / "tea_table.dryfit").read_text(encoding="utf-8")


def test_34_rough_gives_two_leaves_of_13_85() -> None:
    # 34 rough, 3 lost, kerf 1.3, 1.0 of planing for each: (31 - 1.3) / 2 - 1.0 = 13.85.
    trued, kerf, planing = Fraction(31), Fraction(13, 10), Fraction(1)
    assert thickest_leaf(trued, 2, planing, kerf) == Fraction(1385, 100)
    assert thickness_for(2, Fraction(1385, 100), planing, kerf) == trued


def test_an_inch_gives_two_leaves_of_three_eighths_and_nothing_over() -> None:
    # 1 rough, 1/16 lost: have 15/16.  Two of 3/8 with 1/16 of planing and a kerf of 1/16: 15/16.
    sixteenth = INCH / 16
    assert thickness_for(2, INCH * 3 / 8, sixteenth, sixteenth) == INCH * 15 / 16


def test_three_leaves_have_two_kerfs() -> None:
    assert thickness_for(3, Fraction(8), Fraction(1), Fraction(1)) == 29


@pytest.mark.parametrize(
    ("thick", "code"),
    [("2 3/8", None), ("2 1/8", "slab-barely-thick"), ("2", "slab-too-thin")],
)
def test_a_slab_on_hand_is_held_against_its_leaves(thick: str, code: str | None) -> None:
    # The top is 7/8 = 22.225.  The shop takes 1.5 to flatten it and 1.5 for a face: 25.225 as sawn.
    # Two of them, 1.3 of kerf and 2 for truing: 53.75.  2 1/8 is 53.975, 0.225 more; 2 is 50.8.
    found = checked(changed(TABLE, ("42 x 12 1/2 x 2 3/8", f"42 x 12 1/2 x {thick}"))).findings
    told = [each for each in found if each.code.startswith("slab-")]
    assert [each.code for each in told] == ([code] if code else [])
    assert all(each.figures["needed"] == Fraction(5375, 100) for each in told)


def test_a_slab_that_the_notes_do_not_name_is_not_judged() -> None:
    text = changed(TABLE, ("have 1 slab of walnut, 42 x 12 1/2 x 2 3/8, rough\n", ""))
    assert not [code for code in codes(checked(text)) if code.startswith("slab-")]
