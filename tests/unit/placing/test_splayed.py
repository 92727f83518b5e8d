"""Splayed legs placed: which way each leans, hands, what is taken for granted, what is refused."""

from fractions import Fraction

import pytest
from tests.pieces.reading import changed, checked, codes, errors, mm, model_of

from dryfit.placing.model import Model

STOOL = """
piece Splayed stool
units mm
overall 380 wide, 280 deep, 450 high
timber ash
4 legs, upright, 38 x 38, set in 50, up 0, at corners, splayed 1 in 8 to the sides and 1 in 12 front and back
1 seat, flat, across, 40 thick, up 410
legs into seat: through round tenon 25, wedged
glue up stool: seat, legs
"""  # noqa: E501
SPLAY = "splayed 1 in 8 to the sides and 1 in 12 front and back"
JOINT = "through round tenon 25, wedged"
GLUE = "glue up stool: seat, legs"
CHAMFER = "chamfer on legs: all long edges, 4 wide"
HOLE = "hole in legs: front, 8 dia, through, 100 from top"
RAILS = "2 rails, across, 40 x 20, up 100, tenon 15 into legs"
BAY = "bay = opening between legs"


@pytest.fixture(scope="module")
def stool() -> Model:
    return model_of(STOOL)


def said(notes: str) -> str:
    """What is taken for granted, a line each, with the line to write instead."""
    return "\n".join(f"{each.text} | {each.instead}" for each in model_of(notes).assumptions)


def test_each_leg_leans_outwards_from_where_it_meets_the_seat(stool: Model) -> None:
    eighth, twelfth = Fraction(1, 8), Fraction(1, 12)
    assert {copy.name: copy.lean and copy.lean.per_down for copy in stool.part("leg").copies} == {
        "front left leg": (-eighth, -twelfth),
        "front right leg": (eighth, -twelfth),
        "back left leg": (-eighth, twelfth),
        "back right leg": (eighth, twelfth),
    }
    assert {copy.lean.level for copy in stool.part("leg").copies if copy.lean} == {410}
    assert stool.copy("seat").lean is None


def test_what_stands_across_from_one_another_is_one_hand(stool: Model) -> None:
    hands = {copy.name: copy.hand for copy in stool.part("leg").copies}
    assert hands["front left leg"] == hands["back right leg"] != hands["front right leg"]
    assert hands["front right leg"] == hands["back left leg"]


def test_a_hole_leans_as_its_leg_and_a_shoulder_as_its_side(stool: Model) -> None:
    # Seen from below the foot of the front left leg stands out to R (left) and E (front).
    (hole, *_) = (f for f in stool.part("seat").features if f.role == "tenon hole")
    assert (hole.surface, dict(hole.slopes)) == ("B", {"R": Fraction(1, 8), "E": Fraction(1, 12)})
    shoulders = {f.surface: dict(f.slopes) for f in stool.part("leg").features}
    assert shoulders == {
        "F": {"E": Fraction(1, 8)},
        "B": {"E": Fraction(1, 8)},
        "E": {"F": Fraction(1, 12)},
        "E2": {"F": Fraction(1, 12)},
    }


def test_a_leg_is_sawn_longer_than_it_stands_high(stool: Model) -> None:
    # Worked by hand in tests/unit/joinery/test_splay.py.
    leg = stool.part("leg")
    assert (leg.length, leg.cut_length) == mm(450, 468)
    assert all(each.square is None for each in stool.assemblies)


def test_where_the_feet_stand_is_listed() -> None:
    # The outer corners are 280 x 180 apart at the seat; 410 / 8 = 51.25 and 410 / 12 = 34.17 more.
    assert "stand 382.5 x 248.5 apart" in said(STOOL)


def test_a_slope_alone_is_for_both_ways_and_an_angle_is_rounded_once() -> None:
    told = said(changed(STOOL, (SPLAY, "splayed 7 degrees")))
    assert "the legs are splayed to the sides and front and back | 4 legs" in told
    assert "splayed 7 degrees both ways" in told
    # The tangent of 7 degrees is 0.12278456.
    assert "7 degrees is taken for a slope of 122.785 in 1000, rounded" in told


def test_legs_at_two_sides_lean_to_these_alone() -> None:
    notes = changed(
        STOOL, ("4 legs", "2 legs"), ("at corners", "at left and right"), (SPLAY, "splayed 1 in 6")
    )
    legs = model_of(notes).part("leg")
    assert [c.lean and c.lean.per_down[1] for c in legs.copies] == [0, 0]
    assert "splayed 1 in 6 to the sides" in said(notes)


def test_long_edges_of_a_splayed_leg_can_be_eased() -> None:
    model = model_of(changed(STOOL, (GLUE, f"{CHAMFER}\n{GLUE}")))
    eased = [each for each in model.part("leg").features if each.role == "chamfer"]
    assert [each.slopes for each in eased] == [()] * 4


def test_round_tenons_of_upright_legs_stand_square() -> None:
    model = model_of(changed(STOOL, (f", {SPLAY}", "")))
    leg = model.part("leg")
    assert leg.cut_length == 450
    assert leg.sloped is None
    assert leg.copies[0].lean is None
    assert [each.slopes for each in (*leg.features, *model.part("seat").features)] == [()] * 8
    joint = model.joints[0]
    assert joint.kind == "round tenon"
    assert joint.clearance == 0


def test_a_blind_round_tenon_keeps_room_for_glue() -> None:
    model = model_of(changed(STOOL, (f", {SPLAY}", ""), (JOINT, "round tenon 25 thick 30 long")))
    assert (model.joints[0].region.extent(2), model.joints[0].clearance) == mm(30, 1)
    assert model.part("leg").length == 440


@pytest.mark.parametrize(
    ("old", "new", "code"),
    [
        (JOINT, "through tenon 12 thick", "splay-joint"),
        (JOINT, "round tenon 25 thick 30 long", "splay-joint"),
        (f"wedged\n{GLUE}", "wedged, dry", "splay-joint"),
        (GLUE, f"{BAY}\n{GLUE}", "splay-joint"),
        (GLUE, f"{CHAMFER}, from 100 from bottom\n{GLUE}", "splay-joint"),
        (GLUE, f"{HOLE}\n{GLUE}", "splay-joint"),
        (GLUE, f"{RAILS}\n{GLUE}, rails", "splay-joint"),
        ("up 0, ", "up 20, ", "splay-joint"),
        (JOINT, "through round tenon 36, wedged", "round-tenon-does-not-fit"),
        ("upright, 38 x 38", "upright, 38 x 38, horns 20", "splay-joint"),
    ],
)
def test_what_a_splayed_leg_cannot_have_is_refused(old: str, new: str, code: str) -> None:
    found = checked(changed(STOOL, (old, new)))
    assert code in codes(found), codes(found)
    assert errors(found)
