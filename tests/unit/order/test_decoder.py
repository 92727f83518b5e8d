"""Schedules worked out by hand. An hour is 600 tenths; day 1 is a Monday and opens at 0."""

from dataclasses import replace

import pytest
from tests.unit.order.shops import EIGHT_TO_FOUR, bench_problem

from dryfit.order import (
    ROUND_THE_CLOCK,
    Axis,
    Entry,
    Hold,
    Precedence,
    Problem,
    Resource,
    Station,
    Task,
    Totals,
    Unsolvable,
    evaluate,
    violations,
)
from dryfit.order.problem import DAY

HOUR = 600


def entries_of(problem: Problem, *order: str) -> tuple[tuple[Entry, ...], Totals]:
    schedule, totals = evaluate(problem, order)
    assert violations(problem, schedule) == ()
    return schedule.entries, totals


def test_an_axis_is_paid_for_when_it_gets_another_value() -> None:
    problem = bench_problem(
        Task("rip", "saw", (("blade", "rip"), ("height", "30")), 50),
        Task("trim", "saw", (("blade", "rip"),), 20),
        Task("lap", "saw", (("blade", "dado"), ("height", "30")), 40),
    )
    entries, totals = entries_of(problem, "rip", "trim", "lap")
    assert [entry.changed for entry in entries] == [("blade", "height"), (), ("blade",)]
    assert [entry.changeover for entry in entries] == [40, 0, 30]
    assert [(entry.start, entry.end) for entry in entries] == [(40, 90), (90, 110), (140, 180)]
    assert (totals.changeovers, totals.changeover, totals.work) == (3, 70, 110)
    assert (totals.attended, totals.waiting, totals.elapsed) == (180, 0, 180)


def test_every_change_of_station_is_a_walk_the_first_one_too() -> None:
    # TRADE's model of the boot bench pays a walk to the first machine
    problem = bench_problem(
        Task("mark", "bench", (), 10),
        Task("pare", "bench", (), 10),
        Task("rip", "saw", (), 10),
        walk=10,
    )
    entries, totals = entries_of(problem, "mark", "rip", "pare")
    assert [entry.walk for entry in entries] == [10, 10, 10]
    _, fewer = entries_of(problem, "mark", "pare", "rip")
    assert (totals.walk, fewer.walk, fewer.setup, fewer.changeover) == (30, 20, 20, 0)


def test_test_cuts_are_paid_by_the_first_of_their_group() -> None:
    problem = bench_problem(
        Task("post laps", "saw", (), 10, trial="test laps"),
        Task("rail laps", "saw", (), 10, trial="test laps"),
    )
    entries, totals = entries_of(problem, "rail laps", "post laps")
    assert [entry.trial for entry in entries] == [15, 0]
    assert (totals.trial, totals.setup, totals.changeovers) == (15, 15, 0)


def test_a_cure_runs_over_the_night() -> None:
    problem = bench_problem(
        Task("glue", "glue bench", (), 7 * HOUR),
        Task("level", "bench", (), HOUR),
        precedences=(Precedence("glue", "level", 12 * HOUR, "the glue cures"),),
    )
    entries, totals = entries_of(problem, "glue", "level")
    # 15:00 + 12 h is 03:00: the next morning at 08:00, with one hour of day 1 left over
    assert entries[1].start == DAY
    assert (entries[1].waiting, totals.waiting) == (HOUR, HOUR)
    assert totals.elapsed == DAY + HOUR


def test_a_cure_that_outlasts_the_night_is_waited_for_in_the_morning() -> None:
    problem = bench_problem(
        Task("glue", "glue bench", (), 7 * HOUR),
        Task("level", "bench", (), HOUR),
        precedences=(Precedence("glue", "level", 18 * HOUR, "the glue cures"),),
    )
    entries, totals = entries_of(problem, "glue", "level")
    assert entries[1].start == DAY + HOUR
    assert totals.waiting == 2 * HOUR


def test_work_goes_on_in_the_morning() -> None:
    problem = bench_problem(Task("sand", "bench", (), 10 * HOUR))
    entries, totals = entries_of(problem, "sand")
    assert (entries[0].start, entries[0].end) == (0, DAY + 2 * HOUR)
    assert totals.waiting == 0


