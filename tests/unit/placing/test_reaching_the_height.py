"""Uprights without a length reach the overall height, unless something above ends them."""

from __future__ import annotations

from itertools import permutations

import pytest
from tests.pieces.reading import changed, mm, model_of

STILES = "2 stiles, upright, facing front, 45 x 29, at left and right\n"
RAILS = "2 rails, across, on edge, 56 x 29, tenon into stiles, at bottom and top\n"
BARS = "3 bars, upright, facing front, 28 x 14, between stiles, spread across\n"
FENCE = f"""piece Fence panel
units mm
overall 430 wide, 29 deep, 730 high
timber oak
{STILES}{RAILS}{BARS}bars into rails: tenon 16
glue up panel: stiles, rails, bars
"""


@pytest.mark.parametrize("lines", list(permutations((STILES, RAILS, BARS))))
def test_bars_end_in_the_top_rail_in_whatever_order_the_lines_stand(lines: tuple[str, ...]) -> None:
    model = model_of(changed(FENCE, (STILES + RAILS + BARS, "".join(lines))))
    assert {copy.box.high[2] for copy in model.part("rail").copies} == {56, 730}
    # Between rails at 56 and 730 - 56 = 674, and 16 into either.
    assert {(c.box.low[2], c.box.high[2]) for c in model.part("bar").copies} == {mm(40, 690)}


def test_a_cleat_on_the_lower_rail_does_not_push_the_rail_up_to_the_top() -> None:
    rails = (
        "1 upper rail, across, on edge, 56 x 29, tenon into stiles, at top\n"
        "1 lower rail, across, on edge, 56 x 29, tenon into stiles, at bottom\n"
    )
    cleat = (
        "1 cleat, across, on edge, 20 x 12, between stiles, onto lower rail, screws, 0 from back\n"
    )
    glue = ("stiles, rails, bars", "stiles, upper rail, lower rail")
    model = model_of(
        changed(FENCE, (RAILS, rails), (f"{BARS}bars into rails: tenon 16\n", cleat), glue)
    )
    (lower,) = model.part("lower rail").copies
    (low,) = model.part("cleat").copies
    assert (lower.box.low[2], lower.box.high[2]) == mm(0, 56)
    assert (low.box.low[2], low.box.high[2]) == mm(56, 76)
