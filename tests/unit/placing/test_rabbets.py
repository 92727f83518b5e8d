"""A box with rabbeted corners worked by hand: TRADE B8 gives 388 for 400 over all, 18 thick."""

from fractions import Fraction

import pytest
from tests.pieces.reading import changed, checked, codes, mm, model_of, text_of
from tests.unit.rehearsal.played import Played, played

from dryfit.placing.model import Model
from dryfit.rehearsal.fault import Reason

BOX = text_of("rabbeted_box")


@pytest.fixture(scope="module")
def box() -> Model:
    return model_of(BOX)


def test_the_mate_is_as_long_as_the_outside_less_both_lips(box: Model) -> None:
    # TRADE B8: outside 400, T 18, d 12: lip 6, mate 400 - 2 x 6 = 388; inside 364.
    top = box.part("top")
    assert (top.length, top.shoulder_length) == mm(388, 364)
    copy = box.copy("top").box
    assert copy.extent(0) == 388
    left, right = (box.copy(f"{side} side").box for side in ("left", "right"))
    assert right.low[0] - left.high[0] == 364
    # The rabbeted part keeps its outside length.
    assert box.part("side").length == 500


def test_the_rabbet_is_as_wide_as_its_mate_is_thick(box: Model) -> None:
    cuts = {
        each.mate: (each.kind, each.surface, *each.along, *each.across, each.depth)
        for each in box.part("side").features
        if each.role == "rabbet"
    }
    assert cuts == {
        "top": ("rabbet", "B", *mm(482, 500, 0, 150, 12)),
        "bottom": ("rabbet", "B", *mm(0, 15, 0, 150, 10)),
    }


def test_two_thirds_of_the_wood_is_the_usual_depth_and_is_listed() -> None:
    # TRADE B8: d = T/2 to 2/3; 2/3 of 18 is 12.
    box = model_of(changed(BOX, ("sides: rebate 10", "sides: rebate")))
    assert box.part("bottom").length == 388
    (told,) = (each for each in box.assumptions if "rabbets" in each.text)
    assert told.text == "the rabbets for bottom are 12 deep"
    assert told.instead is not None
    assert "rebate 12 deep" in told.instead
    assert codes(checked(changed(BOX, ("sides: rebate 10", "sides: rebate 12 deep")))) == []


def test_in_inches_the_depth_is_one_of_the_ruler() -> None:
    # 2/3 of 3/4 in is 1/2 in.
    notes = """
piece Box
units inches to 1/16
overall 16 wide, 6 deep, 20 high
timber oak
2 sides, upright, facing side, 6 x 3/4, at left and right
1 top, flat, 6 x 3/4, rabbet into sides
glue up box: sides, top
"""
    assert model_of(notes).part("top").length == Fraction(254, 10) * Fraction(31, 2)


@pytest.mark.parametrize(
    ("old", "new", "code"),
    [
        ("rabbet 12 into sides", "rabbet 12 into sides, up 300", "rabbet-does-not-fit"),
        ("rabbet 12 into sides", "rabbet 18 into sides", "rabbet-does-not-fit"),
        ("rabbet 12 into sides", "rabbet 14 into sides", "rabbet-too-deep"),
    ],
)
def test_what_is_no_rabbet_is_told(old: str, new: str, code: str) -> None:
    assert code in codes(checked(changed(BOX, (old, new))))


def test_a_lone_rabbet_stays_what_it_was() -> None:
    notes = changed(
        BOX, ("glue up box", "rabbet in sides: back inner edge, 6 wide, 8 deep\nglue up box")
    )
    lone = [each for each in model_of(notes).part("side").features if each.mate is None]
    assert [each.role for each in lone] == ["rabbet"]


@pytest.fixture(scope="module")
def plan() -> Played:
    return played(BOX)


def test_the_plan_passes_its_rehearsal(plan: Played) -> None:
    assert plan.said() == ""


def test_a_box_whose_rabbet_is_not_cut_does_not_close(plan: Played) -> None:
    assert Reason.FIT in plan.idle("side / rabbet for top").reasons()


def test_the_rabbet_is_cut_against_a_stop_and_tried_with_its_mate(plan: Played) -> None:
    rows = [op for step in plan.plan.steps for op in step.operations]
    (cut,) = (each for each in rows if each.id == "side / rabbet for top")
    assert cut.station == "table saw"
    assert cut.tests
    assert cut.check is not None
    assert "flush with the end" in cut.check
    (glue,) = (each for each in rows if each.kind == "glue up")
    assert any("end grain" in str(detail) for detail in glue.details)
