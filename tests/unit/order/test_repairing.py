"""An order of one problem made into one of another that is a little different."""

import random
from dataclasses import replace

from tests.property.order_lots import lot

from dryfit.order import Problem, Task, Unsolvable, changeover_bound, evaluate, solve, violations
from dryfit.order.instance import compiled
from dryfit.order.picks import combinations, picked
from dryfit.order.repairing import repaired


def price(problem: Problem, order: tuple[str, ...]) -> int:
    totals = evaluate(problem, order)[1]
    return 4 * totals.setup + totals.waiting


def sound(seeds: range) -> list[Problem]:
    """Random problems without choices that have a schedule."""
    found = []
    for seed in seeds:
        problem = replace(lot(seed), choices=())
        try:
            changeover_bound(problem)
        except Unsolvable:
            continue
        found.append(problem)
    return found


def test_an_order_of_the_same_problem_stays_as_it_is() -> None:
    for problem in sound(range(20)):
        order = solve(problem, effort=5).order
        assert named(problem, order) == order


def named(problem: Problem, names: tuple[str, ...]) -> tuple[str, ...] | None:
    found = repaired(compiled(problem), names, 4)
    return None if found is None else tuple(problem.tasks[task].id for task in found)


def test_what_is_new_is_put_where_it_costs_least() -> None:
    """Every place that keeps the rules is tried by hand."""
    tried = 0
    for problem in sound(range(60)):
        order = solve(problem, effort=5).order
        last: Task = problem.tasks[-1]
        rest = tuple(name for name in order if name != last.id)
        places = [(*rest[:at], last.id, *rest[at:]) for at in range(len(order))]
        prices = [price(problem, names) for names in places if not violations(problem, names)]
        found = named(problem, rest)
        if found is not None:
            assert violations(problem, found) == ()
            assert price(problem, found) == min(prices)
            tried += 1
    assert tried > 40


def test_what_is_gone_is_dropped_and_what_no_longer_fits_waits() -> None:
    rng = random.Random(7)  # noqa: S311 - lots, not secrets
    for problem in sound(range(40)):
        names = [task.id for task in problem.tasks] + ["gone"]
        rng.shuffle(names)
        found = named(problem, tuple(names))
        assert found is None or violations(problem, found) == ()


def test_to_be_offered_a_choice_makes_no_plan_dearer() -> None:
    for seed in range(60):
        problem = lot(seed)
        try:
            first = solve(picked(problem, next(combinations(problem))), effort=20).totals
        except Unsolvable:
            continue
        totals = solve(problem, effort=20).totals
        ours = 4 * (totals.setup + totals.work) + totals.waiting
        assert ours <= 4 * (first.setup + first.work) + first.waiting
