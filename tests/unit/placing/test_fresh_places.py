"""A place word is a wish that is kept: one copy at the back stands at the back."""

from __future__ import annotations

import pytest
from tests.pieces.reading import changed, checked, errors, model_of

from dryfit.placing.model import Model

BENCH = """piece Boot bench
units mm
overall 900 wide, 350 deep, 450 high
timber beech
2 ends, upright, 320 x 25, at left and right, set in 60 across, 10 from back, facing side
1 seat, flat, 25 thick, glued from 3
1 shelf, flat, 20 thick, 320 wide, between ends, up 120, housing 8, 10 from back
1 stretcher, across, on edge, 90 x 25, between ends, up 335, at back, screws
seat onto ends: screws
glue up body: ends, shelf
"""


def depths(model: Model, part: str) -> list[tuple[int, int]]:
    return [(int(c.box.low[1]), int(c.box.high[1])) for c in model.part(part).copies]


def test_a_single_copy_at_the_back_is_flush_with_the_back_of_what_it_stands_between() -> None:
    model = model_of(BENCH)
    assert depths(model, "end")[0] == (20, 340)
    assert depths(model, "stretcher") == [(315, 340)]
    assumption = next(a for a in model.assumptions if "flush with the back" in a.text)
    assert assumption.text == "the stretcher is flush with the back of the ends"
    assert assumption.instead is not None
    assert assumption.instead.endswith("at back, screws, flush with back of ends")


def test_the_offered_line_says_the_same() -> None:
    model = model_of(
        changed(BENCH, ("at back, screws", "at back, screws, flush with back of ends"))
    )
    assert depths(model, "stretcher") == [(315, 340)]


def test_a_name_that_says_the_place_is_kept_too() -> None:
    text = changed(BENCH, ("1 stretcher", "1 back rail"), (", at back, screws", ", screws"))
    assert depths(model_of(text), "back rail") == [(315, 340)]


def test_one_at_the_front_and_one_at_the_back() -> None:
    text = changed(
        BENCH, ("1 stretcher", "2 stretchers"), ("at back, screws", "at front and back, screws")
    )
    model = model_of(text)
    assert sorted(depths(model, "stretcher")) == [(20, 45), (315, 340)]


@pytest.mark.parametrize(
    ("words", "place"), [("set back 5", (310, 335)), ("12 from back", (313, 338))]
)
def test_what_the_line_says_more_exactly_wins(words: str, place: tuple[int, int]) -> None:
    model = model_of(changed(BENCH, ("at back, screws", f"at back, screws, {words}")))
    assert depths(model, "stretcher") == [place]


def test_what_lies_on_something_reaches_to_that_side_of_the_piece() -> None:
    text = changed(
        BENCH,
        ("overall 900 wide, 350 deep, 450 high", "overall 900 wide, 350 deep, 490 high"),
        (
            "1 seat, flat, 25 thick, glued from 3",
            (
                "1 seat, flat, 350 wide, 25 thick, glued from 3, up 425\n"
                "1 lip, across, on edge, 40 x 20, at back"
            ),
        ),
        ("seat onto ends: screws", "seat onto ends: screws\nlip onto seat: screws"),
        ("2 ends, upright,", "2 ends, upright, 425 long,"),
    )
    found = checked(text)
    assert not errors(found), [each.message for each in errors(found)]
    assert found.model is not None
    assert depths(found.model, "lip") == [(330, 350)]


CASE_OF_RAILS = """piece Case on a board
overall 460 wide, 360 deep, 220 high
timber oak
1 bottom, across, flat, 360 x 20, up 0
2 sides, upright, facing side, 300 x 20, at left and right, onto bottom
1 shelf, across, flat, 300 x 20, housing 7 into sides, down 0
1 lower rail, across, flat, 60 x 20, housing 7 into sides, at front, up 60
1 upper rail, across, flat, 60 x 20, housing 7 into sides, at front, under shelf
glue up case: bottom, sides, shelf, lower rail, upper rail
"""


def test_a_rail_under_a_board_begins_where_the_sides_begin_as_any_other_rail() -> None:
    # The sides stand midway on the bottom: (360 - 300) / 2 = 30 from the front, and so both rails.
    model = model_of(CASE_OF_RAILS)
    for rail in ("lower rail", "upper rail"):
        (copy,) = model.part(rail).copies
        assert copy.box.low[1] == 30
        assert copy.box.high[1] == 90
