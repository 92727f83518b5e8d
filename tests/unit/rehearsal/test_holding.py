"""Holds: true surfaces, three sides that meet, and no mirror images."""

from fractions import Fraction
from itertools import product

import pytest

from dryfit.plan.setting import Hold, Setting
from dryfit.rehearsal.at_machines.holding import mirrored, untrue
from dryfit.rehearsal.at_machines.standing import Axes
from dryfit.rehearsal.blank import Blank
from dryfit.rehearsal.fault import Reason

OPPOSITE = {"R": "R2", "R2": "R", "E": "E2", "E2": "E", "F": "B", "B": "F"}
HOLDS = [Hold(*surfaces) for surfaces in product(("F", "B"), ("E", "E2"), ("R", "R2"))]


def leg(*true: str) -> Blank:
    return Blank("leg", (Fraction(400), Fraction(40), Fraction(40)), set(true))


@pytest.mark.parametrize("hold", HOLDS)
def test_a_part_and_its_mirror_image_never_lie_alike(hold: Hold) -> None:
    for station in ("table saw", "mortiser"):
        assert mirrored(station, {}, hold, 1) != mirrored(station, {}, hold, -1)


@pytest.mark.parametrize("hold", HOLDS)
def test_turned_about_an_upright_axis_it_lies_as_well(hold: Hold) -> None:
    assert hold.against_fence is not None
    assert hold.at_stop is not None
    turned = Hold(hold.down, OPPOSITE[hold.against_fence], OPPOSITE[hold.at_stop])
    assert mirrored("mortiser", {}, hold, 1) == mirrored("mortiser", {}, turned, 1)


def test_a_stop_on_the_other_side_takes_the_mirror_image() -> None:
    hold = Hold("F", "E", "R")
    left: Axes = {"stop": Setting("stop", Fraction(100), side="left")}
    right: Axes = {"stop": Setting("stop", Fraction(100), side="right")}
    assert mirrored("mortiser", left, hold, 1) != mirrored("mortiser", right, hold, 1)


def test_a_hold_without_a_stop_fits_both_hands() -> None:
    assert not mirrored("table saw", {}, Hold("F", "E", None), 1)
    assert not mirrored("table saw", {}, Hold("F", "E", None), -1)


def test_nothing_is_measured_from_a_rough_surface() -> None:
    (trouble,) = untrue(Hold("F", "E", "R"), leg("F", "E"))
    assert trouble.reason is Reason.REFERENCE
    assert "R" in trouble.needed


def test_nothing_lies_on_a_face_that_is_cut_away() -> None:
    blank = leg("F", "B", "E", "E2", "R", "R2")
    blank.take(
        ((Fraction(40), Fraction(400)), (Fraction(0), Fraction(40)), (Fraction(0), Fraction(5))), 1
    )
    (trouble,) = untrue(Hold("F", "E", "R"), blank)
    assert trouble.reason is Reason.REFERENCE


def test_a_tenon_still_touches_the_stop() -> None:
    blank = leg("F", "B", "E", "E2", "R", "R2")
    blank.take(
        ((Fraction(0), Fraction(20)), (Fraction(0), Fraction(40)), (Fraction(0), Fraction(17))), 1
    )
    blank.take(
        ((Fraction(0), Fraction(20)), (Fraction(0), Fraction(40)), (Fraction(23), Fraction(40))), 2
    )
    assert list(untrue(Hold("F", "E", "R"), blank)) == []


def test_opposite_surfaces_hold_nothing() -> None:
    troubles = list(untrue(Hold("F", "B", "R"), leg("F", "B", "E", "E2", "R", "R2")))
    assert [trouble.reason for trouble in troubles] == [Reason.HOLD]
