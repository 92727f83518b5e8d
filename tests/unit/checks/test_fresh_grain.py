"""A tenon across the grain of its mate is told, and the line that is offered mends it."""

import pytest
from tests.pieces.reading import changed, checked

STOOL = """piece Planing stool
units mm, to nearest 0.5
overall 620 wide, 340 deep, 520 high
timber beech
4 legs, upright, 50 x 50, at corners
2 end stretchers, front to back, 50 x 24, tenon 28 long 8 thick into legs, up 110
1 middle stretcher, across, 50 x 24, tenon 16 long 8 thick into end stretchers
glue up 2 ends: 2 legs, 1 end stretcher
glue up base: ends, middle stretcher
"""
CODE = "tenon-across-grain"


def test_a_stretcher_on_edge_into_a_stretcher_is_told_once() -> None:
    # The mortise is 8 along the grain and 40 of 50 across it (shoulders of 5).
    (told,) = [each for each in checked(STOOL).findings if each.code == CODE]
    assert told.message.startswith("middle stretcher: its tenon lies across the grain of end")
    assert told.figures["of"] == 50
    assert told.span is not None


def test_flat_as_offered_mends_it() -> None:
    flat = changed(STOOL, ("across, 50 x 24", "across, flat, 50 x 24"))
    assert CODE not in {each.code for each in checked(flat).findings}


def test_rails_on_edge_into_legs_are_right() -> None:
    alone = changed(
        STOOL,
        ("1 middle stretcher, across, 50 x 24, tenon 16 long 8 thick into end stretchers\n", ""),
        ("ends, middle stretcher", "ends"),
    )
    assert CODE not in {each.code for each in checked(alone).findings}


RACK = """piece Rack
overall 600 wide, 250 deep, 500 high
timber ash
2 sides, upright, facing side, 250 x 20, at left and right
2 shelves, {shelves}, spread up and down
shelves into sides: housing 6
glue up rack: sides, shelves
"""


@pytest.mark.parametrize(
    ("shelves", "told"),
    [
        ("front to back, flat, 250 long, 18 thick, glued from 5", ["shelf"]),
        ("across, flat, 250 x 18", []),
    ],
)
def test_a_shelf_that_bears_across_its_grain_is_told(shelves: str, told: list[str]) -> None:
    found = checked(RACK.format(shelves=shelves)).findings
    across = [each for each in found if each.code == "grain-across-the-span"]
    assert [each.message.partition(":")[0] for each in across] == told
    assert all(each.hints[0].message.startswith("write `across`") for each in across)
