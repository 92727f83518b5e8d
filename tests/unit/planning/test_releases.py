"""What holds a step back longest, worked by hand: cures, clamps in use, evenings and weekends.

The shop works from 08:00 to 16:00, Monday to Friday; day 1 is a Monday.  Moments are tenths of a
minute from 08:00 of day 1.
"""

from dataclasses import replace

import pytest
from tests.unit.operations.worked import boot_bench, operation, piece, shipped_shop
from tests.unit.planning.planned import plan_of

from dryfit.booklet.steps import waits_in_words
from dryfit.order.hours import hours_of
from dryfit.plan.as_text import steps_table
from dryfit.plan.operation import Held, Operation, Rule, WorkList
from dryfit.plan.plan import PartByPart, Step, StepMinutes
from dryfit.plan.totals_text import saved_in_words
from dryfit.planning.moments import moment
from dryfit.planning.problem_of import calendar_of
from dryfit.planning.releases import WHY_CLAMPS, WHY_EVENING, with_releases

HOUR = 600
DAY = 24 * HOUR


def job(name: str, held: tuple[Held, ...] = (), *, splittable: bool = True) -> Operation:
    """An operation at the bench that matters by its name and its clamps alone."""
    plain = operation(boot_bench(), "end frame 1 / dry fit")
    return replace(plain, id=name, held=held, splittable=splittable)


def step(number: int, done: Operation, starts: int, ends: int) -> Step:
    return Step(
        number=number,
        visit=number,
        station="bench",
        settings=(),
        changed=(),
        operations=(done,),
        minutes=StepMinutes(0, 0, 0, ends - starts, 0),
        tests=0,
        starts=moment(starts, shipped_shop()),
        ends=moment(ends, shipped_shop()),
        waits_for=(),
    )


def released(steps: tuple[Step, ...], *rules: Rule) -> tuple[Step, ...]:
    work = WorkList(tuple(s.operations[0] for s in steps), rules, ())
    hours = hours_of(calendar_of(shipped_shop()))
    return with_releases(steps, work, hours, shipped_shop())


def test_of_two_cures_the_one_counts_that_is_over_last() -> None:
    # Coat of step 1 at 10:00 on day 1, coat of step 2 at 11:00 on day 2, 24 h each.
    first, second, fit = job("top / coat"), job("base / coat"), job("top / fit")
    why = "a finish that has not hardened sticks"
    *_, last = released(
        (
            step(1, first, HOUR, 2 * HOUR),
            step(2, second, DAY + 2 * HOUR, DAY + 3 * HOUR),
            step(3, fit, 2 * DAY + 3 * HOUR, 2 * DAY + 4 * HOUR),
        ),
        Rule(first.id, fit.id, why, 24 * HOUR),
        Rule(second.id, fit.id, why, 24 * HOUR),
    )
    assert last.release is not None
    assert (last.release.step, last.release.operation) == (2, "base / coat")
    assert (last.release.over.day, last.release.over.clock) == (3, "11:00")
    assert last.release.opens == last.release.over
    assert waits_in_words(last) == (f"Not before about day 3, 11:00 (24 h after step 2): {why}",)


def test_a_cure_that_ends_at_night_says_when_the_shop_opens() -> None:
    # 10:00 on Friday, day 5, and 12 h: 22:00, so Monday, day 8.
    glue, level = job("frame / glue up"), job("frame / level")
    friday = 4 * DAY + 2 * HOUR
    *_, last = released(
        (step(1, glue, friday - HOUR, friday), step(2, level, 7 * DAY, 7 * DAY + HOUR)),
        Rule(glue.id, level.id, "soft", 12 * HOUR),
    )
    assert last.release is not None
    assert (last.release.over.day, last.release.over.clock) == (5, "22:00")
    assert (last.release.opens.day, last.release.opens.clock) == (8, "08:00")
    (text,) = waits_in_words(last)
    when = "12 h after step 1; outside shop hours, so begin day 8, 08:00"
    assert text == f"Not before about day 5, 22:00 ({when}): soft"


