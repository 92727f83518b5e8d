"""Rows with the gaps at their ends as written, lists of distances, set-ins of one side."""

from __future__ import annotations

from fractions import Fraction

import pytest
from tests.pieces.reading import changed, checked, errors, model_of

from dryfit.placing.model import Model

LADDER = """piece Ladder
units mm
overall 400 wide, 30 deep, 500 high
timber ash
2 stiles, upright, facing front, 50 x 30, at left and right
4 rungs, across, on edge, 50 x 20, into stiles, tenon 25, spread up and down
glue up ladder: stiles, rungs
"""
BARS = ", upright, facing front, 400 long, 50 x 20, between stiles, spread across, up 20"
SHELVES = """piece Shelves
units mm
overall 600 wide, 300 deep, 700 high
timber birch ply
2 sides, upright, facing side, 300 x 18, at left and right
3 shelves, flat, across, 300 x 18, between sides, housing 6, up 40, 250, 480
glue up case: sides, shelves
"""
CLEATS = "6 cleats, front to back, 30 x 16, on the inside of sides, up 100, 300: glue"
FRAME = """piece Bench
units mm
overall 1000 wide, 400 deep, 450 high
timber beech
4 legs, upright, 50 x 50, at corners, set in 30 at ends, 20 at front and back
1 top, flat, across, 25 thick, onto legs: screws
"""

Span = tuple[Fraction | int, Fraction | int]


def along(model: Model, part: str, axis: int) -> list[Span]:
    """The extent of each copy along an axis, in the order of the copies."""
    return [(copy.box.low[axis], copy.box.high[axis]) for copy in model.part(part).copies]


def lows(text: str, part: str, axis: int) -> list[Fraction]:
    """Where each copy begins on an axis."""
    return [copy.box.low[axis] for copy in model_of(text).part(part).copies]


@pytest.mark.parametrize(
    ("words", "at"),
    [
        # 500 - 4 x 50 = 300 in five gaps, in three, or in four of which the ends have half each.
        ("", [60, 170, 280, 390]),
        (", same gap at ends", [60, 170, 280, 390]),
        (", no gap at ends", [0, 150, 300, 450]),
        (", half a gap at ends", [37.5, 162.5, 287.5, 412.5]),
    ],
)
def test_the_gaps_at_the_ends_are_as_written(words: str, at: list[float]) -> None:
    text = changed(LADDER, ("spread up and down", f"spread up and down{words}"))
    assert lows(text, "rung", 2) == at


def test_the_size_is_worked_out_where_the_gaps_are_all_said() -> None:
    text = changed(
        LADDER,
        ("on edge, 50 x 20", "on edge, 20 thick"),
        ("spread up and down", "spread up and down, gap 20, no gap at ends"),
    )
    # (500 - 3 x 20) / 4
    assert along(model_of(text), "rung", 2)[:2] == [(0, 110), (130, 240)]


@pytest.mark.parametrize(("gap", "code"), [("20", "spread-not-filled"), ("150", "spread-too-full")])
def test_gaps_that_do_not_fill_the_row(gap: str, code: str) -> None:
    words = f"spread up and down, gap {gap}, no gap at ends"
    found = checked(changed(LADDER, ("spread up and down", words)))
    assert [each.code for each in errors(found)] == [code]
    figures = errors(found)[0].figures
    needed = 4 * 50 + 3 * int(gap)
    assert figures["there is"] == 500
    assert needed in figures.values()


def test_a_row_on_unequal_parts_keeps_to_what_they_share() -> None:
    text = """piece Rail fence
overall 400 wide, 45 deep, 500 high
timber ash
1 left stile, upright, facing front, 500 x 50 x 30, up 0, 0 from left
1 right stile, upright, facing front, 400 x 50 x 30, up 0, 0 from right
3 slats, across, 40 x 15, behind left stile and right stile, spread, no gap at ends: screws
"""
    model = model_of(text)
    assert along(model, "slat", 2) == [(0, 40), (180, 220), (360, 400)]
    assert any("have in common" in each.text for each in model.assumptions)


