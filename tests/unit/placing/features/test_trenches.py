"""Grooves, rabbets, notches and slots on mirrored copies; every figure worked out by hand."""

from __future__ import annotations

import pytest
from tests.unit.placing.features.where import bounds, cuts, found, placed

from dryfit.geometry.frame import SURFACES

SIDES = """piece Drawer sides
units mm
overall 300 wide, 400 deep, 120 high
timber oak
2 sides, front to back, on edge, 400 x 120 x 12, at left and right
"""
FRAME = """piece Frame
units mm
overall 400 wide, 22 deep, 560 high
timber walnut
2 stiles, upright, facing front, 560 x 50 x 22, at left and right
2 rails, across, on edge, 60 x 22, at top and bottom, tenon 30 long 8 thick 40 wide into stiles
glue up frame: stiles, rails
"""
BACKS = """piece Backs
units mm
overall 500 wide, 300 deep, 400 high
timber oak
2 backs, across, on edge, 500 x 400 x 20, at front and back
"""


def test_a_groove_outside_is_mirrored_on_the_other_side() -> None:
    model = placed(SIDES + "groove in sides: outside, 13 wide, 6 deep, 64 from bottom, through\n")
    assert cuts(model, "left side", "groove") == {bounds((0, 6), (0, 400), (64, 77))}
    assert cuts(model, "right side", "groove") == {bounds((294, 300), (0, 400), (64, 77))}
    # Turned end for end one side is the other.
    (feature,) = model.part("side").features
    assert (feature.kind, feature.fit, feature.hands) == ("long slot", "free", ("A",))


def test_a_groove_stops_where_the_line_says() -> None:
    line = "groove in sides: outside, 13 wide, 6 deep, 64 from bottom, stopped 20 from front\n"
    model = placed(SIDES + line)
    assert cuts(model, "left side", "groove") == {bounds((0, 6), (20, 400), (64, 77))}
    assert cuts(model, "right side", "groove") == {bounds((294, 300), (20, 400), (64, 77))}
    assert model.part("side").hands() == ("A", "B")


def test_a_centred_groove_lies_in_the_middle_of_the_face() -> None:
    # (120 - 13) / 2 = 53.5
    model = placed(SIDES + "groove in sides: inside, 13 wide, 6 deep, centred, through\n")
    assert cuts(model, "left side", "groove") == {bounds((6, 12), (0, 400), (53.5, 66.5))}


def test_a_groove_measured_along_the_part_runs_across_it() -> None:
    model = placed(SIDES + "groove in sides: inside, 6 wide, 5 deep, 10 from back, through\n")
    assert cuts(model, "right side", "groove") == {bounds((288, 293), (384, 390), (0, 120))}
    assert {feature.kind for feature in model.part("side").features} == {"cross slot"}


def test_a_groove_may_be_measured_from_another_part() -> None:
    text = SIDES + (
        "1 rail, across, on edge, 276 x 20 x 15, between sides, 30 from bottom, 50 from front\n"
        "groove in sides: inside, 6 wide, 5 deep, 15 above rails, through\n"
    )
    # The rail is 20 high and ends at 50 above the bottom; 15 higher the groove begins.
    assert cuts(placed(text), "left side", "groove") == {bounds((7, 12), (0, 400), (65, 71))}


def test_a_rabbet_in_a_frame_follows_its_inner_edges() -> None:
    line = "rabbet in stiles and rails: back inner edge, 10 wide, 12 deep, through\n"
    model = placed(FRAME + line)
    assert cuts(model, "left stile", "rabbet") == {bounds((40, 50), (10, 22), (0, 560))}
    assert cuts(model, "right stile", "rabbet") == {bounds((350, 360), (10, 22), (0, 560))}
    assert cuts(model, "top rail", "rabbet") == {bounds((20, 380), (10, 22), (500, 510))}
    assert cuts(model, "bottom rail", "rabbet") == {bounds((20, 380), (10, 22), (50, 60))}
    (feature,) = (each for each in model.part("stile").features if each.role == "rabbet")
    assert feature.kind == "rabbet"
    assert SURFACES[feature.surface] == SURFACES["B"]


