"""Holes and rows of holes: distances go to their middles."""

from __future__ import annotations

from fractions import Fraction
from itertools import product

from tests.unit.placing.features.where import bounds, cuts, found, placed

CASE = """piece Case
units mm
overall 600 wide, 300 deep, 800 high
timber birch
2 sides, upright, facing side, 800 x 300 x 18, at left and right
"""
PINS = """holes in sides: inside, 5 dia, 10 deep,
    rows 37 from front and 47 from back, 3 at 32 from 200
"""
BACK = """piece Back
units mm
overall 600 wide, 20 deep, 400 high
timber oak
1 back, across, on edge, 600 x 400 x 20
"""


def test_rows_are_counted_from_the_bottom_on_both_hands() -> None:
    model = placed(CASE + PINS)
    # Rows 37 from the front and 300 - 47 = 253 from it; the first pins at 200, then every 32.
    rows = list(product((37, 253), (200, 232, 264)))
    for copy, (low, high) in (("left side", (8, 18)), ("right side", (582, 592))):
        assert cuts(model, copy, "hole") == {
            bounds((low, high), (y - 2.5, y + 2.5), (z - 2.5, z + 2.5)) for y, z in rows
        }
    assert all(feature.hands == ("A", "B") for feature in model.part("side").features)


def test_rows_may_be_counted_from_the_top() -> None:
    line = "holes in sides: inside, 5 dia, 10 deep, rows 37 from front, 2 at 32 from 200 from top\n"
    assert cuts(placed(CASE + line), "left side", "hole") == {
        bounds((8, 18), (34.5, 39.5), (z - 2.5, z + 2.5)) for z in (600, 568)
    }


def test_rows_without_a_start_stand_in_the_middle() -> None:
    line = "holes in sides: inside, 5 dia, 10 deep, rows 37 from front, 3 at 32\n"
    model = placed(CASE + line)
    # (800 - 64) / 2 = 368
    assert cuts(model, "left side", "hole") == {
        bounds((8, 18), (34.5, 39.5), (z - 2.5, z + 2.5)) for z in (368, 400, 432)
    }
    assert any("begin as far from one end" in each.text for each in model.assumptions)


def test_a_hole_stands_at_its_two_distances() -> None:
    line = "hole in back: front, 35 dia, through, 50 from top, 200 from left\n"
    model = placed(BACK + line)
    assert cuts(model, "back", "hole") == {bounds((182.5, 217.5), (0, 20), (332.5, 367.5))}
    assert {feature.kind for feature in model.part("back").features} == {"hole"}


def test_a_hole_with_one_distance_is_centred_the_other_way() -> None:
    model = placed(BACK + "hole in back: front, 35 dia, through, 50 from top\n")
    assert cuts(model, "back", "hole") == {bounds((282.5, 317.5), (0, 20), (332.5, 367.5))}
    (said,) = (each for each in model.assumptions if "hole" in each.text)
    assert said.text == "the hole in back is in the middle between left and right"
    assert said.instead is not None
    again = placed(BACK + said.instead + "\n")
    assert cuts(again, "back", "hole") == cuts(model, "back", "hole")


def test_holes_that_are_named_and_put_agree() -> None:
    line = "holes in back: front, 8 dia, through, 50 from top, 2 at 40 from 100\n"
    assert not found(f"{BACK}2 {line}", "holes-miscounted")
    (finding,) = found(f"{BACK}4 {line}", "holes-miscounted")
    assert finding.message == "hole in back: 4 are named, but the line puts 2 on each"


def test_a_hole_beyond_the_edge_is_told() -> None:
    line = "hole in back: front, 35 dia, through, 10 from top, 200 from left\n"
    (finding,) = found(BACK + line, "feature-off-part")
    assert finding.message == "hole in back: it reaches 7.5 beyond the top of the part"
    assert dict(finding.figures) == {"beyond": Fraction(15, 2)}
