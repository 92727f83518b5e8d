"""Steps one after the other, as long as their minutes, in the hours of the shop."""

from dataclasses import replace

import pytest
from tests.unit.rehearsal.damaged_times import DAY, HOUR, MINUTE, Built, built

from dryfit.rehearsal.times.working_hours import hours_of, spoken

FRAME = "flat_lap_frame"


def last(plan: Built) -> int:
    """The number of the last step."""
    return plan.plan.steps[-1].number


def test_hours_run_on_working_days_only() -> None:
    """08:00 to 16:00 from Monday to Friday: five days of 480 min a week."""
    hours = hours_of(built(FRAME).shop)
    assert hours.worked(0) == 0
    assert hours.worked(9 * HOUR) == 8 * HOUR
    assert hours.worked(4 * DAY + 8 * HOUR) == hours.worked(7 * DAY) == 40 * HOUR
    assert hours.begins(8 * HOUR) == DAY
    assert hours.begins(40 * HOUR) == 7 * DAY
    assert hours.opened(9 * HOUR) == DAY
    assert hours.is_open(8 * HOUR)
    assert not hours.is_open(8 * HOUR + 1)
    assert not hours.is_open(5 * DAY)
    assert hours.day_and_clock(DAY + 90 * MINUTE) == (2, "09:30")


def test_day_one_is_the_first_working_day_of_the_week() -> None:
    """Closed on Monday, day 1 is a Tuesday, and day 5 a Saturday."""
    hours = hours_of(replace(built(FRAME).shop, days_off=(0, 5, 6)))
    assert [hours.is_open(day * DAY) for day in range(7)] == [*[True] * 4, *[False] * 3]


def test_a_shop_that_is_never_open_is_refused() -> None:
    with pytest.raises(ValueError, match="never open"):
        hours_of(replace(built(FRAME).shop, days_off=tuple(range(7))))


def test_durations_are_said_in_words() -> None:
    assert [spoken(each) for each in (75, 12 * HOUR, 90 * MINUTE)] == [
        "7.5 min",
        "12 h",
        "1 h 30 min",
    ]


def test_a_step_begins_after_the_one_before() -> None:
    early = built(FRAME).moved(3, -20, 0)
    assert early.reasons() == {"HOURS"}
    assert "before the step before has ended" in early.faults()[0].message


def test_a_step_is_no_shorter_than_its_minutes() -> None:
    short = built(FRAME).moved(5, 0, -20)
    assert short.reasons() == {"HOURS"}
    assert short.faults()[0].step == 5


def test_a_step_is_no_longer_than_its_minutes() -> None:
    stool = built("step_stool")
    assert stool.moved(last(stool), 0, 20).summed().reasons() == {"HOURS"}


def test_a_machine_may_be_set_up_while_the_maker_waits() -> None:
    """The frame is levelled next morning: the walk to the bench is done the evening before."""
    frame = built(FRAME)
    level = frame.plan.step_of("frame / level")
    assert level.minutes.walk > 0
    assert level.ends.tenths - level.starts.tenths == level.minutes.work
    assert frame.faults() == ()
    assert frame.moved(level.number, MINUTE, 0).reasons() == {"HOURS"}


@pytest.mark.parametrize("later", [8 * HOUR, 2 * DAY - 2 * HOUR])
def test_no_work_at_night_or_on_days_off(later: int) -> None:
    """The fitting on day 8 at 08:00, moved to the evening, and to what is a Wednesday's night."""
    stool = built("step_stool")
    assert "HOURS" in stool.moved(last(stool), later, later).summed().reasons()


def test_no_work_on_a_day_off() -> None:
    stool = built("step_stool")
    off = replace(stool, shop=replace(stool.shop, days_off=(0, 5, 6)))
    assert off.plan.steps[-1].starts.day == 8
    assert stool.moved(last(stool), 5 * DAY, 5 * DAY).summed().reasons() == {"HOURS"}
    assert stool.moved(last(stool), DAY, DAY).summed().faults() == ()


def test_day_and_clock_agree_with_the_minutes() -> None:
    frame = built(FRAME)
    moment = frame.step(4).starts
    assert frame.with_step(4, starts=replace(moment, clock="08:00")).reasons() == {"HOURS"}
    assert frame.with_step(4, starts=replace(moment, day=2)).reasons() == {"HOURS"}


def over_the_evening(plan: Built, number: int) -> Built:
    """A step that begins five minutes before the end of its day and goes on next morning."""
    step = plan.step(number)
    day = (step.starts.tenths // DAY) * DAY
    minutes = step.minutes
    rest = minutes.walk + minutes.changeover + minutes.tests + minutes.work - 5 * MINUTE
    begins, ends = day + 8 * HOUR - 5 * MINUTE, day + DAY + rest
    return plan.moved(number, begins - step.starts.tenths, ends - step.ends.tenths).summed()


@pytest.mark.parametrize("splittable", [False, True])
def test_a_coat_is_laid_in_one_day_whatever_the_plan_says_of_it(splittable: bool) -> None:
    frame = over_the_evening(built(FRAME), last(built(FRAME)))
    split = frame.with_operation("frame / coat 2", splittable=splittable)
    assert split.reasons() == {"HOURS"}
    assert "frame / coat 2 is broken off" in split.faults()[0].message


def test_other_work_may_go_on_next_morning() -> None:
    frame = built("screwed_frame")
    fit = frame.plan.steps[-1]
    assert {each.kind for each in fit.operations} == {"fit"}
    assert over_the_evening(frame, fit.number).faults() == ()