def test_a_rabbet_that_is_not_said_to_run_through_is_taken_to_and_told_where_it_shows() -> None:
    line = "rabbet in stiles and rails: back inner edge, 10 wide, 12 deep\n"
    model = placed(FRAME + line)
    assert cuts(model, "left stile", "rabbet") == {bounds((40, 50), (10, 22), (0, 560))}
    said = [each for each in model.assumptions if "rabbet in stile" in each.text]
    assert said[0].instead == line.strip() + ", through"
    # The rail's ends lie inside the stiles, and the floor hides the foot of the stile.
    (warning,) = found(FRAME + line, "groove-comes-out")
    assert warning.message.endswith(
        "rabbet in stile: right through it comes out in sight at the top"
    )


def test_a_notch_goes_right_through_the_wood() -> None:
    model = placed(BACKS + "notch in backs: bottom edge, 60 wide, 40 deep, at left\n")
    assert cuts(model, "front back", "notch") == {bounds((0, 60), (0, 20), (0, 40))}
    assert cuts(model, "back", "notch") == {bounds((0, 60), (280, 300), (0, 40))}


def test_a_notch_at_each_end_stands_as_far_from_either() -> None:
    line = "notch in backs: top edge, 60 wide, 40 deep, 30 from left, each end\n"
    assert cuts(placed(BACKS + line), "back", "notch") == {
        bounds((30, 90), (280, 300), (360, 400)),
        bounds((410, 470), (280, 300), (360, 400)),
    }


def test_a_slot_lies_along_the_part_and_in_the_middle_where_nothing_is_said() -> None:
    line = "slot in backs: outside, 25 wide, 90 long, through, 30 from top\n"
    model = placed(BACKS + line)
    # (500 - 90) / 2 = 205
    assert cuts(model, "front back", "slot") == {bounds((205, 295), (0, 20), (345, 370))}
    assert cuts(model, "back", "slot") == {bounds((205, 295), (280, 300), (345, 370))}
    assert "the slot in back is in the middle between left and right" in {
        each.text for each in model.assumptions
    }


@pytest.mark.parametrize(
    ("line", "why"),
    [
        ("groove in sides: outside, 13 wide, 6 deep, 110 from bottom, through", "3 beyond the top"),
        ("groove in sides: outside, 13 wide, 6 deep, 3 from left, through", "do not fit"),
        ("groove in sides: outside, 13 wide, 6 deep, 9 from top, stopped 20 from left", "run to"),
        ("rabbet in sides: top inside edge, 6 wide, 13 deep, through", "is 13 deep in 12 of wood"),
        ("notch in sides: outside edge, 60 wide, 4 deep, at front", "is a face"),
        ("notch in sides: top edge, 60 wide, 40 deep, at top", "do not fit"),
        ("slot in sides: outside, 130 wide, 150 long, through, 9 from front", "5 beyond the"),
    ],
)
def test_what_does_not_lie_on_the_part_is_told(line: str, why: str) -> None:
    (finding,) = found(f"{SIDES}{line}\n", "feature-off-part")
    assert why in finding.message
    assert finding.message.startswith(f"{line.partition(' ')[0]} in side: ")
    assert finding.hints


def test_the_bottom_inner_edge_of_a_board_on_edge_is_one_edge() -> None:
    # Bottom is its narrow face here, so that inner is the broad face that looks inwards.
    model = placed(BACKS + "rabbet in backs: bottom inner edge, 10 wide, 8 deep, through\n")
    assert cuts(model, "front back", "rabbet") == {bounds((0, 500), (12, 20), (0, 10))}
    assert cuts(model, "back", "rabbet") == {bounds((0, 500), (280, 288), (0, 10))}
