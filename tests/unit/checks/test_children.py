"""Pieces for children (M20): lids, air, latches, gaps and edges, each fired and kept quiet."""

from __future__ import annotations

import pytest
from tests.pieces.reading import checked, codes

BOX = """piece Chest
overall {wide} wide, 300 deep, 320 high
timber birch ply
{words}
2 ends, upright, 300 x 12, facing side, at left and right, down 12
2 walls, across, 308 x 12, between ends, at front and back, glued
1 floor, flat, 12 thick, up 0, between ends, between walls, glued
1 lid, flat, 12 thick, onto ends and walls
{more}
glue up box: ends, walls, floor
"""
SLATS = """piece Duckboard
overall 300 wide, {deep} deep, 40 high
timber oak
for children
2 battens, front to back, flat, 40 x 20, at left and right, up 0
3 slats, flat, across, 60 x 20, onto battens, screws, spread, no gap at ends
"""
GUARD = """piece Guard
overall {wide} wide, 60 deep, 540 high
timber ash
for children
2 rails, across, flat, 60 x 40, up 0 and 500
3 bars, upright, 30 x 30, tenon 20 into rails, spread across, no gap at ends
glue up guard: rails, bars
"""
HINGED = "bought 2 hinges, for lid"
STAY = f"{HINGED}\nbought 1 lid stay, for lid"


def told(more: str, words: str = "for children", wide: int = 300) -> list[str]:
    text = BOX.format(more=more, words=words, wide=wide)
    return [code for code in codes(checked(text)) if code != "edges-for-children"]


def test_a_hinged_lid_needs_a_stay() -> None:
    assert told(HINGED) == ["lid-may-fall"]
    assert told(STAY) == []
    assert told(HINGED, words="") == []


def test_no_latch() -> None:
    assert told(f"{STAY}\nbought 1 hasp, for lid") == ["lid-latches"]


@pytest.mark.parametrize(("wide", "fires"), [(300, False), (330, True)])
def test_a_chest_that_one_can_climb_into_lets_air_in(wide: int, fires: bool) -> None:
    # 300 x 320 x 330 are 31.7 litres, 1.1 cubic feet are 31.1.
    assert told(STAY, wide=wide) == ["no-air"] * fires
    hole = "hole in walls: outside, 30 dia, through, 40 from top, 60 from left"
    assert told(f"{STAY}\n{hole}", wide=wide) == []


@pytest.mark.parametrize(("gap", "fires"), [(5, False), (6, True), (11, True), (12, False)])
def test_gaps_for_a_finger(gap: int, fires: bool) -> None:
    found = codes(checked(SLATS.format(deep=180 + 2 * gap)))
    assert ("finger-gap" in found) is fires


@pytest.mark.parametrize(("gap", "fires"), [(65, False), (66, True), (230, False)])
def test_gaps_for_a_head(gap: int, fires: bool) -> None:
    found = codes(checked(GUARD.format(wide=90 + 2 * gap)))
    assert ("head-gap" in found) is fires


def test_rounded_edges_are_asked_for_once() -> None:
    text = SLATS.format(deep=184)
    assert "edges-for-children" in codes(checked(text))
    rounded = f"{text}round-over on slats: all top edges, 3 radius\n"
    assert "edges-for-children" not in codes(checked(rounded))


def test_without_the_word_nothing_is_looked_at() -> None:
    text = SLATS.format(deep=196).replace("for children\n", "")
    assert not {"finger-gap", "edges-for-children"} & set(codes(checked(text)))


def test_a_hinge_for_something_else_does_not_hang_the_lid() -> None:
    assert "lid-may-fall" not in told("bought 2 hinges, for ends")


FLOORED = """piece Toy tray
for children
overall 400 wide, 300 deep, 200 high
timber birch ply
2 ends, upright, 300 x 12, facing side, at left and right
2 walls, across, 200 x 18, between ends, at front and back, glued
2 ledgers, across, 20 x 20, on the inside of walls, up 0, between ends, screws
1 floor, flat, onto ledgers, {long} x 264 x 9, screws
{more}
glue up box: ends, walls
"""
LID = """1 lid, flat, 18 thick, onto ends and walls
lid to back wall: 2 hinges
bought 1 lid stay, for lid"""


@pytest.mark.parametrize(("long", "fires"), [(376, False), (360, True), (350, False)])
@pytest.mark.parametrize("more", ["", LID])
def test_a_slot_beside_a_thin_floor_is_a_gap(long: int, fires: bool, more: str) -> None:
    # 376 wide inside: 8 mm at both ends beside a floor of 9 mm, through which a finger goes; 13 mm
    # beside the shorter one.  A lid that opens covers nothing.
    text = FLOORED.format(long=long, more=more)
    assert ("finger-gap" in codes(checked(text))) is fires
