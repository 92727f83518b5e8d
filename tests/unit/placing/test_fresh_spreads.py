"""Several shelves in one line, and slats that reach over what carries them."""

from __future__ import annotations

import pytest
from tests.pieces.reading import changed, checked, errors, model_of

from dryfit.placing.model import Model

SHELF = """piece Wall shelf
units mm
overall 600 wide, 140 deep, 500 high
timber pine
2 sides, upright, 140 x 18, at left and right
3 shelves, across, 140 x 18, spread up and down, housing 6 into sides
glue up case: sides, shelves, cure 2 h
"""


def heights(model: Model, part: str) -> list[float]:
    return [float(copy.box.low[2]) for copy in model.part(part).copies]


@pytest.mark.parametrize("words", ["up and down", "upright", "upwards"])
def test_three_shelves_are_spread_upwards_in_one_line(words: str) -> None:
    model = model_of(changed(SHELF, ("spread up and down", f"spread {words}")))
    # 500 less 3 x 18 in four gaps of 111.5.
    assert heights(model, "shelf") == [111.5, 241, 370.5]
    assert model.part("shelf").length == 600 - 2 * 18 + 2 * 6


def test_several_in_one_gap_are_told_how_to_be_spread() -> None:
    (found,) = errors(checked(changed(SHELF, (", spread up and down", ""))))
    assert found.message == "3 shelves, but the sides leave 1 gap that way"
    assert "`spread up and down`" in found.hints[0].message


def test_shelves_spread_without_a_direction_are_told_of_it() -> None:
    (found,) = errors(checked(changed(SHELF, ("spread up and down", "spread"))))
    assert found.code == "spread-too-full"
    assert "`spread up and down`" in found.hints[0].message


STOOL = """piece Garden stool
units mm
overall 400 wide, 320 deep, 430 high
timber oak
4 posts, upright, 60 x 30, at corners, set in 20 across, 20 front to back
2 top bars, front to back, 60 x 30
posts crossing top bars: half lap
4 slats, across, 70 x 22, spread front to back, set in 0 front to back
slats onto posts and top bars: screws
glue up 2 leg frames: 2 posts, 1 top bar
"""


def depths(model: Model, part: str) -> list[float]:
    return [float(copy.box.low[1]) for copy in model.part(part).copies]


@pytest.mark.parametrize(
    ("inset", "fronts"),
    [
        # 320 less 4 x 70 in three gaps; set in 5 from both edges the gaps are 30 / 3.
        (0, [0, 70 + 40 / 3, 2 * (70 + 40 / 3), 250]),
        (5, [5, 85, 165, 245]),
    ],
)
def test_a_row_set_in_from_the_edges_reaches_over_what_carries_it(
    inset: int, fronts: list[float]
) -> None:
    # Something must reach the overall depth: the posts, where the slats do not.
    text = changed(STOOL, ("set in 0 front", f"set in {inset} front"))
    if inset:
        text = changed(text, ("across, 20 front to back", "across, 0 front to back"))
    model = model_of(text)
    assert depths(model, "slat") == pytest.approx(fronts)


def test_a_row_that_falls_short_of_the_edges_is_told_once_how_to_reach_over() -> None:
    (found,) = errors(checked(changed(STOOL, (", set in 0 front to back", ""))))
    assert found.code == "overall-not-met"
    assert "`set in 0 front to back`" in found.hints[0].message


RACK = """piece Slat rack
units mm
overall 600 wide, 300 deep, 400 high
timber ash
4 posts, upright, 40 x 40, at corners
2 rails, front to back, 60 x 20, tenon 25 long into posts, flush with top of posts
2 long rails, across, 60 x 20, tenon 25 long into posts, up 50
5 slats, across, flat, 40 x 18, onto rails, spread front to back, 8 between
slats onto rails: screws
glue up 2 sides: 2 posts, 1 rail
glue up stand: sides, long rails
"""


def test_a_gap_between_is_the_gap_of_the_row() -> None:
    between, gap = (model_of(changed(RACK, ("8 between", each))) for each in ("8 between", "gap 8"))
    # 270 of rail less 5 x 40 and 4 x 8 leave 38: 19 at each end, and 48 from slat to slat.
    first, *others = depths(between, "slat")
    assert [place - first for place in others] == [48, 96, 144, 192]
    assert depths(between, "slat") == depths(gap, "slat")


def test_a_gap_between_that_is_too_much_is_told() -> None:
    (found,) = errors(checked(changed(RACK, ("8 between", "30 between"))))
    assert found.code == "spread-too-full"
    assert found.figures["needed"] == 5 * 40 + 4 * 30
