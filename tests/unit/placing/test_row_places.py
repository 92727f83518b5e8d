"""Rows of dowels, biscuits and pocket screws keep clear of grooves for panels."""

from __future__ import annotations

from fractions import Fraction

import pytest
from tests.pieces.reading import checked, codes, model_of
from tests.unit.rehearsal.played import played

TRAY = """piece Tray
units mm
overall 400 wide, 300 deep, {high} high
timber oak
2 sides, front to back, on edge, {high} x {wall}, at left and right
2 ends, across, on edge, {high} x {wall}, between sides, at front and back
ends into sides: {row}
1 bottom, flat, 5 mm thick, of birch ply, inside sides and ends, groove 4 mm, up {up} mm
glue up tray: sides, ends, bottom
"""


def tray(high: int, up: int, row: str = "dowels", wall: int = 12) -> str:
    """A tray so high, its bottom so far up, its corners held by a row."""
    return TRAY.format(high=high, up=up, row=row, wall=wall)


def test_dowels_begin_above_the_groove_of_a_bottom() -> None:
    # 60 high: a quarter of it, 15, is where the first dowel would stand, 12 to 18: in the groove
    # from 8 to 13.  Above it 47 are left; a quarter of them is 11.75 from either end.
    model = model_of(tray(60, 8))
    joint = next(each for each in model.joints if each.kind == "dowels")
    heights = sorted((box.low[2] + box.high[2]) / 2 for box in joint.loose_pieces)
    assert heights == [13 + Fraction(47, 4), 60 - Fraction(47, 4)]
    assert any("clear of the groove" in each.text for each in model.assumptions)


def test_dowels_out_of_the_way_stay_where_they_are() -> None:
    # 100 high: 20 from either end, and a groove from 6 to 11: 6 are left between the two.
    model = model_of(tray(100, 6))
    joint = next(each for each in model.joints if each.kind == "dowels")
    assert min((box.low[2] + box.high[2]) / 2 for box in joint.loose_pieces) == 20
    assert not any("clear of the groove" in each.text for each in model.assumptions)


@pytest.mark.parametrize(
    "text",
    [
        tray(60, 8),
        tray(100, 18),
        tray(120, 8, "biscuits", 18),
        tray(120, 20, "pocket screws", 18),
        tray(100, 70),
    ],
)
def test_what_stood_in_the_groove_goes_together(text: str) -> None:
    play = played(text)
    assert not play.faults(), play.said()


def test_more_than_find_room_beside_the_groove_are_told() -> None:
    assert "dowels-do-not-fit" in codes(checked(tray(60, 8, "4 dowels")))
