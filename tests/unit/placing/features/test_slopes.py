"""Tapers, eased and moulded edges, curves, bevels: a box with a form, on mirrored copies."""

from __future__ import annotations

from fractions import Fraction

import pytest
from tests.pieces.reading import mm
from tests.unit.placing.features.where import bounds, cuts, found, placed

LEGS = """piece Legs
units mm
overall 600 wide, 400 deep, 480 high
timber oak
4 legs, upright, 480 x 45 x 45, at corners
"""
TOP = """piece Top
units mm
overall 600 wide, 400 deep, 20 high
timber oak
1 top, across, flat, 600 x 400 x 20
"""
TRESTLE = """piece Trestles
units mm
overall 600 wide, 500 deep, 700 high
timber ash
2 feet, front to back, on edge, 500 x 90 x 50, at left and right, up 0
2 posts, upright, facing front, 610 x 60 x 50, at left and right, up 90, 220 from front
"""
RAILS = """piece Rails
units mm
overall 600 wide, 400 deep, 480 high
timber oak
4 legs, upright, 480 x 45 x 45, at corners
2 aprons, across, on edge, 90 x 20, at front and back, tenon 20 long 8 thick 50 wide into legs
"""


def test_legs_are_tapered_on_both_inner_faces_mirrored_at_every_corner() -> None:
    line = "taper in legs: inside faces, from 120 below the top to the bottom end, 45 to 28\n"
    model = placed(LEGS + line)
    # From 480 - 120 = 360 down, 45 - 28 = 17 at the foot.
    assert cuts(model, "front left leg", "taper") == {
        bounds((28, 45), (0, 45), (0, 360)),
        bounds((0, 45), (28, 45), (0, 360)),
    }
    assert cuts(model, "back right leg", "taper") == {
        bounds((555, 572), (355, 400), (0, 360)),
        bounds((555, 600), (355, 372), (0, 360)),
    }
    part = model.part("leg")
    assert part.hands() == ("A", "B")
    assert {each.form.sizes for each in part.features if each.form} == {
        (("from", Fraction(45)), ("to", Fraction(28)))
    }
    thin_ends = {each.form.toward for each in part.features if each.form}
    assert thin_ends <= {"R", "R2"}


def test_a_taper_runs_from_beyond_another_part_to_both_ends() -> None:
    line = "taper in feet: top edge, from 1 beyond posts to the ends, 90 to 45\n"
    # The post stands on 220 to 270 of the foot: the tapers begin at 219 and 271.
    assert cuts(placed(TRESTLE + line), "left foot", "taper") == {
        bounds((0, 50), (0, 219), (45, 90)),
        bounds((0, 50), (271, 500), (45, 90)),
    }


def test_a_taper_begins_at_the_full_size() -> None:
    line = "taper in legs: inside faces, from 120 below the top to the bottom end, 40 to 25\n"
    (finding,) = found(LEGS + line, "taper-start")
    assert dict(finding.figures) == {"written": 40, "size": 45}


def test_all_top_edges_are_the_four_round_the_top() -> None:
    model = placed(TOP + "chamfer on top: all top edges, 3 wide\n")
    assert cuts(model, "top", "chamfer") == {
        bounds((0, 600), (0, 3), (17, 20)),
        bounds((0, 600), (397, 400), (17, 20)),
        bounds((0, 3), (0, 400), (17, 20)),
        bounds((597, 600), (0, 400), (17, 20)),
    }
    assert {each.kind for each in model.part("top").features} == {"profile"}


def test_a_chamfer_with_an_angle_is_deeper_than_wide() -> None:
    # 10 times the tangent of 60 degrees, 1.7320508, rounded up to 1.7321.
    model = placed(TOP + "chamfer on top: front bottom edge, 10 wide, 60 degrees\n")
    assert cuts(model, "top", "chamfer") == {bounds((0, 600), (0, 10), (0, 17.321))}


def test_the_bottom_end_of_legs_has_four_edges() -> None:
    model = placed(LEGS + "chamfer on legs: bottom end, 2\n")
    assert cuts(model, "front right leg", "chamfer") == {
        bounds((555, 557), (0, 45), (0, 2)),
        bounds((598, 600), (0, 45), (0, 2)),
        bounds((555, 600), (0, 2), (0, 2)),
        bounds((555, 600), (43, 45), (0, 2)),
    }


