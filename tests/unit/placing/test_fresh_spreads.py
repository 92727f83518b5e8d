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
