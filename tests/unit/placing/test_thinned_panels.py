"""A bottom of solid wood, thicker than its grooves, worked by hand with TRADE B20."""

from fractions import Fraction

import pytest
from tests.pieces.reading import changed, checked, codes, mm, model_of, text_of
from tests.unit.rehearsal.played import Played, played

from dryfit.placing.model import Model
from dryfit.rehearsal.fault import Reason

DRAWER = text_of("solid_drawer")


@pytest.fixture(scope="module")
def drawer() -> Model:
    return model_of(DRAWER)


def test_the_grooves_lie_where_the_upper_half_of_the_bottom_stands(drawer: Model) -> None:
    # 10 thick, its underside 10 up: the upper 5 lie from 15 to 20.
    grooves = {
        name: (*each.across, each.depth)
        for name in ("side", "front")
        for each in drawer.part(name).features
        if each.role == "groove"
    }
    assert grooves == {"side": mm(15, 20, 6), "front": mm(15, 20, 6)}


def test_three_edges_of_the_bottom_are_rabbeted_underneath_as_wide_as_the_groove_is_deep(
    drawer: Model,
) -> None:
    # TRADE B20: inside 372 + 2 x 6 - 1.5 long; from 18 + 1 in the front groove to the back's face.
    bottom = drawer.part("bottom")
    assert (bottom.length, bottom.width) == (Fraction(765, 2), Fraction(300 - 18 + 6 - 1))
    rabbets = [each for each in bottom.features if each.role == "rabbet"]
    assert {(each.mate, *each.along, *each.across, each.depth) for each in rabbets} == {
        ("side", *mm(0, 6, 0, 287, 5)),
        ("side", Fraction(753, 2), Fraction(765, 2), *mm(0, 287, 5)),
        ("front", 0, Fraction(765, 2), *mm(281, 287, 5)),
    }


def test_its_screws_stand_in_slots_and_its_front_edge_is_held(drawer: Model) -> None:
    # TRADE B20: expansion toward the rear. Red oak moves 4.2 over 287 and the year (dryfit.wood,
    # handbook coefficient); screw 4 + 1/2, twice the half either way and 1: the slot is 9.5 long.
    told = " ".join(each.text for each in drawer.assumptions)
    assert "held by the groove that it slides up to" in told
    assert "by 4 mm over the year at its other end" in told
    assert "slots 9.5 mm long that way" in told


def test_a_groove_as_wide_as_the_bottom_cuts_nothing_from_it() -> None:
    plain = changed(DRAWER, ("groove 5 wide 6 deep", "groove 10 wide 6 deep"))
    assert [each.role for each in model_of(plain).part("bottom").features if each.mate] == [
        each.role
        for each in model_of(changed(DRAWER, ("groove 5 wide 6 deep", "groove 6")))
        .part("bottom")
        .features
        if each.mate
    ]


def test_a_groove_wider_than_the_bottom_is_told() -> None:
    wide = changed(DRAWER, ("groove 5 wide", "groove 12 wide"))
    assert "rabbet-does-not-fit" in codes(checked(wide))


@pytest.fixture(scope="module")
def plan() -> Played:
    return played(DRAWER)


def test_the_plan_passes_its_rehearsal(plan: Played) -> None:
    assert plan.said() == ""


def test_a_bottom_that_is_not_thinned_does_not_go_in(plan: Played) -> None:
    assert Reason.FIT in plan.idle("bottom / rabbet for side").reasons()