def test_the_gap_at_the_ends_is_an_open_question_over_parts_only() -> None:
    text = "the rungs have the same gap at the ends as between them"
    bars = (", across, on edge, 50 x 20, into stiles, tenon 25, spread up and down", BARS)
    between = checked(changed(LADDER, bars)).model
    assert between is not None
    assert text not in [each.text for each in between.assumptions]
    over = changed(LADDER, (", into stiles, tenon 25, spread", ", behind stiles, spread"))
    found = checked(changed(over, ("400 wide, 30 deep", "400 wide, 50 deep"))).model
    assert found is not None
    (instead,) = (each.instead for each in found.assumptions if each.text == text)
    assert instead is not None
    assert instead.endswith("spread up and down, same gap at ends")


def test_a_row_at_each_of_two_sides() -> None:
    text = """piece Rack
overall 400 wide, 300 deep, 500 high
timber birch ply
2 sides, upright, facing side, 300 x 18, at left and right
2 boards, flat, across, 300 x 18, between sides, housing 6, at top and bottom
6 runners, front to back, 40 x 16, on the inside of sides, spread, no gap at ends: glue
glue up rack: sides, boards, runners
"""
    # (500 - 3 x 40) / 2 = 190 between; the boards are in the way of the outer ones.
    found = checked(changed(text, ("no gap at ends", "same gap at ends")))
    assert not errors(found), [each.message for each in errors(found)]
    assert found.model is not None
    heights = [(95, 135), (230, 270), (365, 405)]
    assert along(found.model, "runner", 2) == heights * 2
    assert along(found.model, "runner", 0) == [(18, 34)] * 3 + [(366, 382)] * 3


def test_heights_are_those_of_copy_after_copy() -> None:
    model = model_of(SHELVES)
    assert along(model, "shelf", 2) == [(40, 58), (250, 268), (480, 498)]
    figures = [copy.name for copy in model.part("shelf").copies]
    assert figures == ["shelf 1", "shelf 2", "shelf 3"]


def test_distances_from_the_top_are_to_the_top_side() -> None:
    text = changed(SHELVES, ("up 40, 250, 480", "down 20, 220 and 450"))
    assert along(model_of(text), "shelf", 2) == [(662, 680), (462, 480), (232, 250)]


def test_a_list_that_does_not_fit_the_copies() -> None:
    (found,) = errors(checked(changed(SHELVES, ("3 shelves", "4 shelves"))))
    assert (found.code, found.hints[0].message) == (
        "list-length",
        "write 3 shelves, or a list of 4",
    )


def test_a_list_for_each_side_says_how_many_are_needed() -> None:
    text = changed(
        SHELVES,
        (
            "glue up case",
            f"{CLEATS}\nglue up case",
        ),
    )
    (found,) = errors(checked(text))
    assert (found.code, found.message) == (
        "list-length",
        "6 cleats, at 2 places, but the list has 2 entries",
    )
    assert found.hints[0].message == "write 4 cleats, or a list of 3"


def test_set_in_by_ends_and_by_front_and_back() -> None:
    model = model_of(FRAME)
    assert along(model, "leg", 0) == [(30, 80), (920, 970), (30, 80), (920, 970)]
    assert along(model, "leg", 1) == [(20, 70), (20, 70), (330, 380), (330, 380)]


def test_front_and_back_may_differ() -> None:
    model = model_of(changed(FRAME, ("20 at front and back", "20 at front, 45 at back")))
    assert along(model, "leg", 1) == [(20, 70), (20, 70), (305, 355), (305, 355)]


def test_ends_of_what_lies_are_its_own() -> None:
    text = changed(FRAME, ("25 thick, onto", "380 x 25, set in 10 at ends, 5 at front, onto"))
    found = checked(text).model
    assert found is not None
    assert along(found, "top", 0) == [(10, 990)]
    assert along(found, "top", 1) == [(5, 385)]