def test_a_glue_up_that_does_not_fit_into_the_day_is_begun_the_next_morning() -> None:
    problem = bench_problem(
        Task("sand", "bench", (), 7 * HOUR + 1),
        Task("glue", "glue bench", (), HOUR, splittable=False),
    )
    entries, totals = entries_of(problem, "sand", "glue")
    assert entries[1].start == DAY
    assert totals.waiting == HOUR - 1


def test_a_glue_up_that_just_fits_ends_at_closing_time() -> None:
    problem = bench_problem(
        Task("sand", "bench", (), 7 * HOUR),
        Task("glue", "glue bench", (), HOUR, splittable=False),
    )
    entries, totals = entries_of(problem, "sand", "glue")
    assert (entries[1].end, totals.elapsed, totals.waiting) == (8 * HOUR, 8 * HOUR, 0)


def test_the_weekend_is_skipped_but_glue_cures() -> None:
    problem = bench_problem(
        Task("sand", "bench", (), 5 * 8 * HOUR),
        Task("coat", "bench", (), HOUR),
        precedences=(Precedence("sand", "coat", 24 * HOUR, "raised grain dries"),),
    )
    entries, totals = entries_of(problem, "sand", "coat")
    assert entries[1].start == 7 * DAY
    assert totals.waiting == 0


def test_clamps_in_use_make_the_next_stage_wait() -> None:
    stage = (Hold("clamp", 4, HOUR),)
    problem = bench_problem(
        Task("first frame", "glue bench", (), 200, holds=stage),
        Task("second frame", "glue bench", (), 200, holds=stage),
    )
    entries, totals = entries_of(problem, "first frame", "second frame")
    assert entries[1].start == 200 + HOUR
    assert totals.waiting == HOUR


def test_enough_clamps_make_nobody_wait() -> None:
    stage = (Hold("clamp", 4, HOUR),)
    problem = bench_problem(
        Task("first frame", "glue bench", (), 200, holds=stage),
        Task("second frame", "glue bench", (), 200, holds=stage),
        clamps=8,
    )
    assert entries_of(problem, "first frame", "second frame")[1].waiting == 0


def test_only_as_many_clamps_as_needed_are_waited_for() -> None:
    problem = bench_problem(
        Task("short cure", "glue bench", (), 10, holds=(Hold("clamp", 2, 300),)),
        Task("long cure", "glue bench", (), 10, holds=(Hold("clamp", 4, 900),)),
        Task("next", "glue bench", (), 10, holds=(Hold("clamp", 2, 0),)),
    )
    entries, _ = entries_of(problem, "short cure", "long cure", "next")
    assert entries[2].start == 10 + 300


def with_bars(*tasks: Task, clamps: int = 4, bars: int = 2) -> Problem:
    kinds = (Resource("clamp", clamps, ("bar",)), Resource("bar", bars))
    return replace(bench_problem(*tasks), resources=kinds)


def test_a_longer_clamp_serves_where_the_shorter_are_in_use() -> None:
    stage = (Hold("clamp", 3, HOUR),)
    problem = with_bars(
        Task("first frame", "glue bench", (), 200, holds=stage),
        Task("second frame", "glue bench", (), 200, holds=stage),
        Task("case", "glue bench", (), 100, holds=(Hold("bar", 1, 0),)),
    )
    entries, _ = entries_of(problem, "first frame", "second frame", "case")
    # one clamp is left, and two bars: nobody waits; the case does, until the bars are free again
    assert [entry.instead for entry in entries] == [(), (("clamp", "bar", 2),), ()]
    assert [entry.start for entry in entries] == [0, 200, 400 + HOUR]


def test_longer_clamps_are_left_alone_once_the_shorter_are_free_again() -> None:
    stage = (Hold("clamp", 3, 100),)
    problem = with_bars(
        Task("first frame", "glue bench", (), 200, holds=stage),
        Task("mark", "bench", (), 100),
        Task("second frame", "glue bench", (), 200, holds=stage),
    )
    entries, _ = entries_of(problem, "first frame", "mark", "second frame")
    assert (entries[2].start, entries[2].instead) == (300, ())


def test_more_clamps_of_a_kind_than_there_are_take_longer_ones_too() -> None:
    problem = with_bars(Task("frame", "glue bench", (), 200, holds=(Hold("clamp", 6, 0),)))
    assert entries_of(problem, "frame")[0][0].instead == (("clamp", "bar", 2),)
    fewer = replace(problem, resources=(Resource("clamp", 4, ("bar",)), Resource("bar", 1)))
    with pytest.raises(
        Unsolvable, match="6 of clamp or what serves instead, of which there are 5"
    ) as caught:
        entries_of(fewer, "frame")
    assert caught.value.names == ("frame", "clamp")
    assert (caught.value.needed, caught.value.there) == (6, 5)


