"""What the second pair of fresh eyes wrote, and the line that is offered for it."""

from __future__ import annotations

import pytest
from tests.pieces.reading import checked, errors

HEAD = """piece Case
units mm
overall 640 wide, 165 deep, 720 high
timber cherry
2 sides, upright, 165 x 20, at left and right
1 rail, across, 70 x 18, tenon 14 long 6 thick into sides, down 60
1 low rail, across, 70 x 18, tenon 14 long 6 thick into sides, up 60
"""


@pytest.mark.parametrize(
    ("written", "offered"),
    [
        (
            "1 panel, facing front, 8 thick, inside sides, rail and low rail, groove 9",
            "1 panel, facing front, 8 thick, inside sides and rail and low rail, groove 9",
        ),
        (
            "1 panel, facing front, 8 thick, inside sides, rail, low rail, groove 9",
            "1 panel, facing front, 8 thick, inside sides and rail and low rail, groove 9",
        ),
        (
            "1 post, upright, 50 x 18, tenon 16 long 8 thick low rail",
            "1 post, upright, 50 x 18, tenon 16 long 8 thick into low rail",
        ),
        (
            "3 shelves, across, 140 x 18, housing 7 into sides, spread up",
            "3 shelves, across, 140 x 18, housing 7 into sides, spread up and down",
        ),
    ],
)
def test_the_line_that_was_meant_is_offered(written: str, offered: str) -> None:
    (found,) = errors(checked(f"{HEAD}{written}\n"))
    assert [hint.corrected_line for hint in found.hints] == [offered]


def test_a_size_of_a_part_is_still_asked_for_in_a_size() -> None:
    found = errors(checked(f"{HEAD}1 shelf, across, sides x 18, housing 7 into sides\n"))
    assert "part-as-measure" in [each.code for each in found]


@pytest.mark.parametrize(
    ("written", "words"),
    [
        ("1 shelf, across, 140 x 18, housing 7 into sides, up -20", "cannot be less than nothing"),
        ("3 shelves, across, 140 x 18, housing 7 into sides, at 30, 270 and 600", "`at` wants a"),
        ("glue up rail, cure 4 h", "`rail` is one part"),
        ("1 top, flat, 35 thick, glued from 4, cure 4 h", "in the line of a glue-up only"),
    ],
)
def test_what_cannot_be_written_is_said_plainly(written: str, words: str) -> None:
    (found,) = errors(checked(f"{HEAD}{written}\n"))
    assert words in found.message


def test_a_glue_up_named_as_a_panel_is_told_what_glues_a_panel() -> None:
    (found,) = errors(checked(f"{HEAD}glue up rail: sides\n"))
    assert found.code == "name-twice"
    assert "`glued from`" in found.hints[0].message


def test_half_a_name_behind_a_place_is_told_whole_with_the_like_of_it() -> None:
    head = HEAD.replace("1 rail,", "1 batten,")
    (found,) = errors(checked(f"{head}glue up case: sides, back rail\n"))
    assert found.message == "no part is called `back rail`"
    assert found.span is not None
    assert found.span.text() == "back rail"
    assert found.hints[0].corrected_line == "glue up case: sides, low rail"


@pytest.mark.parametrize(
    ("written", "offered"),
    [
        ("1 post, upright, 40 x 18, up to the top", "1 post, upright, 40 x 18, down 0"),
        ("1 post, upright, 40 x 18, up to the rail", "1 post, upright, 40 x 18, under rail"),
        ("1 door, upright, made up of 4 boards, down 0", "1 door, upright, glued from 4, down 0"),
        ("1 door, upright, built from 5 staves", "1 door, upright, glued from 5"),
        ("timber cherry, walnut", "timber cherry"),
    ],
)
def test_what_the_language_says_in_other_words_is_offered_in_them(
    written: str, offered: str
) -> None:
    told = next(each for each in checked(f"{HEAD}{written}\n").findings if each.hints)
    assert told.hints[0].corrected_line == offered


def test_a_second_wood_goes_into_the_lines_of_its_parts() -> None:
    told = errors(checked(f"{HEAD}timber cherry, of walnut\n"))[0]
    assert "`of walnut` in the line of each part" in told.hints[1].message


@pytest.mark.parametrize(
    ("done", "offered"),
    [
        ("2 sides", "`2 of side / thickness`"),
        ("2 of sides", "`2 of side / thickness`"),
        ("sides", "`side / thickness`"),
    ],
)
def test_the_operation_that_is_offered_is_one_that_can_be_written(done: str, offered: str) -> None:
    told = next(
        each
        for each in checked(f"{HEAD}done: {done}\n").findings
        if each.code == "done-without-operation"
    )
    assert told.hints[0].message.endswith(offered)
    again = checked(f"{HEAD}done: {offered.strip('`')}\n")
    assert not [each for each in again.findings if each.code.startswith("done-")]