def test_two_rails_at_one_distance_are_in_one_place() -> None:
    text = """piece Plinth
overall 600 wide, 300 deep, 80 high
timber oak
2 ends, front to back, on edge, 300 x 80 x 20, at left and right
2 toes, across, on edge, 560 x 80 x 20, up 0, 40 from front
"""
    (found,) = errors(checked(text))
    assert found.code == "copies-in-one-place"
    assert "`at front and back`" in found.hints[0].message
    (found,) = errors(checked(changed(text, ("560 x 80 x 20,", "80 x 20, between ends,"))))
    assert found.code == "copies-and-gaps"
    assert "`at front and back`" in found.hints[0].message


def test_what_lies_below_the_floor_is_an_error_with_the_amount() -> None:
    text = """piece Wall shelf
overall 500 wide, 200 deep, 200 high
timber oak
1 back, across, on edge, 500 x 200 x 18, 0 from back, up 0
1 shelf, flat, across, 182 x 20, on the front of back, up 21: screws
2 brackets, upright, facing side, 60 long, 100 x 18, at left and right,
  under shelf, against back: screws
"""
    (found,) = errors(checked(text))
    assert found.code == "overall-not-met"
    assert found.message.endswith("the brackets stick out by 39 below the floor")
    assert found.hints[0].message == (
        "write 239 high, or move the brackets 39 up, or make them `21 long`"
    )


def test_the_figures_say_to_which_side_a_height_is_measured() -> None:
    text = """piece Trestle
overall 600 wide, 300 deep, 200 high
timber oak
1 board, flat, across, 600 x 300 x 15, up 185
2 feet, front to back, on edge, 300 long, 20 thick, under board, up 0, at left and right: screws
"""
    foot = model_of(text).figures["foot.width"]
    assert foot.value == 185
    assert [term.label for term in foot.terms] == ["underside of board above the floor"]
    assert "board: its underside stands 185 above the floor" in foot.words


def divided(shelves: str) -> str:
    """A case 800 wide inside sides of 18 with a divider in its middle, from 391 to 409."""
    return f"""piece Divided case
units mm
overall 800 wide, 300 deep, 700 high
timber birch ply
2 sides, upright, facing side, 300 x 18, at left and right
2 boards, flat, across, 300 x 18, between sides, housing 6, at bottom and top
1 divider, upright, facing side, 300 x 18, into boards, housing 6
{shelves}, across, flat, 280 x 18, into sides and divider, housing 6
glue up case: sides, boards, divider, shelves
"""


@pytest.mark.parametrize(
    ("line", "names", "lows"),
    [
        ("2 shelves, up 300", ["left shelf", "right shelf"], [300, 300]),
        ("1 shelf, up 300, at left", ["left shelf"], [300]),
        (
            "4 shelves, up 200, 400",
            ["left shelf 1", "left shelf 2", "right shelf 1", "right shelf 2"],
            [200, 400, 200, 400],
        ),
        # From the floor to the top: (700 - 2 * 18) / 3 below, between and above them.
        (
            "4 shelves, spread up and down",
            ["left shelf 1", "left shelf 2", "right shelf 1", "right shelf 2"],
            [Fraction(664, 3), 18 + 2 * Fraction(664, 3)] * 2,
        ),
    ],
)
def test_shelves_lie_at_both_sides_of_a_divider(
    line: str, names: list[str], lows: list[Fraction]
) -> None:
    shelf = model_of(divided(line)).part("shelf")
    assert [copy.name for copy in shelf.copies] == names
    assert [copy.box.low[2] for copy in shelf.copies] == lows
    left, right = (Fraction(12), Fraction(397)), (Fraction(403), Fraction(788))
    for copy in shelf.copies:
        reach = (copy.box.low[0], copy.box.high[0])
        assert reach == (right if copy.name.startswith("right") else left)


def test_three_shelves_cannot_lie_at_both_sides_of_a_divider() -> None:
    assert [each.code for each in errors(checked(divided("3 shelves, up 300")))] == [
        "copies-and-gaps"
    ]