def test_nothing_is_done_beside_a_task_for_two() -> None:
    problem = bench_problem(
        Task("fit top", "bench", (), 100, workers=2), Task("mark", "bench", (), 50)
    )
    with pytest.raises(Unsolvable, match="takes 2 workers, of whom there are 1") as caught:
        entries_of(problem, "fit top", "mark")
    assert (caught.value.needed, caught.value.there) == (2, 1)
    entries, _ = entries_of(replace(problem, workers=2), "fit top", "mark")
    assert [entry.start for entry in entries] == [0, 100]


def test_a_holiday_is_skipped_but_glue_cures() -> None:
    problem = bench_problem(
        Task("glue", "glue bench", (), 7 * HOUR),
        Task("level", "bench", (), HOUR),
        precedences=(Precedence("glue", "level", 18 * HOUR, "the glue cures"),),
        calendar=replace(EIGHT_TO_FOUR, closed=frozenset({1})),
    )
    entries, totals = entries_of(problem, "glue", "level")
    # without the holiday it would have to wait until 09:00 of day 2
    assert (entries[1].start, totals.waiting) == (2 * DAY, HOUR)


def test_test_cuts_wait_for_what_the_task_holds() -> None:
    problem = bench_problem(
        Task("coat", "bench", (), 100, holds=(Hold("clamp", 1, HOUR),)),
        Task("saw laps", "saw", (), 50, holds=(Hold("clamp", 4, 0),), trial="test laps"),
        clamps=4,
    )
    entries, totals = entries_of(problem, "coat", "saw laps")
    assert entries[1].start == 100 + HOUR + 15
    assert totals.waiting == HOUR


def test_set_up_is_done_while_waiting() -> None:
    problem = bench_problem(
        Task("glue", "glue bench", (), 100),
        Task("trim", "saw", (("blade", "fine"),), 20),
        precedences=(Precedence("glue", "trim", 100, "out of clamps"),),
        walk=10,
    )
    entries, totals = entries_of(problem, "glue", "trim")
    # ready at 110, walk 10 and blade 30 until 150, the clamps come off at 210
    assert (entries[1].ready, entries[1].start, entries[1].waiting) == (110, 210, 60)
    assert totals.elapsed == 230


def test_a_long_set_up_hides_the_whole_wait() -> None:
    problem = bench_problem(
        Task("glue", "glue bench", (), 100),
        Task("trim", "saw", (("blade", "fine"),), 20),
        precedences=(Precedence("glue", "trim", 25, "out of clamps"),),
    )
    assert entries_of(problem, "glue", "trim")[1].waiting == 0


def test_set_up_goes_on_in_the_morning_as_well() -> None:
    problem = bench_problem(
        Task("sand", "bench", (), 8 * HOUR - 20),
        Task("trim", "saw", (("blade", "fine"),), 20, splittable=False),
    )
    entries, totals = entries_of(problem, "sand", "trim")
    assert (entries[1].start, totals.waiting) == (DAY + 10, 0)


def test_the_plan_is_done_when_the_last_coat_is_dry() -> None:
    problem = bench_problem(Task("coat", "bench", (), 100, after=9000), calendar=ROUND_THE_CLOCK)
    _, totals = entries_of(problem, "coat")
    assert (totals.elapsed, totals.waiting) == (9100, 0)


def test_costs_between_values_replace_the_usual_one_and_are_closed() -> None:
    blade = Axis("blade", 30, ((None, "dado", 80), ("rip", "dado", 90), ("fine", "dado", 10)))
    problem = Problem(
        stations=(Station("saw", (blade,)),),
        tasks=(
            Task("rip", "saw", (("blade", "rip"),), 1),
            Task("lap", "saw", (("blade", "dado"),), 1),
        ),
    )
    # rip to dado by way of fine is 30 + 10, less than 90; so is not set to dado, less than 80
    entries, _ = entries_of(problem, "rip", "lap")
    assert [entry.changeover for entry in entries] == [30, 40]
    entries, _ = entries_of(problem, "lap", "rip")
    assert [entry.changeover for entry in entries] == [40, 30]
