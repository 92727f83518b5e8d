"""The search for a cheap path, held against published figures and what must not be lost."""

from dataclasses import replace
from itertools import pairwise

import pytest
from tests.benchmarks.reading import length, raised, read_ordering

from dryfit.order import Glimpse, Precedence, Problem, solve, violations
from dryfit.order.instance import compiled
from dryfit.order.sequencing import is_path, never_waits, sequenced
from dryfit.order.watching import Lookout

BEST = {"ESC25": 1681, "br17.12": 55}  # tests/published/sop/README.md


def changeover(problem: Problem, order: tuple[int, ...]) -> int:
    instance = compiled(problem)
    (axis,) = instance.axes
    values = [instance.standing[0], *(instance.demands[task][0][1] for task in order)]
    return sum(axis.costs[old][new] for old, new in pairwise(values))


@pytest.mark.parametrize("name", BEST)
def test_the_published_best_is_reached_from_any_order(name: str) -> None:
    problem = read_ordering(name)
    instance = compiled(problem)
    assert is_path(instance)
    assert never_waits(instance)
    lookout = Lookout(100, None)
    order, work = sequenced(instance, instance.topological, 10_000, lookout)
    assert work == 10_000
    assert changeover(problem, order) == BEST[name] + raised(name)
    assert lookout.kept is not None
    assert lookout.kept.score[-1] == order


def test_the_same_is_found_again_and_nothing_dearer_than_the_order_given() -> None:
    problem = read_ordering("ESC25")
    instance = compiled(problem)
    first, _ = sequenced(instance, instance.topological, 100, Lookout(100, None))
    again, _ = sequenced(instance, instance.topological, 100, Lookout(100, None))
    assert first == again
    more, _ = sequenced(instance, first, 10, Lookout(100, None))
    assert changeover(problem, more) <= changeover(problem, first)


def test_what_is_found_is_kept_when_the_search_is_ended() -> None:
    problem = read_ordering("ESC25")
    seen: list[Glimpse] = []

    def end_soon(glimpse: Glimpse) -> None:
        seen.append(glimpse)
        if len(seen) == 8:
            raise KeyboardInterrupt

    result = solve(problem, k=100, watch=end_soon)
    assert result.status == "stopped early"
    assert violations(problem, result) == ()
    assert length("ESC25", result.order) < seen[0].changeover - raised("ESC25")


def test_a_path_may_have_waits() -> None:
    problem = read_ordering("br17.10")
    first, second = problem.tasks[:2]
    edge = Precedence(first.id, second.id, 50, "the paint is dry")
    lagged = replace(problem, precedences=(*problem.precedences, edge))
    assert is_path(compiled(lagged))
    assert not never_waits(compiled(lagged))
    result = solve(lagged, effort=10)
    assert violations(lagged, result) == ()
