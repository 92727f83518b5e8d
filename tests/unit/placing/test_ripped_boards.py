"""Boards that do not fill their row, worked by hand: the last, or both outer ones, are ripped."""

from fractions import Fraction

import pytest
from tests.pieces.reading import changed, checked, codes, model_of, text_of
from tests.unit.rehearsal.played import played

LAST = text_of("ripped_boards")
SAID = "the last ripped to fit"
OUTER = changed(LAST, (SAID, "both outer boards ripped alike"))


def test_the_last_board_is_ripped_to_what_is_left() -> None:
    # TRADE B10: of each board 84 - 7 = 77 is seen.  Four of them reach over 4 x 77 = 308, and
    # 358 - 308 = 50 are left for the fifth.
    model = model_of(LAST)
    board, last = model.part("floor board"), model.part("last floor board")
    assert [len(part.copies) for part in (board, last)] == [4, 1]
    assert [part.width for part in (board, last)] == [84, 50]
    lows = [copy.box.low[1] for copy in (*board.copies, *last.copies)]
    assert lows == [0, 77, 154, 231, 308]
    assert last.copies[0].box.high[1] == 358


def test_the_ripped_board_keeps_its_groove_and_the_one_before_it_its_tongue() -> None:
    model = model_of(LAST)
    last = model.part("last floor board")
    assert {each.role for each in last.features if each.role.startswith("tongue")} == {
        "tongue groove"
    }
    joints = [each for each in model.joints if each.kind == "tongue and groove"]
    assert [(each.guest[-1], each.host[-1]) for each in joints] == [
        ("1", "2"),
        ("2", "3"),
        ("3", "4"),
        ("4", "5"),
    ]


def test_both_outer_boards_are_ripped_alike() -> None:
    # 5 x 84 - 4 x 7 = 392, 34 more than 358: each outer board loses 17.
    model = model_of(OUTER)
    board, outer = model.part("floor board"), model.part("outer floor board")
    assert [len(part.copies) for part in (board, outer)] == [3, 2]
    assert [part.width for part in (board, outer)] == [84, 67]
    assert [copy.box.low[1] for copy in outer.copies] == [0, Fraction(291)]
    assert max(copy.box.high[1] for copy in outer.copies) == 358


@pytest.mark.parametrize("text", [LAST, OUTER], ids=["last", "outer"])
def test_the_plan_of_ripped_boards_passes_its_rehearsal(text: str) -> None:
    assert played(text).said() == ""


def test_ship_lapped_boards_are_ripped_too() -> None:
    # Laps of 9 less a gap of 1: 5 x 84 - 4 x 8 = 388, so the last is 84 - 30 = 54 wide.
    joint = "tongue and groove 6 thick 8 long, gap 1"
    model = model_of(changed(LAST, (joint, "ship lap 9, gap 1")))
    assert model.part("last floor board").width == 54


def test_which_end_of_the_row_is_the_last_is_listed() -> None:
    texts = [each.text for each in model_of(LAST).assumptions]
    assert any("ripped to 50, is at the back" in text for text in texts)


def test_a_rest_of_less_than_a_third_is_warned_of() -> None:
    # TRADE B10.  5 x 90 - 4 x 7 = 422, 64 more than 358: 26 of 90 are left.
    found = checked(changed(LAST, ("600 x 84 x 18", "600 x 90 x 18")))
    (told,) = (each for each in found.findings if each.code == "narrow-ripped-board")
    assert "left 26 wide, less than a third of 90" in told.message
    assert "both outer boards ripped alike" in str(told.hints[0])
    outer = checked(changed(OUTER, ("600 x 84 x 18", "600 x 90 x 18")))
    assert "narrow-ripped-board" not in codes(outer)


@pytest.mark.parametrize("width", ["60", "91.5", "95"])
def test_too_few_boards_or_nothing_left_is_an_error(width: str) -> None:
    # 5 x 60 - 28 = 272 of 358; of 91.5 the fifth keeps 20 wide or less than two tongues; of 95, 6.
    found = checked(changed(LAST, ("600 x 84 x 18", f"600 x {width} x 18")))
    wanted = "narrow-ripped-board" if width == "91.5" else "boards-do-not-fill"
    assert wanted in codes(found)


def test_boards_that_fill_their_row_need_no_ripping() -> None:
    # 5 W - 28 = 358: W = 77.2, and no part of its own is made.
    model = model_of(changed(LAST, ("600 x 84 x 18", "600 x 77.2 x 18")))
    assert [part.name for part in model.parts] == ["bearer", "floor board"]


def test_what_has_no_width_or_no_row_leaves_nothing_to_rip() -> None:
    found = checked(changed(LAST, ("600 x 84 x 18", "600 long 18 thick")))
    assert "ripped-of-what" in codes(found)
    alone = checked(changed(LAST, (", tongue and groove 6 thick 8 long, gap 1", ", spread")))
    assert "ripped-of-what" in codes(alone)


def test_the_words_stand_in_the_remedy_of_boards_that_do_not_fill() -> None:
    found = checked(changed(LAST, (f", {SAID}", "")))
    (told,) = (each for each in found.findings if each.code == "boards-do-not-fill")
    assert SAID in str(told.hints)
