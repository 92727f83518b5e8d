"""What must be there in the end: pegs that meet, haunches in their sockets, room, every size."""

from dataclasses import replace
from fractions import Fraction

import pytest
from tests.pieces.reading import changed, checked, text_of
from tests.unit.rehearsal.played import Played, played

from dryfit.rehearsal.fault import Reason
from dryfit.rehearsal.goal import WantedJoint

STAND = """piece Stand
units mm
overall 400 wide, 40 deep, 420 high
timber oak

2 posts, upright, 420 x 40 x 40, at left and right
1 rail, across, on edge, 70 x 20, tenon 24 long 8 thick 40 wide, haunch 10 long 20 deep, \
2 pegs 6 dia, into posts, at top

glue up stand: posts, rail
finish oil, 2 coats
"""


@pytest.fixture(scope="module")
def stand() -> Played:
    return played(STAND)


def with_joints(of: Played, **otherwise: object) -> Played:
    """A plan that is for joints with other sizes."""
    joints = tuple(replace(joint, **otherwise) for joint in of.goal.joints)  # type: ignore[arg-type]
    return replace(of, goal=replace(of.goal, joints=joints))


def test_the_plan_as_it_is_passes(stand: Played) -> None:
    assert stand.said() == ""


@pytest.mark.parametrize("part", ["post / peg holes", "rail / peg holes"])
def test_a_peg_needs_its_hole_in_host_and_tenon(stand: Played, part: str) -> None:
    assert "0 holes for pegs go through it and" in stand.without(part).said()


def test_a_third_peg_is_missed(stand: Played) -> None:
    pegs = stand.goal.joints[0].pegs
    assert pegs is not None
    more = with_joints(stand, pegs=replace(pegs, count=3))
    assert "2 holes for pegs go through it and" in more.said()


def test_holes_in_line_draw_nothing(stand: Played) -> None:
    pegs = stand.goal.joints[0].pegs
    assert pegs is not None
    drawn = with_joints(stand, pegs=replace(pegs, drawn=Fraction(1)))
    assert drawn.reasons() == {Reason.FIT}


def test_drawn_holes_meet_once_the_tenon_is_pulled_in() -> None:
    drawn = played(changed(STAND, ("2 pegs 6 dia", "2 pegs 6 dia, drawbored")))
    pegs = drawn.goal.joints[0].pegs
    assert pegs is not None
    assert pegs.drawn > 0
    assert drawn.said() == ""


def test_without_pegs_in_the_notes_no_hole_is_right(stand: Played) -> None:
    said = with_joints(stand, pegs=None).said()
    assert "post: wood goes that is wanted" in said


def test_a_hole_that_is_not_as_wide_as_the_peg_is_no_peg_hole(stand: Played) -> None:
    pegs = stand.goal.joints[0].pegs
    assert pegs is not None
    said = with_joints(stand, pegs=replace(pegs, diameter=Fraction(8))).said()
    assert "post: wood goes that is wanted" in said


def test_a_haunch_needs_its_socket(stand: Played) -> None:
    # By hand: it is 10 long, 8 thick and 20 high, and all of that stands in the post's wood.
    assert "left post: it shares 10 x 8 x 20 with top rail" in stand.idle("haunch for rail").said()


def test_a_socket_without_a_haunch_in_the_notes_is_too_much(stand: Played) -> None:
    assert "post: wood goes that is wanted" in with_joints(stand, haunch=None).said()


def test_a_tenon_does_not_go_to_the_bottom(stand: Played) -> None:
    assert stand.goal.joints[0].clearance == 1
    tight = with_joints(stand, clearance=Fraction(2))
    assert "it goes to the bottom of its joint with left post" in tight.said()


def test_a_panel_has_room_to_swell() -> None:
    door = played(text_of("panel_door"))
    assert door.said() == ""

    def deeper(joint: WantedJoint) -> WantedJoint:
        if joint.kind != "groove":
            return joint
        return replace(joint, clearance=joint.clearance + Fraction(1, 10))

    joints = tuple(deeper(joint) for joint in door.goal.joints)
    tight = replace(door, goal=replace(door.goal, joints=joints))
    assert "it goes to the bottom of its joint with" in tight.said()


def test_the_overall_size_is_as_written(stand: Played) -> None:
    width, depth, height = stand.goal.overall
    other = replace(stand, goal=replace(stand.goal, overall=(width, depth, height + 1)))
    assert "the height over all is 420 instead of 421" in other.said()


def test_what_is_not_glued_is_told(stand: Played) -> None:
    assert "stand is never glued" in stand.without("stand / glue up").said()


def test_a_cut_by_hand_stands_on_marks(stand: Played) -> None:
    assert "cut to marks that nobody has drawn" in stand.without("post / lay out").said()


def test_each_of_two_tenons_gets_its_peg_bored_bought_and_told() -> None:
    twin = STAND.replace("40 wide, haunch 10 long 20 deep, 2 pegs", "15 wide, 1 peg")
    twin = twin.replace("tenon 24 long", "2 tenons 24 long")
    found = checked(twin)
    assert found.model is not None
    assert [each.count for each in found.model.hardware if each.item == "peg"] == [4]
    made = played(twin)
    assert [joint.pegs.count for joint in made.goal.joints if joint.pegs] == [2, 2]
    assert made.said() == ""
    (glued,) = (
        op for step in made.plan.steps for op in step.operations if op.id == "stand / glue up"
    )
    assert "4 pegs" in str(glued.details)