def test_the_outer_edge_of_a_square_leg_is_where_its_outer_faces_meet() -> None:
    model = placed(LEGS + "round-over on legs: outer edges, 5 radius\n")
    assert cuts(model, "front left leg", "round-over") == {bounds((0, 5), (0, 5), (0, 480))}
    assert cuts(model, "back right leg", "round-over") == {bounds((595, 600), (395, 400), (0, 480))}


def test_a_moulding_follows_the_front_and_both_ends() -> None:
    model = placed(TOP + "profile on top: front and end top edges, ogee, 12 wide, 8 deep\n")
    assert cuts(model, "top", "profile") == {
        bounds((0, 600), (0, 12), (12, 20)),
        bounds((0, 12), (0, 400), (12, 20)),
        bounds((588, 600), (0, 400), (12, 20)),
    }
    assert {each.form.profile for each in model.part("top").features if each.form} == {"ogee"}


def test_a_curve_is_told_from_here_to_there() -> None:
    line = "curve in aprons: bottom edge, 30 deep, from 60 from left to 80 from right\n"
    # The aprons are 25 to 575 wide with their tenons, 390 to 480 high and 20 of 45 thick.
    model = placed(RAILS + line)
    assert cuts(model, "front apron", "curve") == {bounds((85, 495), (12.5, 32.5), (390, 420))}
    assert cuts(model, "back apron", "curve") == {bounds((85, 495), (367.5, 387.5), (390, 420))}


def test_an_arch_spans_what_is_free_between_the_legs() -> None:
    model = placed(RAILS + "arch in aprons: bottom edge, 30 rise\n")
    assert cuts(model, "front apron", "curve") == {bounds((45, 555), (12.5, 32.5), (390, 420))}
    (said,) = (each for each in model.assumptions if "curve" in each.text)
    assert (
        said.instead == "arch in aprons: bottom edge, 30 rise, from 20 from left to 20 from right"
    )


@pytest.mark.parametrize(
    ("copy", "box"),
    [
        ("front back", ((0, 500), (0, 20), (396.472, 400))),
        ("back", ((0, 500), (280, 300), (396.472, 400))),
    ],
)
def test_a_bevel_falls_to_the_outside_of_every_copy(
    copy: str, box: tuple[tuple[float, float], ...]
) -> None:
    text = """piece Backs
units mm
overall 500 wide, 300 deep, 400 high
timber oak
2 backs, across, on edge, 500 x 400 x 20, at front and back
bevel in backs: top edge, 10 degrees
"""
    # 20 times the tangent of 10 degrees, 0.1763270, rounded up to 0.1764.
    model = placed(text)
    assert cuts(model, copy, "bevel") == {bounds(*box)}
    (feature,) = model.part("back").features
    assert feature.kind == "bevel"
    assert feature.form is not None
    assert (feature.form.sizes, feature.hands) == ((("angle", Fraction(10)),), ("A",))
    assert feature.form.toward == "F"  # which looks outwards
    (said,) = (each for each in model.assumptions if "bevel" in each.text)
    assert said.instead == "bevel in backs: outside top edge, 10 degrees"
    again = placed(text.replace("bevel in backs: top edge, 10 degrees", said.instead))
    assert cuts(again, copy, "bevel") == cuts(model, copy, "bevel")


def test_a_bevel_at_an_end_is_a_mitre() -> None:
    model = placed(TOP + "bevel in top: left top end, 45 degrees\n")
    assert {each.kind for each in model.part("top").features} == {"mitre"}
    assert {each.form.sizes for each in model.part("top").features if each.form} == {
        (("angle", *mm(45)),)
    }


@pytest.mark.parametrize(
    ("text", "line", "why"),
    [
        (LEGS, "taper in legs: inside face, from 500 below the top to the bottom end, 45 to 28",
         "begins or ends beyond"),
        (LEGS, "taper in legs: bottom end, from 120 below the top to the bottom end, 45 to 28",
         "an end cannot be tapered"),
        (TOP, "chamfer on top: all top edges, 30 wide", "is 30 deep in 20 of wood"),
        (TOP, "round-over on top: left end, 25 radius", "of wood"),
        (TOP, "profile on top: front top edges, cove, 40 wide, 30 deep", "is 30 deep in 20"),
        (RAILS, "curve in aprons: front edge, 30 deep, from 60 from left to 80 from right",
         "is a face"),
        (TOP, "bevel in top: top end, 10 degrees", "the ends of the top are at its left and right"),
    ],
)  # fmt: skip
def test_what_cannot_be_put_there_is_told(text: str, line: str, why: str) -> None:
    (finding,) = found(f"{text}{line}\n", "feature-off-part")
    assert why in finding.message
