"""A bridled frame worked by hand: full lengths, slots in ends, and tenons as wide as the wood."""

from dataclasses import replace
from fractions import Fraction

import pytest
from tests.pieces.reading import changed, checked, codes, mm, model_of, text_of
from tests.unit.rehearsal.played import Played, played

from dryfit.joinery.bridle import usual_bridle
from dryfit.placing.model import Model, Part
from dryfit.quantities import Display
from dryfit.rehearsal.fault import Reason

FRAME = text_of("bridled_frame")


@pytest.fixture(scope="module")
def frame() -> Model:
    return model_of(FRAME)


def cuts(part: Part, mate: str) -> list[tuple[str, str, tuple[int, ...]]]:
    """Role, surface, then along, across and depth of the cuts for a mate, in whole mm."""
    return sorted(
        (each.role, each.surface, tuple(int(x) for x in (*each.along, *each.across, each.depth)))
        for each in part.features
        if each.mate == mate
    )


def test_all_members_run_full_to_the_outside(frame: Model) -> None:
    # TRADE B25: a bridle adds the mate's width at each end.  460 over all; between the stiles of
    # 50 there are 360, between the rails of 60 in 720 there are 600.
    rail, stile, bar = frame.part("rail"), frame.part("stile"), frame.part("middle bar")
    assert (rail.length, rail.shoulder_length) == mm(460, 360)
    assert (stile.length, stile.shoulder_length) == mm(720, 600)
    assert (bar.length, bar.shoulder_length) == mm(460, 360)
    left, right = (copy.box for copy in stile.copies)
    assert right.low[0] - left.high[0] == rail.shoulder_length
    assert rail.copies[0].box.extent(0) == rail.length
    assert [(add.end, add.joint, int(add.length)) for add in rail.adds] == [
        ("R", "bridle", 50),
        ("R2", "bridle", 50),
    ]


def test_tenons_of_a_third_go_into_slots_of_the_ends(frame: Model) -> None:
    # A third of 30 is 10: cheeks of (30 - 10) / 2 (TRADE B2), as long as the stile is wide; the
    # slot 10 to 20 from F, over the whole width, as deep as the rail is wide.
    assert cuts(frame.part("rail"), "stile") == [
        ("tenon cheek", "B", (0, 50, 0, 60, 10)),
        ("tenon cheek", "B", (410, 460, 0, 60, 10)),
        ("tenon cheek", "F", (0, 50, 0, 60, 10)),
        ("tenon cheek", "F", (410, 460, 0, 60, 10)),
    ]
    assert cuts(frame.part("stile"), "rail") == [
        ("open mortise", "R", (0, 50, 10, 20, 60)),
        ("open mortise", "R2", (0, 50, 10, 20, 60)),
    ]


def test_in_a_t_the_member_that_ends_there_straddles_the_other(frame: Model) -> None:
    # TRADE B2, T-bridle: trenches in both faces of the through member, slots in the other's ends.
    # The bar of 40 has its underside at 300.
    assert cuts(frame.part("middle bar"), "stile") == [
        ("open mortise", "R", (0, 40, 10, 20, 50)),
        ("open mortise", "R2", (0, 40, 10, 20, 50)),
    ]
    assert cuts(frame.part("stile"), "middle bar") == [
        ("bridle trench", "B", (300, 340, 0, 50, 10)),
        ("bridle trench", "F", (300, 340, 0, 50, 10)),
    ]


def test_what_is_usual_is_listed_with_the_line_to_write(frame: Model) -> None:
    (told,) = (each for each in frame.assumptions if "bridle" in each.text)
    assert told.text == "rail into stile: bridle 10 thick"
    assert told.instead == "rails into stiles: bridle 10 thick"


@pytest.mark.parametrize(("wood", "thick"), [(30, 10), (24, 8), (18, 6), (40, 12)])
def test_a_third_to_the_nearest_chisel_and_6_at_least(wood: int, thick: int) -> None:
    chisels = tuple(Fraction(each) for each in (6, 8, 10, 12))
    assert usual_bridle(Fraction(wood), chisels, Display("mm")) == thick


@pytest.mark.parametrize("words", ["bridle 4 thick", "bridle 20 thick", "bridle 40 thick"])
def test_tenons_and_cheeks_that_are_too_thin_are_refused(words: str) -> None:
    found = checked(changed(FRAME, ("rails into stiles: bridle", f"rails into stiles: {words}")))
    assert codes(found).count("bridle-does-not-fit") == 1


def test_members_that_both_run_on_cannot_be_bridled() -> None:
    text = changed(
        FRAME,
        ("at left and right\n", "at left and right, set in 20 across\n"),
        ("1 middle bar, across", "1 middle bar, 460 long, across"),
        ("2 rails, across, on edge, 60 x 30", "2 rails, across, on edge, 420 x 60 x 30"),
    )
    assert codes(checked(text)).count("bridle-does-not-fit") == 1


def test_what_a_bridle_does_not_take_is_told() -> None:
    found = checked(changed(FRAME, ("bridle 10 thick", "bridle 10 thick, haunched")))
    assert any(code.startswith(("detail", "joint")) for code in codes(found))


@pytest.fixture(scope="module")
def plan() -> Played:
    return played(FRAME)


def test_the_plan_passes_its_rehearsal(plan: Played) -> None:
    assert plan.said() == ""


def test_the_slot_comes_before_the_tenon_that_is_fitted_to_it(plan: Played) -> None:
    ids = [each.id for step in plan.plan.steps for each in step.operations]
    assert ids.index("stile / open mortise for rail / 2") < ids.index("rail / tenon cheeks")


@pytest.mark.parametrize("left_out", ["rail / tenon cheeks", "stile / trench for middle bar"])
def test_a_tenon_that_is_not_cut_stops_the_joint(plan: Played, left_out: str) -> None:
    assert Reason.FIT in plan.idle(left_out).reasons()


def test_a_slot_on_the_bare_fence_is_refused(plan: Played) -> None:
    bare = tuple(each for each in plan.plan.accessories if each[0] != "tenon jig")
    assert Reason.MACHINE in replace(plan, plan=replace(plan.plan, accessories=bare)).reasons()
