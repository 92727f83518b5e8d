"""The best there is, by trying everything: no rule of the engine is used, and none of its code."""

from collections.abc import Iterator
from dataclasses import replace
from functools import cache
from itertools import product

from tests.property.order_lots import GRID

from dryfit.order import Axis, Problem, Range, Task, Value

NEVER = 10**9

Standing = tuple[tuple[tuple[str, str], Value], ...]


def alternatives(problem: Problem) -> Iterator[Problem]:
    """What is left of a problem, by every way to pick one option of each choice."""
    optional = {task for choice in problem.choices for o in choice.options for task in o.tasks}
    for options in product(*(choice.options for choice in problem.choices)):
        gone = optional - {task for option in options for task in option.tasks}
        yield replace(
            problem,
            tasks=tuple(task for task in problem.tasks if task.id not in gone),
            precedences=tuple(
                rule for rule in problem.precedences if not {rule.before, rule.after} & gone
            ),
            choices=(),
        )


def fewest(problem: Problem) -> int:
    """Least changeover of any valid order; NEVER if there is none.

    Every task is tried next, from every state, at every whole number of its ranges.
    """
    before = {
        task.id: {e.before for e in problem.precedences if e.after == task.id}
        for task in problem.tasks
    }
    axes = {(s.name, a.name): a for s in problem.stations for a in s.axes}
    price = {key: prices(problem, *key, axis) for key, axis in axes.items()}

    @cache
    def rest(done: frozenset[str], standing: Standing, here: str) -> int:
        if len(done) == len(problem.tasks):
            return 0
        best = NEVER
        for task in problem.tasks:
            if task.id in done or not before[task.id] <= done or torn(problem, done, task, here):
                continue
            for after, cost in settings(task, dict(standing), price):
                if cost < best:
                    best = min(best, cost + rest(done | {task.id}, after, task.station))
        return best

    start = tuple(sorted((((s, a), v) for s, a, v in problem.standing), key=repr))
    return rest(frozenset(), start, "")


def torn(problem: Problem, done: frozenset[str], task: Task, here: str) -> bool:
    """Whether to do a task now would interrupt the visit of a together group."""
    begun = {t.together for t in problem.tasks if t.id in done} - {None}
    bound = {t.station for t in problem.tasks if t.id not in done and t.together in begun}
    return bool(bound) and (bound != {task.station} or here != task.station)


Prices = dict[tuple[Value | None, Value], int]


def settings(
    task: Task, standing: dict[tuple[str, str], Value], price: dict[tuple[str, str], Prices]
) -> Iterator[tuple[Standing, int]]:
    """What may stand when a task is done, and what that costs: all ways to meet its demands."""
    ways: list[tuple[dict[tuple[str, str], Value], int]] = [(standing, 0)]
    for axis, demanded in task.demands:
        key = task.station, axis
        ways = [
            ({**after, key: value}, cost + price[key][after.get(key), value])
            for after, cost in ways
            for value in possible(demanded)
        ]
    for after, cost in ways:
        yield tuple(sorted(after.items(), key=repr)), cost


def possible(demanded: Value) -> tuple[Value, ...]:
    """All values that meet a demand, of numbers the whole ones."""
    if isinstance(demanded, str):
        return (demanded,)
    high = GRID if demanded.high is None else int(demanded.high)
    return tuple(Range(n, n, demanded.of) for n in range(int(demanded.low), high + 1))


def prices(problem: Problem, station: str, name: str, axis: Axis) -> Prices:
    """Cheapest way between any two values, by way of any values, by trying all ways."""
    exact = {(old, new): cost for old, new, cost in axis.between}
    values = [value for s, a, value in problem.standing if (s, a) == (station, name)]
    for task in problem.tasks:
        for axis_name, demanded in task.demands:
            if (task.station, axis_name) == (station, name):
                values += possible(demanded)
    values += [value for pair in exact for value in pair if value is not None]
    names = frozenset(value for value in values if isinstance(value, str))

    def way(now: str | None, new: str, left: frozenset[str]) -> int:
        found = [exact.get((now, new), axis.change)]
        found += [exact.get((now, via), axis.change) + way(via, new, left - {via}) for via in left]
        return min(found)

    table: Prices = {}
    for new in values:
        for old in (None, *values):
            table[old, new] = axis.change
            if isinstance(new, str) and not isinstance(old, Range):
                table[old, new] = way(old, new, names - {old, new})
            if old == new:
                table[old, new] = 0
    return table
