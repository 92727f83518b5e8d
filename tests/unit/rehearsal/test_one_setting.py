"""Cuts that have to agree are made before the cutter's height is changed (TRADE E3, J12)."""

from dataclasses import replace
from fractions import Fraction

import pytest
from tests.pieces.reading import text_of
from tests.unit.rehearsal.played import Played, played

from dryfit.rehearsal.at_machines.cutters import toolbox
from dryfit.rehearsal.fault import Reason
from dryfit.rehearsal.one_setting import one_setting
from dryfit.rehearsal.state import CutAt, State, begin


@pytest.fixture(scope="module")
def bench() -> Played:
    return played(text_of("boot_bench"))


def state_of(of: Played, *cuts: CutAt) -> State:
    """The shop with cuts already made."""
    tools, _ = toolbox(of.plan, of.shop)
    state = begin(of.goal, of.shop, tools)
    state.set_for += cuts
    return state


def a_lap(of: Played) -> CutAt:
    joint = next(each for each in of.goal.joints if each.kind == "half lap")
    return CutAt(joint.id, joint.guest, "table saw", Fraction(20), 1, 1, 4, "post / laps")


def test_both_halves_from_one_height_agree(bench: Played) -> None:
    one = a_lap(bench)
    assert not list(one_setting(state_of(bench, one, replace(one, copy="the other", step=5))))


def test_a_height_that_is_found_again_is_another(bench: Played) -> None:
    one = a_lap(bench)
    (fault,) = one_setting(state_of(bench, one, replace(one, copy="the other", step=9, turn=3)))
    assert fault.reason is Reason.SETTING
    assert fault.step == 9


def test_a_shoulder_as_deep_as_a_cheek_is_another_cut(bench: Played) -> None:
    one = a_lap(bench)
    assert not list(one_setting(state_of(bench, one, replace(one, axis=2, turn=3))))


def test_two_heights_of_unequal_laps_cannot_come_from_one_setting(bench: Played) -> None:
    one = a_lap(bench)
    other = replace(one, height=Fraction(25), turn=2)
    assert not list(one_setting(state_of(bench, one, other)))


def test_a_housing_has_no_other_half(bench: Played) -> None:
    housing = replace(bench.goal.joints[0], kind="housing")
    of = replace(bench, goal=replace(bench.goal, joints=(housing,)))
    one = replace(a_lap(bench), joint=housing.id)
    assert not list(one_setting(state_of(of, one, replace(one, turn=2))))
