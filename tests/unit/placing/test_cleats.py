"""Cleats and battens: where they lie, how long they are, how their screws let wood move (B18)."""

from __future__ import annotations

from fractions import Fraction

import pytest
from tests.pieces.reading import changed, checked, codes, model_of, model_of_piece, text_of

from dryfit.joinery.cleats import longest_cleat
from dryfit.kinds.part_words import PART_WORDS, parts_explained
from dryfit.placing.model import Part
from dryfit.placing.screw_slots import screw_slots
from dryfit.wood import moving

LID = """piece Ledged lid
units mm
overall 600 wide, 400 deep, 40 high
timber red oak
1 lid, across, flat, 600 x 400 x 20, glued from 4, down 0
2 battens, front to back, flat, 60 x 20, at left and right, set in 60 across, under lid
battens under lid: screws
"""


def part(text: str, name: str) -> Part:
    return model_of(text).part(name)


def test_a_batten_ends_short_of_the_board_by_its_movement_and_10() -> None:
    # 400 x 0.00369 x 4 % = 5.9 (red oak, Wood Handbook, table 13-5, as in `wood`): at most
    # 400 - 5.9 - 10 = 384.1, which is 8 at each end on a ruler of half millimetres: 384.
    assert Fraction(3840, 10) < longest_cleat(Fraction(400), moving("red oak")) < Fraction(3842, 10)
    batten = part(LID, "batten")
    assert batten.length == 384
    (said,) = (each for each in model_of(LID).assumptions if "short of its edges" in each.text)
    assert "384 long" in (said.instead or "")


def test_its_middle_screw_holds_and_the_others_stand_in_slots() -> None:
    # Three screws on 384, the outer ones 128 from the middle one: 2 x 128 x 0.00369 x 4 % = 3.78,
    # with the hole, 4.5, and 1 mm 9.3, which is 9.5 (TRADE B18: d + 2 r C dMC + 1).
    (slots,) = screw_slots(model_of(LID).parts, model_of(LID).joints)
    assert (slots.mover, slots.passed, slots.slot) == ("lid", "batten", Fraction(19, 2))
    holes = {each.id: each for each in part(LID, "batten").features if each.role == "screw hole"}
    (held,) = set(holes) - set(slots.holes)
    assert sum(holes[held].along) / 2 == 192


@pytest.mark.parametrize(("long", "told"), [(384, False), (390, True), (400, True)])
def test_a_batten_that_will_stick_out_is_told(long: int, told: bool) -> None:
    written = LID.replace("flat, 60 x 20", f"flat, {long} x 60 x 20")
    assert ("cleat-too-long" in codes(checked(written))) == told


def test_as_long_as_it_may_be_at_most_is_not_too_long() -> None:
    # 416 x 0.00369 x 4 % = 6.14: 399.86 at most, which is not 400 on a ruler of half millimetres.
    wide = changed(LID, ("400 deep", "416 deep"), ("600 x 400", "600 x 416"))
    written = changed(wide, ("flat, 60 x 20", "flat, 416 x 60 x 20"))
    (told,) = (each for each in checked(written).findings if each.code == "cleat-too-long")
    assert "make it 399.5 long or less" in str(told.hints)
    mended = changed(wide, ("flat, 60 x 20", "flat, 399.5 x 60 x 20"))
    assert "cleat-too-long" not in codes(checked(mended))


def test_cleats_lie_on_the_inner_edges_of_a_frame_between_its_stiles() -> None:
    # Between stiles 60 wide in 600: 480; the upper one hangs under its rail, 500 - 60 up.
    model = model_of_piece("framed_panel")
    assert model.part("cleat").length == 480
    assert model.copy("top cleat").box.high[2] == 440
    assert model.copy("bottom cleat").box.low[2] == 60


def test_cleats_inside_a_chest_run_between_its_ends() -> None:
    # 700 less two ends of 18, which are set in 20 each: 624.
    model = model_of_piece("ledged_chest")
    assert model.part("cleat").length == 624
    assert model.copy("front cleat").box.low[1] == 18


def test_glue_all_along_a_cleat_across_the_grain_is_an_error() -> None:
    all_along = changed(text_of("framed_panel"), ("glue the middle 60", "glued"))
    assert "glued-across-grain" in codes(checked(all_along))


def test_each_word_has_a_sentence_that_begins_with_it() -> None:
    for word, sentence in PART_WORDS.items():
        assert sentence.lower().startswith(word)
    ((word, says),) = parts_explained(["lid batten", "board"])
    assert word == "Batten"
    assert says.startswith("A strip across boards")
