from collections.abc import Iterable
from dataclasses import replace

import pytest
from tests.unit.order.shops import EIGHT_TO_FOUR, bench_problem

from dryfit.order import (
    ROUND_THE_CLOCK,
    Axis,
    Calendar,
    Hold,
    Precedence,
    Problem,
    Station,
    Task,
    Unsolvable,
    changeover_bound,
    cycle,
    solve,
)

CUT = Task("cut", "saw", (("blade", "rip"),), 10)
MARK = Task("mark", "bench", (), 10)
PARE = Task("pare", "bench", (), 10)


def rules(*pairs: str) -> tuple[Precedence, ...]:
    """Precedences from "a < b"."""
    split = ((pair, *pair.split(" < ")) for pair in pairs)
    return tuple(Precedence(before, after, 0, f"why {pair}") for pair, before, after in split)


def chains(edges: Iterable[Precedence]) -> list[str]:
    return [f"{edge.before} < {edge.after}" for edge in edges]


@pytest.mark.parametrize(
    ("problem", "message"),
    [
        (bench_problem(CUT, CUT), "task cut occurs twice"),
        (bench_problem(replace(CUT, station="lathe")), "cut: no station lathe"),
        (bench_problem(replace(CUT, demands=(("fence", "1"),))), "cut: saw has no axis fence"),
        (bench_problem(replace(CUT, demands=(("blade", "1"),) * 2)), "demand blade occurs twice"),
        (bench_problem(replace(CUT, work=-1)), "cut: -1 is below nothing"),
        (bench_problem(replace(CUT, trial="laps")), "cut: no trial laps"),
        (bench_problem(replace(CUT, holds=(Hold("cramp", 1, 0),))), "cut: no resource cramp"),
        (
            bench_problem(replace(CUT, holds=(Hold("clamp", 7, 0),))),
            "cut holds 7 of clamp, of which there are 6",
        ),
        (
            bench_problem(replace(CUT, splittable=False, work=4801)),
            "may not be interrupted and is longer than the working day",
        ),
        (bench_problem(CUT, precedences=rules("cut < glue")), "names glue, which is no task"),
        (bench_problem(calendar=Calendar(9600, 4800)), "must open before it closes"),
        (
            bench_problem(calendar=Calendar(4800, 9600, frozenset(range(7)))),
            "at least one weekday is worked",
        ),
        (bench_problem(calendar=Calendar(4800, 9600, first_weekday=7)), "weekday of day 1"),
        (Problem((Station("saw"), Station("saw")), ()), "station saw occurs twice"),
        (
            Problem((Station("saw", (Axis("blade", 1, (("a", "a", 1),)),)),), ()),
            "saw, blade: keeping a value costs nothing",
        ),
        (
            Problem((Station("saw", (Axis("blade", 1, (("a", "b", 1), ("a", "b", 2))),)),), ()),
            "a to b occurs twice",
        ),
        (Problem((Station("saw", (Axis("blade", -1),)),), ()), "-1 is below nothing"),
    ],
)
def test_a_problem_that_is_not_well_formed_is_refused(problem: Problem, message: str) -> None:
    with pytest.raises(Unsolvable, match=message):
        changeover_bound(problem)


def test_the_longest_task_without_interruption_fills_a_day() -> None:
    problem = bench_problem(replace(CUT, splittable=False, work=4800))
    assert solve(problem).schedule.entries[0].start == 14_400
    longer = replace(CUT, splittable=False, work=100_000)
    assert solve(bench_problem(longer, calendar=ROUND_THE_CLOCK)).totals.work == 100_000


def test_a_circle_is_told_with_its_reasons() -> None:
    problem = bench_problem(
        CUT,
        MARK,
        PARE,
        precedences=rules("cut < mark", "mark < pare", "pare < cut"),
    )
    chain = cycle(problem)
    assert chain is not None
    assert chains(chain) == ["cut < mark", "mark < pare", "pare < cut"]
    with pytest.raises(Unsolvable) as caught:
        solve(problem)
    assert caught.value.chain == chain
    assert caught.value.names == ("cut", "mark", "pare")
    assert "cut before mark (why cut < mark)" in str(caught.value)


def test_the_shortest_of_several_circles_is_told() -> None:
    problem = bench_problem(
        CUT,
        MARK,
        PARE,
        precedences=rules("cut < mark", "mark < pare", "pare < cut", "pare < mark"),
    )
    assert chains(cycle(problem) or ()) == ["mark < pare", "pare < mark"]


def test_a_task_before_itself_is_a_circle() -> None:
    assert chains(cycle(bench_problem(CUT, precedences=rules("cut < cut"))) or ()) == ["cut < cut"]


def test_no_circle_is_none() -> None:
    assert cycle(bench_problem(CUT, MARK, precedences=rules("cut < mark"))) is None


def in_one_visit(*names: str) -> tuple[Task, ...]:
    return tuple(Task(name, "saw", (), 10, together="laps") for name in names)


def test_one_visit_cannot_be_at_two_stations() -> None:
    problem = bench_problem(*in_one_visit("post lap"), replace(MARK, together="laps"))
    with pytest.raises(Unsolvable, match="laps: one visit cannot be at bench and saw") as caught:
        solve(problem)
    assert caught.value.names == ("post lap", "mark")


def test_work_elsewhere_that_must_come_between_a_visit_is_told_with_the_chain() -> None:
    problem = bench_problem(
        *in_one_visit("post lap", "rail lap"),
        MARK,
        precedences=rules("post lap < mark", "mark < rail lap"),
    )
    with pytest.raises(Unsolvable, match="one visit") as caught:
        solve(problem)
    chain = caught.value.chain
    assert chains(chain) == ["mark < rail lap", "rail lap < post lap", "post lap < mark"]
    assert [edge.reason for edge in chain][1] == "one visit: laps"


def test_two_visits_that_each_need_the_other_first_are_refused() -> None:
    problem = bench_problem(
        *in_one_visit("a", "b"),
        Task("c", "bench", (), 10, together="fits"),
        Task("d", "bench", (), 10, together="fits"),
        precedences=rules("a < c", "d < b"),
    )
    with pytest.raises(Unsolvable, match="kept apart"):
        solve(problem)


def test_two_visits_at_one_station_may_become_one() -> None:
    problem = bench_problem(
        *in_one_visit("a", "b"),
        Task("c", "saw", (), 10, together="fits"),
        Task("d", "saw", (), 10, together="fits"),
        MARK,
        precedences=rules("a < c", "d < b", "mark < d"),
        calendar=EIGHT_TO_FOUR,
        walk=10,
    )
    assert solve(problem).order[0] == "mark"
