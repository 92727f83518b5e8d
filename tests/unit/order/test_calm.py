"""A plan made again from the previous order: calm, never dearer, and at rest.

The shares are those of the project's experiment (issue 7), in a small version: fewer than one in a
hundred pairs change their turn when one operation gets another setting.
"""

from dataclasses import replace
from itertools import combinations

import pytest
from tests.benchmarks.reading import read_shop
from tests.property.order_lots import lot
from tests.unit.order.shops import EIGHT_TO_FOUR, random_problem

from dryfit.order import (
    Choice,
    Hold,
    Option,
    Problem,
    Resource,
    Result,
    Station,
    Task,
    Unsolvable,
    evaluate,
    solve,
    violations,
)

NAMES = ("s11_5", "s1_5")


def cost(result: Result) -> int:
    return 4 * (result.totals.setup + result.totals.work) + result.totals.waiting


def edited(problem: Problem, number: int) -> Problem:
    """One operation with a setting of its own on its last axis."""
    tasks = list(problem.tasks)
    at = [i for i, task in enumerate(tasks) if task.demands][number]
    *others, (axis, _) = tasks[at].demands
    tasks[at] = replace(tasks[at], demands=(*others, (axis, "a new value")))
    return replace(problem, tasks=tuple(tasks))


def inverted(old: tuple[str, ...], new: tuple[str, ...]) -> float:
    """Share of the pairs of tasks that changed their turn."""
    place = {name: i for i, name in enumerate(new)}
    pairs = list(combinations([name for name in old if name in place], 2))
    return sum(place[a] > place[b] for a, b in pairs) / len(pairs)


@pytest.mark.parametrize("name", NAMES)
def test_one_edit_moves_little_and_loses_nothing(name: str) -> None:
    problem = read_shop(name, EIGHT_TO_FOUR, walk=10)
    old = solve(problem, effort=30)
    for number in (3, 17, 29):
        changed = edited(problem, number)
        new = solve(changed, effort=30, previous=old.order)
        assert violations(changed, new) == ()
        kept = evaluate(changed, old.order)[1]
        assert 4 * new.totals.setup + new.totals.waiting <= 4 * kept.setup + kept.waiting
        assert inverted(old.order, new.order) < 0.01


@pytest.mark.parametrize("name", NAMES)
def test_solving_again_changes_nothing(name: str) -> None:
    problem = read_shop(name, EIGHT_TO_FOUR, walk=10)
    first = solve(problem, effort=5)
    again = solve(problem, effort=30, previous=first.order)
    assert cost(again) <= cost(first)
    assert solve(problem, effort=30, previous=again.order).order == again.order


def test_gone_tasks_are_dropped_and_new_ones_find_a_place() -> None:
    problem = read_shop("s11_5")
    names = [task.id for task in problem.tasks]
    gone = {names[7], names[40]}
    smaller = replace(
        problem,
        tasks=tuple(task for task in problem.tasks if task.id not in gone),
        precedences=tuple(
            edge for edge in problem.precedences if not {edge.before, edge.after} & gone
        ),
    )
    old = solve(problem, effort=20)
    without = solve(smaller, effort=20, previous=old.order)
    assert violations(smaller, without) == ()
    assert inverted(old.order, without.order) < 0.05
    back = solve(problem, effort=20, previous=without.order)
    assert violations(problem, back) == ()


def test_tiny_problems_with_everything_in_them_come_to_rest() -> None:
    for seed in range(30):
        for problem in (random_problem(seed), lot(seed)):
            try:
                first = solve(problem, effort=0)
            except Unsolvable:
                continue
            assert violations(problem, first) == ()
            again = solve(problem, effort=20, previous=first.order)
            assert violations(problem, again) == ()
            assert again.picks == first.picks
            assert cost(again) <= cost(first)
            assert solve(problem, effort=20, previous=again.order).order == again.order


def test_an_order_of_an_option_that_has_become_impossible_is_passed_over() -> None:
    glued = Task("glue", "bench", (), 10, holds=(Hold("clamp", 4, 0),))
    problem = Problem(
        stations=(Station("bench"),),
        tasks=(glued, Task("screw", "bench", (), 30)),
        resources=(Resource("clamp", 4),),
        choices=(Choice("joint", (Option("glued", ("glue",)), Option("screwed", ("screw",)))),),
    )
    old = solve(problem)
    assert old.order == ("glue",)
    fewer = replace(problem, resources=(Resource("clamp", 3),))
    assert solve(fewer, previous=old.order).order == ("screw",)


def test_an_order_that_tells_nothing_is_no_hindrance() -> None:
    problem = read_shop("s11_3")
    assert violations(problem, solve(problem, effort=5, previous=("nothing", "known"))) == ()
