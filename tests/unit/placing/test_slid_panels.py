"""A drawer worked by hand with the figures of TRADE B20; a lid that slides over a low end."""

from fractions import Fraction

import pytest
from tests.pieces.reading import changed, checked, codes, mm, model_of, model_of_piece, text_of
from tests.unit.rehearsal.played import Played, played

from dryfit.placing.model import Model
from dryfit.rehearsal.fault import Reason

DRAWER = text_of("nail_drawer")
BARE = changed(DRAWER, (", groove 6, under back, 10 above the bottom of sides", ", under back"))
SOLID = changed(DRAWER, ("6 thick, of birch ply", "9 thick, glued from 3"))


@pytest.fixture(scope="module")
def drawer() -> Model:
    return model_of(DRAWER)


def test_the_bottom_is_the_inside_with_both_grooves_less_the_play(drawer: Model) -> None:
    # TRADE B20: 376 inside + 2 x 6 - 1.5; from the inner face of the front, at 18, to the outer
    # face of the back, at 300, and 6 - 1 in the front.
    bottom = drawer.part("bottom")
    assert (bottom.length, bottom.width) == (Fraction(773, 2), Fraction(300 - 18 + 6 - 1))
    left, right = (drawer.copy(f"{side} side").box for side in ("left", "right"))
    assert right.low[0] - left.high[0] == 376
    box = drawer.copy("bottom").box
    assert (box.low[1], box.high[1], box.low[2]) == mm(13, 300, 10)


def test_the_back_ends_above_the_bottom_and_below_the_sides(drawer: Model) -> None:
    # TRADE B20: side 120 - (offset 10 + 6) - relief 3.
    assert drawer.part("back").width == 101
    assert drawer.copy("back").box.low[2] == drawer.copy("bottom").box.high[2] == 16


def test_the_grooves_of_the_sides_are_open_behind(drawer: Model) -> None:
    cuts = {
        part: tuple(int(x) for x in (each.depth, *each.across, *each.along))
        for part in ("side", "front")
        for each in drawer.part(part).features
        if each.role == "groove"
    }
    # In front they run out into the rabbet of the front, which is as deep.
    assert cuts["side"] == (6, 10, 16, 0, 300)
    assert cuts["front"] == (6, 10, 16, 0, 388)


def test_what_is_usual_is_listed_with_the_line_to_write() -> None:
    # TRADE B20: 6 deep, 10 up from the lower edge, screwed to the back.
    told = {each.text: each.instead for each in model_of(BARE).assumptions}
    line = "1 bottom, flat, 6 thick, of birch ply, inside sides and front"
    assert told["the grooves for bottom are 6 deep"] == f"{line}, groove 6, under back"
    assert told["the bottom lies 10 above the lower edges of the sides"] == (
        f"{line}, under back, 10 above the bottom of sides"
    )
    assert told["the bottom is screwed to the back, and held by no glue"] == (
        f"{line}, under back, screws"
    )
    assert model_of(BARE).copy("bottom").box == model_of(DRAWER).copy("bottom").box


def test_in_thin_sides_the_groove_is_half_as_deep_as_they_are_thick() -> None:
    thin = changed(
        BARE, ("120 x 12, at left", "120 x 9, at left"), ("dowels into", "housing 3 into")
    )
    groove = next(each for each in model_of(thin).part("side").features if each.role == "groove")
    assert groove.depth == 4


def test_in_inches_the_play_is_one_of_the_ruler() -> None:
    # TRADE B20: 15 in inside + 2 x 1/4 - 1/16.
    notes = """
piece Drawer
units inches to 1/32
overall 16 wide, 12 deep, 5 high
timber oak
2 sides, front to back, on edge, 5 x 1/2, at left and right
1 front, across, on edge, 5 x 3/4, rabbet 1/4 into sides, at front
1 back, across, on edge, 1/2 thick, housing 1/4 into sides, at back, 1/8 below the top of sides
1 bottom, flat, 1/4 thick, of birch ply, inside sides and front, under back
glue up drawer: sides, front, back
"""
    bottom = model_of(notes).part("bottom")
    inch = Fraction(254, 10)
    assert bottom.length == (15 + Fraction(7, 16)) * inch
    assert bottom.width == (12 - Fraction(3, 4) + Fraction(1, 4) - Fraction(1, 32)) * inch


def test_a_solid_bottom_moves_in_slots_at_the_back() -> None:
    model = model_of(SOLID)
    (told,) = (each.text for each in model.assumptions if "slots" in each.text)
    assert told.startswith("the bottom is solid and held by the groove that it slides up to")


def test_a_bottom_captured_on_four_sides_is_a_panel_in_grooves() -> None:
    notes = changed(
        DRAWER,
        (
            "inside sides and front, groove 6, under back",
            "inside sides and front and back, groove 6",
        ),
        (
            "12 thick, dowels into sides, at back, 3 below the top of sides",
            "120 x 12, dowels into sides, at back",
        ),
        ("glue up drawer: sides, front, back", "glue up drawer: sides, front, back, bottom"),
    )
    model = model_of(notes)
    # Half a millimetre of play all round: 282 - 12 + 2 x 6 - 1.
    assert model.part("bottom").width == 281
    assert {each.kind for each in model.joints if each.guest == "bottom"} == {"groove"}


def test_a_lid_slides_over_the_low_end() -> None:
    model = model_of_piece("sliding_lid_box")
    # 260 - 10 + 4 - 1, as far as the outer face of the low end.
    assert model.part("lid").length == 253
    assert [each.kind for each in model.fittings] == ["rest"]


def test_a_bottom_that_the_back_stands_in_the_way_of_is_told() -> None:
    wrong = changed(DRAWER, ("12 thick, dowels", "110 x 12, dowels"))
    assert codes(checked(wrong)) != []


@pytest.fixture(scope="module")
def plan() -> Played:
    return played(DRAWER)


def test_the_plan_passes_its_rehearsal(plan: Played) -> None:
    assert plan.said() == ""


def test_it_is_slid_in_after_the_glue_up_without_glue(plan: Played) -> None:
    rows = [op for step in plan.plan.steps for op in step.operations]
    names = [op.id for op in rows]
    assert names.index("drawer / glue up") < names.index("bottom / fit")
    (fit,) = (op for op in rows if op.id == "bottom / fit")
    assert fit.sentence == (
        "Slide the bottom into its grooves, under the back, and drive the screws: no glue"
    )
    assert {work.copies for op in rows if op.glue_up for work in op.work} == {
        ("left side", "right side", "front", "back")
    }


@pytest.mark.parametrize("part", ["side", "front"])
def test_a_groove_that_is_not_cut_is_found(plan: Played, part: str) -> None:
    assert Reason.FIT in plan.idle(f"{part} / groove for bottom").reasons()


def test_a_bottom_that_is_never_put_in_is_found(plan: Played) -> None:
    assert Reason.COUNT in plan.without("bottom / fit").reasons()