def test_clamps_in_use_hold_a_glue_up_back_until_enough_are_free() -> None:
    # Four C-clamps: the first glue-up, out at 10:30, gives two back; the second, out at 11:00,
    # two more; three are wanted.
    first = job("frame 1 / glue up", (Held("C-clamp", 2, HOUR),))
    second = job("frame 2 / glue up", (Held("C-clamp", 2, HOUR),))
    third = job("frame 3 / glue up", (Held("C-clamp", 3, HOUR),))
    half = HOUR // 2
    *_, last = released(
        (
            step(1, first, HOUR, HOUR + half),
            step(2, second, HOUR + half, 2 * HOUR),
            step(3, third, 3 * HOUR, 3 * HOUR + half),
        )
    )
    assert last.release is not None
    assert last.release.step == 2
    assert last.release.reason == WHY_CLAMPS
    assert last.release.over.clock == "11:00"


def test_clamps_that_are_free_in_time_are_not_mentioned() -> None:
    first = job("frame 1 / glue up", (Held("C-clamp", 4, HOUR),))
    second = job("frame 2 / glue up", (Held("C-clamp", 4, HOUR),))
    rows = released(
        (
            step(1, first, 0, HOUR),
            step(2, job("post / face"), HOUR, 3 * HOUR),
            step(3, second, 3 * HOUR, 4 * HOUR),
        )
    )
    assert [row.release for row in rows] == [None, None, None]


def test_what_cannot_be_broken_off_begins_in_the_morning() -> None:
    # 30 min of a glue-up at 15:45: it begins at 08:00 on the next day.
    glue = job("base / glue up", splittable=False)
    late = 8 * HOUR - HOUR // 4
    *_, last = released((step(1, job("post / face"), 0, late), step(2, glue, DAY, DAY + HOUR // 2)))
    assert last.release is not None
    assert (last.release.reason, last.release.opens.day) == (WHY_EVENING, 2)
    assert waits_in_words(last) == (f"Begin about day 2, 08:00: {WHY_EVENING}",)


@pytest.mark.parametrize("name", ["boot_bench", "step_stool", "panel_door"])
def test_no_step_of_a_plan_begins_before_its_release(name: str) -> None:
    for row in plan_of(name).steps:
        if row.release is not None:
            named = next(s for s in plan_of(name).steps if s.number == row.release.step)
            if row.release.lag:
                assert row.release.over.tenths == named.ends.tenths + row.release.lag
            assert row.starts.tenths >= row.release.opens.tenths >= row.release.over.tenths


def test_saved_minutes_are_set_up_with_walks_and_test_cuts() -> None:
    totals = replace(
        plan_of().totals,
        changeovers=3,
        setup=300,
        part_by_part=PartByPart(changeovers=9, changeover=500, setup=1000, attended=2000),
    )
    assert saved_in_words(totals) == (
        "3 changes of a setting instead of 9 if you made it part by part: 1 h 10 min of setting "
        "up saved, walks and test cuts included"
    )
    table = steps_table(replace(plan_of(), totals=totals), {}, piece().display)
    assert saved_in_words(totals) in " ".join(table.split())


def test_an_evening_that_a_cure_leaves_too_short_is_told_with_the_cure() -> None:
    # Glued until 15:54 on day 1, 24 h: 15:54 on day 2, and 10 min of a coat do not fit before
    # 16:00.  Work goes on until 12:00 on day 2, so that the day seems to have room.
    glue, sand, coat = job("base / glue up"), job("base / sand"), job("base / coat")
    coat = replace(coat, splittable=False)
    glued = 8 * HOUR - 60
    *_, last = released(
        (
            step(1, glue, glued - HOUR, glued),
            step(2, sand, DAY, DAY + 4 * HOUR),
            step(3, coat, 2 * DAY, 2 * DAY + 100),
        ),
        Rule(glue.id, coat.id, "damp from the glue", 24 * HOUR),
    )
    (text,) = waits_in_words(last)
    assert text == (
        "Begin about day 3, 08:00: it has to wait until day 2, 15:54 (damp from the glue); from "
        f"then on {WHY_EVENING}"
    )
