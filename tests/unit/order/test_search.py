from dataclasses import replace

import pytest
from tests.unit.order.shops import random_problem

from dryfit.order import Axis, Precedence, Problem, Station, Task, changeover_bound, solve
from dryfit.order.best_first import best_first
from dryfit.order.bound import bound_of, least_changeover
from dryfit.order.costs import closed_costs, depends_on_entry_only, entry_costs, regrets
from dryfit.order.instance import compiled
from dryfit.order.sets import members
from dryfit.order.states import children, start


def at_the_saw(*heights: str, rules: str = "", axis: Axis = Axis("height", 10)) -> Problem:  # noqa: B008 - frozen
    """Tasks 0, 1, ... that demand heights; rules like "01 12"."""
    return Problem(
        stations=(Station("saw", (axis,)),),
        tasks=tuple(
            Task(str(i), "saw", (("height", height),) if height != "-" else (), 5)
            for i, height in enumerate(heights)
        ),
        precedences=tuple(Precedence(rule[0], rule[1], 0, "by lot") for rule in rules.split()),
    )


@pytest.mark.parametrize(
    ("problem", "least"),
    [
        (at_the_saw("a", "b", "a"), 20),
        (at_the_saw("a", "b", "a", rules="01 12"), 30),
        (at_the_saw("a", "-", "a", rules="01 12"), 10),
        (at_the_saw("a", "b", "a", "b", rules="01 12 23"), 40),
        (at_the_saw("a", "b", "a", "b", rules="01 23"), 20),
        (at_the_saw("-", "-"), 0),
    ],
)
def test_blocks_of_a_value_on_a_chain_are_the_least_changeover(
    problem: Problem, least: int
) -> None:
    assert changeover_bound(problem) == least
    assert solve(problem).totals.changeover == least


def test_with_a_matrix_the_dearest_chain_counts() -> None:
    axis = Axis("height", 10, (("a", "b", 25), ("b", "a", 5)))
    # not set to a 10, a to b: by way of nothing else 25, b to a 5
    assert changeover_bound(at_the_saw("a", "b", "a", rules="01 12", axis=axis)) == 40
    # the cheapest ways in: 5 into a, 10 into b, as order is free
    assert changeover_bound(at_the_saw("a", "b", axis=axis)) <= 15


def test_costs_are_closed_and_not_set_is_no_way_station() -> None:
    costs = closed_costs(
        Axis("x", 50, ((None, "a", 1), ("a", "b", 5), ("b", "c", 5))), tuple("abc")
    )
    assert costs[0] == (0, 1, 6, 11)
    assert costs[1] == (0, 0, 5, 10)
    assert costs[3] == (0, 50, 50, 0)
    assert entry_costs(costs) == (0, 1, 5, 5)
    assert not depends_on_entry_only(costs)


def test_a_regret_is_what_standing_elsewhere_may_cost() -> None:
    even = closed_costs(Axis("x", 7), tuple("ab"))
    assert depends_on_entry_only(even)
    assert regrets(even) == ((0, 7, 7), (0, 0, 7), (0, 7, 0))
    uneven = closed_costs(Axis("x", 7, ((None, "a", 3),)), tuple("ab"))
    assert regrets(uneven)[2][0] == 4


def test_what_needs_no_change_is_done_at_once() -> None:
    instance = compiled(at_the_saw("-", "a", "-", rules="02"))
    first = start(instance, walking=False)
    assert first.order() == (0, 2)
    (last,) = children(instance, first, None, walking=False)
    assert last.order() == (0, 2, 1)


def test_a_change_that_only_replaces_dead_values_is_forced() -> None:
    # "a" is wanted once and hangs on nothing: it is done first, though "b" and "c" are open
    instance = compiled(at_the_saw("a", "b", "c", "b", "c", rules="12 23 34"))
    reached = children(instance, start(instance, walking=False), None, walking=False)
    assert [state.order() for state in reached] == [(0,)]


def test_more_changes_wait_for_fewer() -> None:
    saw = Station("saw", (Axis("blade", 30), Axis("height", 10)))
    tasks = (
        Task("both", "saw", (("blade", "x"), ("height", "h")), 5),
        Task("one", "saw", (("height", "h"),), 5),
        Task("later", "saw", (("height", "h"),), 5),
    )
    problem = Problem((saw,), tasks, (Precedence("both", "later", 0, "by lot"),))
    instance = compiled(problem)
    reached = children(instance, start(instance, walking=False), None, walking=False)
    assert [state.order() for state in reached] == [(1,)]


def test_of_capped_moves_the_cheapest_are_tried() -> None:
    instance = compiled(at_the_saw("a", "b", "a", "b", "a", rules="01 12 34"))
    first = start(instance, walking=False)
    every = children(instance, first, None, walking=False)
    capped = children(instance, first, 1, walking=False)
    assert [state.done for state in capped] == [state.done for state in every[:1]]
    assert len(every) > 1


def test_a_ceiling_leaves_only_cheaper_orders() -> None:
    instance = compiled(at_the_saw("a", "b", "a", rules="01 12"))
    bound = bound_of(instance)
    assert best_first(instance, bound, 100, 31).least == 30
    nothing = best_first(instance, bound, 100, 30)
    assert (nothing.order, nothing.least, nothing.ended) == (None, 30, True)


def test_the_bound_never_falls_short_of_itself_along_an_order() -> None:
    """Spent plus remaining only grows from state to state: the bound is consistent."""
    for seed in range(40):
        instance = compiled(random_problem(seed, groups=False))
        bound = bound_of(instance)
        every = (1 << len(instance.station)) - 1
        state = start(instance, walking=False)
        total = least_changeover(instance, bound)
        while state.done != every:
            left = bound.remaining(every & ~state.done, state.available, state.current)
            assert state.spent + left >= total
            total = state.spent + left
            reached = children(instance, state, None, walking=False)
            state = reached[-1]


def test_tasks_of_a_visit_are_not_torn_apart_to_save_a_change() -> None:
    """The height is shared with work that waits for the bench; the visit comes first or after."""
    problem = Problem(
        stations=(Station("saw", (Axis("height", 10),)), Station("bench")),
        tasks=(
            Task("lap at 27", "saw", (("height", "27"),), 5, together="laps"),
            Task("lap at 30", "saw", (("height", "30"),), 5, together="laps"),
            Task("mark", "bench", (), 5),
            Task("groove at 27", "saw", (("height", "27"),), 5),
        ),
        precedences=(
            Precedence("lap at 27", "lap at 30", 0, "by lot"),
            Precedence("mark", "groove at 27", 0, "by lot"),
        ),
    )
    result = solve(problem)
    assert result.totals.changeover == 20
    assert result.order[0] == "mark"
    apart = replace(
        problem,
        precedences=(*problem.precedences, Precedence("lap at 27", "mark", 0, "by lot")),
    )
    assert solve(apart).totals.changeover == 30


def test_members_of_a_set_come_in_ascending_order() -> None:
    assert list(members(0b101001)) == [0, 3, 5]
