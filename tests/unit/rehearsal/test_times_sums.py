"""Walks, changes of axes, test cuts, what a step waits for, numbers and totals."""

from dataclasses import fields, replace
from fractions import Fraction

import pytest
from tests.unit.rehearsal.damaged_times import DAY, HOUR, MINUTE, Built, built

from dryfit.plan.plan import Totals, Waits
from dryfit.shop.shop import AxisChange

FRAME = "flat_lap_frame"
DADO = 9
"""The step of the frame that puts the dado set on: 8 for it, 1 for the height, 1.5 for the stop."""


def test_a_walk_wherever_the_station_changes() -> None:
    frame = built(FRAME)
    assert frame.step(2).minutes.walk == frame.shop.walk
    flown = frame.with_minutes(2, walk=0).moved(2, MINUTE, 0).summed()
    assert flown.reasons() == {"SUMS"}
    assert flown.faults()[0].message == "step 2 counts 0 min for walking"
    longer = replace(frame, shop=replace(frame.shop, walk=2 * MINUTE))
    assert longer.reasons() == {"SUMS"}


def test_no_walk_where_it_does_not() -> None:
    frame = built(FRAME)
    minutes = frame.step(6).minutes
    walked = frame.with_minutes(6, walk=MINUTE, changeover=minutes.changeover - MINUTE).summed()
    assert walked.reasons() == {"SUMS"}


def test_to_and_from_a_dado_set_costs_what_the_shop_says() -> None:
    """Dado 8, height unset by it 1, stop 1.5 (TRADE E1); `dado 20` is of the family `dado`."""
    frame = built(FRAME)
    cutter = dict(frame.step(DADO).settings)["cutter"]
    assert cutter is not None
    assert str(cutter.value).startswith("dado ")
    assert frame.step(DADO).minutes.changeover == 80 + 10 + 15
    cheap = frame.with_minutes(DADO, changeover=55).moved(DADO, 50, 0).summed()
    assert cheap.reasons() == {"SUMS"}


def with_cutter_axis(plan: Built, axis: AxisChange) -> Built:
    """The same with another axis for the cutter of the table saw in the shop."""
    saw = plan.shop.stations["table saw"]
    axes = tuple(axis if each.name == "cutter" else each for each in saw.axes)
    stations = {**plan.shop.stations, "table saw": replace(saw, axes=axes)}
    return replace(plan, shop=replace(plan.shop, stations=stations))


def test_the_changes_between_families_count() -> None:
    frame = built(FRAME)
    axis = frame.shop.stations["table saw"].axis("cutter")
    assert with_cutter_axis(frame, axis).faults() == ()
    dearer = replace(axis, between=(("*", "dado", 90),))
    told = with_cutter_axis(frame, dearer).faults()
    assert [(each.step, each.reason.name) for each in told] == [(DADO, "SUMS")]


def test_a_new_cutter_spoils_the_height() -> None:
    """The height is set anew after the cutter; where nothing is spoiled an equal one stays."""
    frame = built(FRAME)
    heights = [dict(frame.step(number).settings)["height"] for number in (7, DADO)]
    same = frame.with_step(
        DADO,
        settings=tuple(
            (name, heights[0] if name == "height" else setting)
            for name, setting in frame.step(DADO).settings
        ),
    )
    assert same.faults() == ()
    axis = frame.shop.stations["table saw"].axis("cutter")
    kept = with_cutter_axis(same, replace(axis, unsets=()))
    assert [(each.step, each.reason.name) for each in kept.faults()] == [(DADO, "SUMS")]


def test_test_cuts_where_a_setting_is_new() -> None:
    frame = built(FRAME)
    assert frame.step(DADO).tests == 2
    none = frame.with_step(DADO, tests=0).with_minutes(DADO, tests=0).moved(DADO, 30, 0)
    assert none.summed().reasons() == {"SUMS"}
    assert frame.with_step(DADO, tests=1).reasons() == {"SUMS"}


def test_the_work_of_a_step_is_that_of_its_operations() -> None:
    frame = built(FRAME)
    name = frame.step(5).operations[0].id
    longer = frame.with_operation(name, tenths=frame.operation(name).tenths + 10)
    assert longer.reasons() == {"SUMS"}


def test_a_step_waits_for_something_that_is_done() -> None:
    frame = built(FRAME)
    unknown = Waits(3, "frame / varnish", "it has to shine", 0)
    later = Waits(19, "frame / coat 2", "it has to be dry", 0)
    wrong = Waits(2, "frame / glue up", "it has to be hard", 0)
    for row in (unknown, later, wrong):
        assert frame.with_step(15, waits_for=(row,)).reasons() == {"ORDER"}
    right = Waits(13, "frame / glue up", "it has to be hard", HOUR)
    assert frame.with_step(15, waits_for=(right,)).faults() == ()
    longer = replace(right, lag=2 * DAY)
    assert frame.with_step(15, waits_for=(longer,)).reasons() == {"WAIT"}


