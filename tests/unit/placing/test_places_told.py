"""Findings about places say where, by how much, and which line takes the room."""

from __future__ import annotations

import pytest
from tests.pieces.reading import changed, checked

from dryfit.diagnostics import Diagnostic

TABLE = """piece Table
overall 600 wide, 400 deep, 500 high
timber oak
4 legs, upright, 40 x 40, at corners, set in 20
2 aprons, across, 60 x 20, tenon 20 long 6 thick into legs, up 300
2 end aprons, front to back, 60 x 20, tenon 20 long 6 thick into legs, up 300
1 shelf, flat, 20 thick, 200 long, 150 wide, 100 from left, 110 from front, up 200
1 strut, across, 300 long, 20 x 20, 150 from left, 115 from front, up 210
glue up base: legs, aprons, end aprons
"""

LIP = """piece Shelf with a lip
units mm
overall 800 wide, 200 deep, 500 high
timber oak
1 shelf, across, flat, 800 x 200 x 20 mm, down 0
1 lip, across, 20 mm thick
lip under shelf: glue
glue up board: shelf, lip
"""


def found_in(text: str, code: str) -> Diagnostic:
    return next(each for each in checked(text).findings if each.code == code)


def test_an_overlap_says_where_and_by_how_much() -> None:
    # The shelf is 100 to 300 from left, 110 to 260 from front and 200 to 220 high; the strut 150
    # to 450, 115 to 135 and 210 to 230: 150 to 300, 115 to 135, and 10 in height are in both.
    assert found_in(TABLE, "overlap").message == (
        "shelf and strut take up the same space, and no joint says how: 10 up and down, "
        "at 150 to 300 from left, 115 to 135 from front, up 210 to 220"
    )


def test_a_joint_without_contact_says_the_gap_and_which_way() -> None:
    # The strut is 150 to 450 from left and ends 230 up; the left end apron stands in the middle of
    # its legs, 30 to 50 from left, and begins 300 up.  The right one is as far away.
    text = changed(TABLE, ("glue up", "strut crossing end aprons: half lap\nglue up"))
    assert found_in(text, "joint-without-contact").message == (
        "strut does not meet the end aprons, so there is no joint to cut: "
        "strut and left end apron stand apart by 100 from side to side and 70 up and down"
    )


def test_a_frame_member_that_a_panel_does_not_reach_is_told() -> None:
    # The bottom is as wide as the kick below it, 18 from front; the back ends 10 from the back.
    text = """piece Case
overall 600 wide, 340 deep, 760 high
timber birch ply
2 sides, upright, facing side, 340 wide, 18 thick, at left and right
1 top, across, flat, 18 thick, between sides, housing 6, flush with top of sides
1 bottom, across, flat, 18 thick, 18 wide, between sides, housing 6, up 60, 30 from front
1 back, facing front, grain upright, 6 thick, inside sides and top and bottom, groove 6, {}
glue up case: sides, top, bottom, back
"""
    told = found_in(text.format("10 from back"), "joint-without-contact")
    # 340 - 10 - 6 - 30 - 18 = 276.
    assert told.message == (
        "back does not meet the bottom, so there is no joint to cut: "
        "back and bottom stand apart by 276 from front to back"
    )
    codes = {each.code for each in checked(text.format("36 from front")).findings}
    assert "joint-without-contact" not in codes


def case_with_a_shelf(wide: int) -> str:
    """A case 340 deep with a back in grooves, and a shelf so wide that begins at its front."""
    return f"""piece Case
overall 600 wide, 340 deep, 760 high
timber birch ply
2 sides, upright, facing side, 340 wide, 18 thick, at left and right
1 top, across, flat, 18 thick, between sides, housing 6, flush with top of sides
1 bottom, across, flat, 18 thick, between sides, housing 6, up 0
1 shelf, across, flat, 18 thick, {wide} wide, between sides, housing 6, up 400, flush front
1 back, facing front, grain upright, 6 thick, inside sides and top and bottom, groove 6
glue up case: sides, top, bottom, shelf, back
"""


def test_a_panel_in_the_way_of_a_shelf_is_moved_and_not_lapped() -> None:
    text = case_with_a_shelf(320)
    assert "overlap" not in {each.code for each in checked(text).findings}
    # A back stands at the back without a word; a board of any other name lies in the middle.
    panel = text.replace("1 back", "1 wall").replace("shelf, back", "shelf, wall")
    assert found_in(panel, "overlap").hints[0].message == (
        "write where the wall lies, such as `10 from back` in its line, or move the shelf"
    )
    mended = changed(panel, ("groove 6\n", "groove 6, 10 from back\n"))
    assert "overlap" not in {each.code for each in checked(mended).findings}


def test_a_shelf_that_reaches_into_the_back_ends_before_it() -> None:
    # 335 - (340 - 10 - 6) = 11.
    text = case_with_a_shelf(335)
    assert found_in(text, "overlap").hints[0].message == (
        "let the shelf end 11 further to the front, before the back, or write where the back lies"
    )


def test_what_alone_takes_all_the_room_is_pointed_at() -> None:
    # Legs that stand 400 from both sides of 600 pass each other, whatever their thickness.
    text = changed(TABLE, ("set in 20", "set in 400"))
    told = found_in(text, "no-room-between")
    assert told.message.endswith("there is no room, -280")
    assert told.span is not None
    assert (told.span.line, told.span.text()) == (4, "400")
    assert [note.span.line for note in told.notes if note.span and "between" in note.message] == [5]
    assert "size-not-positive" not in {each.code for each in checked(text).findings}


def test_where_several_take_the_room_the_part_between_is_pointed_at_and_all_are_told() -> None:
    # 2 x 20 + 2 x 40 of 100 wide: neither alone takes it.
    told = found_in(changed(TABLE, ("600 wide", "100 wide")), "no-room-between")
    assert told.span is not None
    assert told.span.line == 5
    assert {note.span.line for note in told.notes if note.span} >= {2, 4, 5}


@pytest.mark.parametrize(
    ("text", "phrase"),
    [
        (LIP, "`80 wide`"),
        # Not more than half of a piece 60 high, and in the unit of the notes.
        (changed(LIP, ("500 high", "60 high")), "`30 wide`"),
        (
            changed(LIP, ("units mm", "units inches"), ("800", "32"), ("200", "8"), ("500", "20")),
            '`3" wide`',
        ),
    ],
)
def test_the_size_that_is_offered_goes_into_the_piece(text: str, phrase: str) -> None:
    assert phrase in found_in(text, "size-unknown").hints[0].message


def test_a_drawer_without_a_height_is_asked_for_it_as_a_box() -> None:
    """A pattern is wide, deep and high, whatever way its parts lie."""
    text = """piece Case
overall 500 wide, 350 deep, 300 high
timber oak
2 sides, upright, facing side, 350 x 18, at left and right
1 bottom, across, flat, 350 x 18, into sides, housing 6, flush bottom
1 drawer, as dovetailed drawer, between sides, gap 1, 300 deep, 0 from front
glue up case: sides, bottom
"""
    told = found_in(text, "size-unknown")
    assert told.message == "drawer: nothing says what height it has"
    assert told.hints[0].message == "add its height, such as `110 high`"
