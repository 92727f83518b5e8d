"""Cuts in glued frames and keys across their corners."""

from __future__ import annotations

from fractions import Fraction

from tests.unit.placing.features.where import bounds, cuts, found, placed

from dryfit.joinery.slopes import DIAGONAL

FRAME = """piece Frame
units mm
overall 400 wide, 22 deep, 560 high
timber walnut
2 stiles, upright, facing front, 560 x 50 x 22, at left and right
2 rails, across, on edge, 60 x 22, at top and bottom, tenon 30 long 8 thick 40 wide into stiles
glue up frame: stiles, rails
"""


def test_a_rabbet_round_the_inside_of_a_frame_comes_out_square_in_its_corners() -> None:
    model = placed(
        FRAME + "rabbet in frame: back inner edge, 8 wide, 6 deep, after glue up frame\n"
    )
    # Between the rails it is 60 to 500, and 8 more at either end; between the stiles 50 to 350,
    # and 8 more: there the rail has only its tenon, whose cheek is 7 deep.
    assert cuts(model, "left stile", "rabbet") == {bounds((42, 50), (16, 22), (52, 508))}
    assert cuts(model, "right stile", "rabbet") == {bounds((350, 358), (16, 22), (52, 508))}
    assert cuts(model, "top rail", "rabbet") == {bounds((50, 350), (16, 22), (500, 508))}
    assert {each.after for each in model.part("stile").features if each.role == "rabbet"} == {
        "frame"
    }


def test_an_edge_of_the_whole_is_that_of_the_members_that_stand_there() -> None:
    model = placed(FRAME + "chamfer on frame: front top edge, 3\n")
    assert cuts(model, "left stile", "chamfer") == {bounds((0, 50), (0, 3), (557, 560))}
    assert cuts(model, "top rail", "chamfer") == {bounds((50, 350), (0, 3), (557, 560))}
    assert cuts(model, "bottom rail", "chamfer") == set()
    (said,) = (each for each in model.assumptions if "chamfer" in each.text)
    assert said.instead == "chamfer on frame: front top edge, 3, after glue up frame"


def test_keys_are_spread_over_the_thickness_of_every_corner() -> None:
    line = "keys in frame: 2 a corner, 3.2 thick, 18 deep, after glue up frame\n"
    model = placed(FRAME + line)
    # (22 - 2 x 3.2) / 3 = 5.2 between them; along the sides 18 times the diagonal of a square.
    reach = 18 * DIAGONAL
    stile = {
        (
            (Fraction(0), reach),
            (Fraction(low), Fraction(low) + Fraction("3.2")),
            (start, start + reach),
        )
        for low in (Fraction("5.2"), Fraction("13.6"))
        for start in (Fraction(0), 560 - reach)
    }
    assert cuts(model, "left stile", "key slot") == stile
    assert abs(reach - Fraction("25.455844")) < Fraction(1, 100)  # 18 times the root of 2
    forms = {each.form.kind for each in model.part("stile").features if each.form}
    assert forms == {"key slot"}


def test_keys_need_a_frame() -> None:
    (finding,) = found(
        FRAME + "keys in stiles: 2 a corner, 3.2 thick, 18 deep\n", "feature-off-part"
    )
    assert finding.message == "keys in stile: they are sawn across the corners of what is glued"


def test_too_many_keys_do_not_fit() -> None:
    line = "keys in frame: 7 a corner, 3.2 thick, 18 deep, after glue up frame\n"
    (finding,) = found(FRAME + line, "feature-off-part")
    assert "do not fit into its thickness" in finding.message