def test_swapped_steps_are_found() -> None:
    """Sanding first and levelling then, with numbers and moments as they belong to the places."""
    frame = built(FRAME)
    rows = list(frame.plan.steps)
    rows[13:15] = [
        replace(rows[14], number=14, visit=rows[13].visit),
        replace(rows[13], number=15, visit=rows[14].visit),
    ]
    swapped = replace(frame, plan=replace(frame.plan, steps=tuple(rows)))
    assert "ORDER" in swapped.reasons()


def test_a_release_is_true_and_kept() -> None:
    frame = built(FRAME)
    release = frame.step(14).release
    assert release is not None
    for wrong, reason in (
        (replace(release, operation="frame / varnish"), "ORDER"),
        (replace(release, step=19, operation="frame / coat 2"), "ORDER"),
        (replace(release, lag=release.lag + HOUR), "WAIT"),
        (replace(release, opens=frame.moment(release.opens.tenths + HOUR)), "WAIT"),
        (replace(release, over=replace(release.over, clock="00:00")), "HOURS"),
    ):
        assert frame.with_step(14, release=wrong).reasons() == {reason}


@pytest.mark.parametrize("changes", [{"number": 40}, {"visit": 40}])
def test_steps_and_visits_are_counted_one_by_one(changes: dict[str, int]) -> None:
    frame = built(FRAME)
    assert frame.with_step(19, **changes).reasons() == {"SUMS"}


def test_a_glue_up_is_a_step_of_its_own() -> None:
    """Two coats in one step: the first would not have dried."""
    frame = built(FRAME)
    two = (*frame.step(18).operations, *frame.step(18).operations)
    assert "SUMS" in frame.with_step(18, operations=two).reasons()


@pytest.mark.parametrize("meanwhile", [(), (1, 2)])
def test_what_is_done_while_the_glue_cures_is_what_begins_then(meanwhile: tuple[int, ...]) -> None:
    stool = built("step_stool")
    step = stool.plan.step_of("side frame 1 / glue up")
    number, off = step.number, step.ends.tenths + HOUR
    later = [each for each in stool.plan.steps if each.number > number]
    begun = tuple(each.number for each in later if each.starts.tenths < off)
    assert step.meanwhile == begun != ()
    assert stool.with_step(number, meanwhile=meanwhile).reasons() == {"SUMS"}


NOT_OF_THE_STEPS = {"over", "part_by_part", "fewest", "proven", "fewest_found"}


@pytest.mark.parametrize(
    "name", [each.name for each in fields(Totals) if each.name not in NOT_OF_THE_STEPS]
)
def test_every_total_is_the_sum_of_the_steps(name: str) -> None:
    frame = built(FRAME)
    found = frame.plan.totals
    wrong = replace(found, **{name: getattr(found, name) + 1})
    assert replace(frame, plan=replace(frame.plan, totals=wrong)).reasons() == {"SUMS"}


@pytest.mark.parametrize("above", [1, -50])
def test_a_bound_lies_below_and_proves_only_what_it_meets(above: int) -> None:
    frame = built(FRAME)
    found = frame.plan.totals
    fewest = found.changeover + above
    for proven in (True, found.changeover == fewest):
        gap = Fraction(100 * (found.changeover - fewest), fewest)
        wrong = replace(found, fewest=fewest, proven=proven, gap_percent=gap)
        told = replace(frame, plan=replace(frame.plan, totals=wrong)).reasons()
        assert told == ({"SUMS"} if above > 0 or proven else set())


def test_the_fewest_found_lie_between_the_bound_and_the_plan() -> None:
    frame = built(FRAME)
    found = frame.plan.totals
    for known in (found.fewest - 1, found.changeover + 1):
        wrong = replace(found, fewest_found=known)
        assert replace(frame, plan=replace(frame.plan, totals=wrong)).reasons() == {"SUMS"}


@pytest.mark.parametrize("name", ["attended", "changeovers"])
def test_part_by_part_does_the_same_work_and_adds_up(name: str) -> None:
    frame = built(FRAME)
    other = frame.plan.totals.part_by_part
    more = replace(other, **{name: getattr(other, name) + 1})
    wrong = replace(frame.plan.totals, part_by_part=more)
    assert replace(frame, plan=replace(frame.plan, totals=wrong)).reasons() == {"SUMS"}
