"""Whoever looks on changes nothing, and an interrupt leaves the best order so far."""

from dataclasses import replace

import pytest
from tests.benchmarks.reading import read_shop
from tests.unit.order.shops import bench_problem

from dryfit.order import Glimpse, Problem, Task, first_orders, solve, violations, watching

QUICK = 20


@pytest.fixture(scope="module")
def problem() -> Problem:
    return read_shop("s11_3", walk=10)


def test_a_watch_is_told_of_the_best_so_far_and_changes_nothing(problem: Problem) -> None:
    seen: list[Glimpse] = []
    result = solve(problem, effort=QUICK, watch=seen.append)
    assert result == solve(problem, effort=QUICK)
    costs = [4 * glimpse.setup + glimpse.waiting for glimpse in seen]
    assert costs == sorted(costs, reverse=True)
    assert len(set(costs)) > 1
    assert 4 * result.totals.setup + result.totals.waiting <= costs[-1]
    assert all(glimpse.bound <= glimpse.changeover <= glimpse.setup for glimpse in seen)


@pytest.mark.parametrize("k", [1, 4, 100])
@pytest.mark.parametrize("last", [1, 3])
def test_an_interrupt_keeps_the_best_order_so_far(problem: Problem, k: int, last: int) -> None:
    seen: list[Glimpse] = []

    def watch(glimpse: Glimpse) -> None:
        seen.append(glimpse)
        if len(seen) == last:
            raise KeyboardInterrupt

    result = solve(problem, k=k, effort=QUICK, watch=watch)
    assert result.ended_early
    assert violations(problem, result) == ()
    totals = result.totals
    assert Glimpse(totals.changeover, totals.setup, totals.waiting, result.lower_bound) == seen[-1]


def test_a_search_that_is_not_interrupted_does_not_say_so(problem: Problem) -> None:
    assert not solve(problem, effort=0).ended_early


def test_an_interrupt_before_any_order_passes_through(monkeypatch: pytest.MonkeyPatch) -> None:
    def interrupted(*_: object) -> object:
        raise KeyboardInterrupt

    monkeypatch.setattr(first_orders, "search", interrupted)
    with pytest.raises(KeyboardInterrupt):
        solve(bench_problem(Task("a", "bench", (), 1)))


def test_walks_and_trials_are_not_changeover(monkeypatch: pytest.MonkeyPatch) -> None:
    """Two tasks, 1 walk of 10, 1 trial of 15, blade 30 and height 10: worked by hand."""
    tasks = (
        Task("a", "saw", (("blade", "1"),), 1, trial="test laps"),
        Task("b", "saw", (("height", "1"),), 1),
    )
    monkeypatch.setattr(watching, "EVERY", 1)
    seen: list[Glimpse] = []
    problem = replace(bench_problem(*tasks), walk=10)
    unused = {**problem.trials, "of no task": 500}
    solve(replace(problem, trials=unused), watch=seen.append)
    assert seen[0] == Glimpse(changeover=40, setup=65, waiting=0, bound=40)
