"""A plank lid with board ends worked by hand: tongue, tenons that slide, and slotted peg holes."""

from dataclasses import replace
from fractions import Fraction

import pytest
from tests.pieces.reading import changed, checked, codes, mm, model_of, text_of
from tests.unit.rehearsal.played import Played, played

from dryfit.joinery.board_end import plays
from dryfit.placing.model import Model, Part
from dryfit.rehearsal.fault import Reason
from dryfit.wood import moving

LID = text_of("board_end_lid")
LINE = "tongue 15 long, 3 tenons 45 long 8 thick 40 wide, glue the middle 60, pegs 10"


@pytest.fixture(scope="module")
def lid() -> Model:
    return model_of(LID)


def cuts(part: Part, role: str) -> list[tuple[str, tuple[Fraction, ...]]]:
    """Surface, then along, across and depth of the cuts of a role, in mm."""
    return sorted(
        (each.surface, (*each.along, *each.across, each.depth))
        for each in part.features
        if each.role == role
    )


def test_the_plank_grows_by_its_tenons_at_both_ends(lid: Model) -> None:
    # TRADE B25: 760 over all less two board ends of 70 is 620 between the shoulders, and 45 go
    # into each of them.
    top, end = lid.part("top"), lid.part("board end")
    assert (top.length, top.shoulder_length, end.length) == mm(710, 620, 360)
    left, right = (copy.box for copy in end.copies)
    assert right.low[0] - left.high[0] == top.shoulder_length
    assert top.copies[0].box.extent(0) == top.length


def test_a_tongue_of_15_stays_over_the_whole_width(lid: Model) -> None:
    # Three tenons of 40 in 360: 240 / 4 = 60 between and beside them.  Beyond the tongue of 15
    # there are 30 of tenon; the groove is 15 deep and 1 for glue, from end to end.
    top, end = lid.part("top"), lid.part("board end")
    assert {depth for _, (*_, depth) in cuts(top, "tenon gap")} == {30}
    shoulders = cuts(top, "tenon shoulder")
    assert {(along[1] - along[0], along[4]) for _, along in shoulders} == {
        (Fraction(30), Fraction(60))
    }
    assert cuts(end, "tongue groove") == [("E2", mm(0, 360, 7, 15, 16))]


def test_outer_mortises_and_peg_holes_are_longer_by_the_movement(lid: Model) -> None:
    # TRADE G5 and table 13-5 of the Wood Handbook (read): the outer tenons stand 100 from the
    # middle; white oak moves 100 x 0.00365 x 4 = 1.46 each way, rounded up to 1.5.
    mortises = cuts(lid.part("board end"), "mortise")
    half = Fraction(3, 2)
    assert [(start, stop) for _, (start, stop, *_) in mortises] == [
        (60 - half, 100 + half),
        (160, 200),
        (260 - half, 300 + half),
    ]
    slots = {far - near for _, (_, _, near, far, _) in cuts(lid.part("top"), "peg slot")}
    # A slot is the peg and twice the movement: 10 + 2 x 1.5.
    assert slots == {Fraction(13)}
    assert len(cuts(lid.part("top"), "peg hole")) == 2
    assert len(cuts(lid.part("board end"), "peg hole")) == 3


def test_glue_holds_the_middle_alone(lid: Model) -> None:
    ends = [each for each in lid.joints if each.kind == "mortise and tenon"]
    assert len(ends) == 2
    for joint in ends:
        assert [(box.low[1], box.high[1]) for box in joint.patches] == [mm(150, 210)]


def test_six_pegs_are_on_the_shopping_list(lid: Model) -> None:
    assert [(each.size, each.count) for each in lid.hardware if each.item == "peg"] == [
        ("10 thick", 6)
    ]


def test_movement_counts_from_the_tenon_that_is_held() -> None:
    middles = tuple(Fraction(each) for each in (80, 180, 280))
    assert plays(middles, Fraction(180), moving("white oak")) == (
        Fraction(3, 2),
        Fraction(0),
        Fraction(3, 2),
    )


def test_glue_all_along_a_board_end_is_refused() -> None:
    # TRADE G5, H78: never glued all along.
    found = checked(changed(LID, (", glue the middle 60", "")))
    assert "glued-across-grain" in codes(found)


def test_a_tongue_as_long_as_its_tenons_is_refused() -> None:
    assert "tongue-too-long" in codes(checked(changed(LID, ("tongue 15 long", "tongue 45 long"))))


def test_a_tongue_without_a_length_is_listed() -> None:
    model = model_of(changed(LID, ("tongue 15 long", "tongue")))
    (told,) = (each for each in model.assumptions if "tongue of the top" in each.text)
    assert told.instead is not None
    assert "tongue 10 long" in told.instead


@pytest.fixture(scope="module")
def plan() -> Played:
    return played(LID)


def test_the_plan_passes_its_rehearsal(plan: Played) -> None:
    assert plan.said() == ""


def test_mortises_longer_than_the_notes_ask_for_are_refused(plan: Played) -> None:
    joints = tuple(replace(joint, sliding_room=()) for joint in plan.goal.joints)
    assert Reason.CUT in replace(plan, goal=replace(plan.goal, joints=joints)).reasons()


@pytest.mark.parametrize("left_out", ["groove for the tongue", "peg slots", "mortise for top"])
def test_what_is_not_cut_is_found(plan: Played, left_out: str) -> None:
    assert Reason.FIT in plan.idle(left_out).reasons()
