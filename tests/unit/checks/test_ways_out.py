"""Drawers come out, doors swing free, and what holds a joint is not cut into later (TRADE H)."""

import pytest
from tests.pieces.reading import changed, checked, codes, mm, model_of, text_of
from tests.unit.rehearsal.played import played

from dryfit.diagnostics.explain import page

# Sides from 20 to 270, so that their middle lies behind the middle of the piece.
CASE = """piece Case
units mm
overall 500 wide, 270 deep, 700 high
timber oak
2 sides, upright, facing side, 250 x 18, at left and right, 0 from back
1 top, flat, 250 x 18, into sides, housing 6, flush top, 0 from back
1 bottom, flat, 250 x 18, into sides, housing 6, up 0, 0 from back
bay = opening between sides and bottom and top
1 door, upright, facing front, 20 thick, glued from 4, in bay, gap 2, 20 from front
door to left side: 2 hinges
1 ledge, across, flat, 20 x 20, on the front of sides, screws, up 0
glue up case: sides, top, bottom
"""


def test_hinges_stand_where_door_and_side_are_flush() -> None:
    # Both faces are at 20 from the front; the other faces are at 40 and 270.
    door = model_of(CASE).part("door")
    copy = door.copies[0]
    leaves = [each for each in door.features if each.role == "hinge recess"]
    assert {each.box(copy.box, copy.frame).low[1] for each in leaves} == {copy.box.low[1]}


@pytest.mark.parametrize(
    ("place", "blocked"),
    # The door stands from 20 to 680 high; the ledge, 20 thick, is clear of it at the very bottom.
    [("up 0", False), ("up 1", True), ("up 679", True), ("up 680", False)],
)
def test_a_door_swings_past_what_is_not_at_its_height(place: str, *, blocked: bool) -> None:
    found = codes(checked(changed(CASE, ("screws, up 0", f"screws, {place}"))))
    assert ("door-blocked" in found) == blocked


def test_a_door_swings_no_farther_than_it_is_wide() -> None:
    # From the hinge at 18 to the far edge at 480 are 462; a foot 18 wide from 482 is beyond that.
    foot = changed(CASE, ("1 ledge, across, flat, 20 x 20", "1 foot, upright, 18 x 20, 300 long"))
    foot = changed(foot, ("on the front of sides", "on the front of right side"))
    assert "door-blocked" not in codes(checked(foot))


def test_false_fronts_come_out_with_their_drawer() -> None:
    assert "drawer-blocked" not in codes(checked(text_of("fronted_drawer")))


def test_what_the_face_rail_leaves_free_comes_out() -> None:
    shown = page("drawer-blocked")
    assert shown is not None
    (found,) = (each for each in checked(shown.example).findings if each.code == "drawer-blocked")
    # The rail is 70 to 110 high, the drawer 20 to 100 and 238 wide between flanks 12 thick.
    assert tuple(found.figures.values()) == (*mm(238, 30),)


def test_a_groove_in_a_glued_frame_ends_at_its_rails() -> None:
    shown = page("loose-piece-bared")
    assert shown is not None
    stile = model_of(shown.instead).part("stile")
    (groove,) = (each for each in stile.features if each.role == "groove")
    assert groove.along == mm(60, 440)
    # It is cut last: it does not wait for itself by the slots that are cut before the glue-up.
    assert not played(shown.instead).faults()


def test_screws_from_both_sides_may_pass_over_one_another() -> None:
    shown = page("screw-heads-covered")
    assert shown is not None
    # A shelf 18 thick: the next one is clear of the heads, in its middle, from 9 and the head on.
    near = changed(shown.example, ("screws, up 300\nglue", "screws, up 320\nglue"))
    assert "screw-heads-covered" not in codes(checked(near))


@pytest.mark.parametrize(("gap", "binds"), [("0.4", True), ("1/2 mm", False)])
def test_a_false_front_needs_play_as_a_door_does(gap: str, *, binds: bool) -> None:
    front = changed(
        text_of("fronted_drawer"),
        ("16 thick, in bay, gap 2", f"16 thick, in bay, gap {gap} across, 2 up and down"),
    )
    assert ("front-without-play" in codes(checked(front))) == binds
