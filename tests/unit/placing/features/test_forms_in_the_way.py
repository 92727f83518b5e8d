"""Two parts in one place: only what a taper surely takes makes room."""

from __future__ import annotations

import pytest
from tests.unit.placing.features.where import found

LEG = """piece Leg and block
units mm
overall 600 wide, 45 deep, 400 high
timber oak
1 leg, upright, 400 x 45 x 45, 0 from left
1 block, upright, {high} x 45 x 20, 40 from left, up 0, facing side
"""
TAPER = "taper in leg: right face, from 40 below the top to the bottom end, 45 to 25\n"


@pytest.mark.parametrize(
    ("high", "stands_free"),
    [
        # The leg is 25 + 20 x z / 360 thick at the height z: 40 at 270, where the block begins.
        (270, True),
        (271, False),
    ],
)
def test_a_part_may_stand_where_the_taper_has_gone(high: int, stands_free: bool) -> None:
    text = LEG.format(high=high) + TAPER
    assert bool(found(text, "overlap")) is not stands_free


def test_without_the_taper_they_are_in_one_place() -> None:
    assert found(LEG.format(high=270), "overlap")


def test_of_a_moulding_nothing_surely_goes() -> None:
    moulding = "profile on leg: right front edge, ogee, 20 wide, 20 deep\n"
    assert found(LEG.format(high=270) + moulding, "overlap")
