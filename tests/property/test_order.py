"""The order engine against exhaustive search on tiny problems with everything in them."""

import random
from functools import cache
from itertools import permutations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.unit.order.shops import random_problem

from dryfit.order import (
    Axis,
    Precedence,
    Problem,
    Station,
    Task,
    Unsolvable,
    changeover_bound,
    evaluate,
    solve,
    violations,
)
from dryfit.order.beam import Beam, search
from dryfit.order.bound import bound_of
from dryfit.order.instance import compiled

INFINITE = Beam(width=None, moves=None, weight=10, walking=False)
NEVER = 10**9


def fewest(problem: Problem) -> int:
    """Least changeover by trying every task next, from every state; NEVER if none can be done.

    No rule of the engine is used: one task at a time, states are the finished tasks, the axes
    and the station, and costs are shortest ways found by trying.
    """
    tasks = problem.tasks
    axes = {(s.name, a.name): a for s in problem.stations for a in s.axes}
    before: dict[str, set[str]] = {task.id: set() for task in tasks}
    for edge in problem.precedences:
        before[edge.after].add(edge.before)

    @cache
    def change(station: str, axis: str, old: str | None, new: str) -> int:
        return shortest(problem, station, axes[station, axis], old, new)

    @cache
    def rest(done: frozenset[str], standing: frozenset[tuple[str, str, str]], here: str) -> int:
        if len(done) == len(tasks):
            return 0
        begun = {t.together for t in tasks if t.id in done} - {None}
        bound = {t.station for t in tasks if t.id not in done and t.together in begun}
        values = {(station, axis): value for station, axis, value in standing}
        best = NEVER
        for task in tasks:
            if task.id in done or not before[task.id] <= done or not bound <= {task.station}:
                continue
            if bound and here != task.station:
                continue
            after, cost = dict(values), 0
            for axis, value in task.demands:
                assert isinstance(value, str)
                old = values.get((task.station, axis))
                cost += change(task.station, axis, old, value) if old != value else 0
                after[task.station, axis] = value
            now_standing = frozenset((s, a, v) for (s, a), v in after.items())
            best = min(best, cost + rest(done | {task.id}, now_standing, task.station))
        return best

    return rest(frozenset(), frozenset(), "")


def shortest(problem: Problem, station: str, axis: Axis, old: str | None, new: str) -> int:
    """Cheapest way between two values, by way of any values, by trying all ways."""
    exact = {(o, n): cost for o, n, cost in axis.between}
    values = {
        value
        for t in problem.tasks
        if t.station == station
        for value in dict(t.demands).values()
        if isinstance(value, str)
    }
    values |= {value for pair in exact for value in pair if value is not None}

    def way(now: str | None, left: frozenset[str]) -> int:
        ways = [exact.get((now, new), axis.change)]
        ways += [
            exact.get((now, via), axis.change) + way(via, left - {via}) for via in sorted(left)
        ]
        return min(ways)

    return way(old, frozenset(values - {old, new}))


@st.composite
def problems(draw: st.DrawFn) -> Problem:
    """Changeover only: up to six tasks, two stations, precedences, matrices, together groups."""
    values = "abc"
    cost = st.integers(0, 9)
    stations = []
    for name in ("saw", "router"):
        axes = []
        for axis in draw(st.sampled_from(((), ("x",), ("x", "y")))):
            pairs = draw(
                st.lists(
                    st.tuples(st.sampled_from((None, *values)), st.sampled_from(values)),
                    max_size=4,
                    unique=True,
                )
            )
            between = tuple((old, new, draw(cost)) for old, new in pairs if old != new)
            axes.append(Axis(axis, draw(cost), between))
        stations.append(Station(name, tuple(axes)))
    tasks = []
    for number in range(draw(st.integers(1, 6))):
        station = draw(st.sampled_from(stations))
        wanted = [(a.name, draw(st.sampled_from(("", *values)))) for a in station.axes]
        group = draw(st.sampled_from((None, None, "g", "h")))
        tasks.append(
            Task(
                id=str(number),
                station=station.name,
                demands=tuple((axis, value) for axis, value in wanted if value),
                work=1,
                together=group and f"{station.name} {group}",
            )
        )
    pairs_of = [(i, j) for j in range(len(tasks)) for i in range(j)]
    chosen = draw(st.lists(st.sampled_from(pairs_of), max_size=7, unique=True)) if pairs_of else []
    precedences = tuple(Precedence(str(i), str(j), 0, "by lot") for i, j in chosen)
    return Problem(tuple(stations), tuple(draw(st.permutations(tasks))), precedences)


@given(problems())
def test_an_infinite_beam_finds_the_fewest_and_no_bound_exceeds_them(problem: Problem) -> None:
    optimum = fewest(problem)
    try:
        bound = changeover_bound(problem)
    except Unsolvable:
        assert optimum == NEVER
        return
    instance = compiled(problem)
    found = search(instance, bound_of(instance), INFINITE)
    assert (found.spent, found.complete) == (optimum, True)
    assert bound <= optimum
    result = solve(problem, effort=5)
    assert violations(problem, result) == ()
    assert bound <= result.lower_bound <= optimum <= result.totals.changeover


@pytest.mark.parametrize("start", range(0, 200, 20))
def test_two_hundred_random_problems_with_time(start: int) -> None:
    """Fewest changeovers exact, valid schedules, and the weighted time near the best order's."""
    excess = []
    for seed in range(start, start + 20):
        problem = random_problem(seed)
        valid = [
            order
            for order in permutations(task.id for task in problem.tasks)
            if not violations(problem, order)
        ]
        if not valid:
            with pytest.raises(Unsolvable):
                solve(problem)
            continue
        result = solve(problem, effort=60)
        assert violations(problem, result) == ()
        totals = [evaluate(problem, order)[1] for order in valid]
        optimum = min(total.changeover for total in totals)
        assert result.lower_bound <= optimum
        instance = compiled(problem)
        assert search(instance, bound_of(instance), INFINITE).spent == optimum
        best = min(4 * total.setup + total.waiting for total in totals)
        ours = 4 * result.totals.setup + result.totals.waiting
        assert ours >= best
        excess.append((ours - best) / max(best, 1))
    assert sum(excess) <= 0.02 * len(excess)


@given(st.integers(0, 10**6), st.randoms(use_true_random=False))
def test_every_valid_order_is_decoded_to_a_valid_schedule(seed: int, rng: random.Random) -> None:
    problem = random_problem(seed, groups=False)
    left = {task.id for task in problem.tasks}
    order: list[str] = []
    while left:
        waiting = {edge.after for edge in problem.precedences if edge.before in left}
        order.append(rng.choice(sorted(left - waiting)))
        left.remove(order[-1])
    schedule, totals = evaluate(problem, order)
    assert violations(problem, order) == ()
    assert violations(problem, schedule) == ()
    assert totals.attended + totals.waiting <= totals.elapsed
