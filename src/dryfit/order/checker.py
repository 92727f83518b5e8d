"""An independent check of orders and results: it reads the problem and the answer, nothing else.

No code is shared with the search, the bound or the decoder: costs are looked up by name, and
times are followed day by day.
"""

from collections import Counter
from collections.abc import Sequence
from dataclasses import replace

from dryfit.order.checker_times import time_violations
from dryfit.order.problem import Axis, Problem, Task, Value
from dryfit.order.result import Entry, Result, Schedule

Costs = dict[tuple[Value | None, Value], int]


def violations(problem: Problem, answer: Result | Schedule | Sequence[str]) -> tuple[str, ...]:
    """What is wrong with an order, a schedule or a result, in words; empty if nothing is.

    An order (task ids) is checked for completeness, precedences and together groups; a schedule
    also for settings, set-up, lags, resources and working hours; a result also for its totals
    and for what it claims of the lower bound.
    """
    if problem.choices:
        return _violated_choices(problem, answer)
    if isinstance(answer, Result):
        if answer.order != tuple(entry.task for entry in answer.schedule.entries):
            return ("the order is not that of the schedule",)
        found = violations(problem, answer.schedule)
        return found or (*_wrong_sums(problem, answer), *_wrong_claims(answer))
    if isinstance(answer, Schedule):
        found = violations(problem, tuple(entry.task for entry in answer.entries))
        return found or (
            *_wrong_setup(problem, answer.entries),
            *time_violations(problem, answer.entries),
        )
    return _wrong_names(problem, answer) or (
        *_broken_precedences(problem, answer),
        *_broken_visits(problem, answer),
    )


def _violated_choices(
    problem: Problem, answer: Result | Schedule | Sequence[str]
) -> tuple[str, ...]:
    """What is wrong with what was picked, else with the answer to what is left of the problem."""
    order = answer
    if isinstance(answer, Result):
        order = answer.order
    elif isinstance(answer, Schedule):
        order = tuple(entry.task for entry in answer.entries)
    assert not isinstance(order, Result | Schedule)
    named = set(order)
    undone: set[str] = set()
    for choice in problem.choices:
        of_choice = {task for option in choice.options for task in option.tasks}
        fitting = [option for option in choice.options if set(option.tasks) == of_choice & named]
        if isinstance(answer, Result):
            pick = dict(answer.picks).get(choice.name)
            fitting = [option for option in fitting if option.name == pick]
        if not fitting:
            return (f"{choice.name}: no option that is picked takes just the tasks of the order",)
        undone |= of_choice - named
    return violations(_left_of(problem, undone), answer)


def _left_of(problem: Problem, undone: set[str]) -> Problem:
    return replace(
        problem,
        tasks=tuple(task for task in problem.tasks if task.id not in undone),
        precedences=tuple(
            edge for edge in problem.precedences if undone.isdisjoint((edge.before, edge.after))
        ),
        choices=(),
    )


def _wrong_names(problem: Problem, order: Sequence[str]) -> tuple[str, ...]:
    found, wanted = Counter(order), Counter(task.id for task in problem.tasks)
    missing = tuple(f"{name} is missing" for name in wanted - found)
    return missing + tuple(f"{name} is once too often" for name in found - wanted)


def _broken_precedences(problem: Problem, order: Sequence[str]) -> tuple[str, ...]:
    place = {name: i for i, name in enumerate(order)}
    return tuple(
        f"{edge.after} stands before {edge.before} ({edge.reason})"
        for edge in problem.precedences
        if place[edge.after] <= place[edge.before]
    )


def _broken_visits(problem: Problem, order: Sequence[str]) -> tuple[str, ...]:
    tasks = {task.id: task for task in problem.tasks}
    places: dict[str, list[int]] = {}
    for i, name in enumerate(order):
        group = tasks[name].together
        if group is not None:
            places.setdefault(group, []).append(i)
    return tuple(
        f"{group} is not done in one visit"
        for group, at in places.items()
        if len({tasks[name].station for name in order[at[0] : at[-1] + 1]}) > 1
    )


def _wrong_setup(problem: Problem, entries: tuple[Entry, ...]) -> tuple[str, ...]:
    """Follow every axis by name and compare what each entry says it changed and paid."""
    tasks = {task.id: task for task in problem.tasks}
    axes = {
        (station.name, axis.name): axis for station in problem.stations for axis in station.axes
    }
    costs = {key: _cheapest_ways(problem, *key, axis) for key, axis in axes.items()}
    standing: dict[tuple[str, str], Value] = {
        (station, axis): value for station, axis, value in problem.standing
    }
    tried: set[str] = set()
    here: str | None = None
    found: list[str] = []
    for entry in entries:
        task = tasks[entry.task]
        found.extend(
            _unmet_demands(task, entry, tuple(axis for at, axis in axes if at == task.station))
        )
        changed: list[str] = []
        paid = 0
        for axis, value in entry.values:
            old = standing.get((task.station, axis))
            if old != value:
                ways = costs.get((task.station, axis), {})
                paid += ways.get((old, value), axes[task.station, axis].change)
                standing[task.station, axis] = value
                changed.append(axis)
        trial = 0
        if task.trial is not None and task.trial not in tried:
            tried.add(task.trial)
            trial = problem.trials[task.trial]
        walk = problem.walk if task.station != here else 0
        here = task.station
        expected = (here, tuple(changed), paid, walk, trial)
        said = (entry.station, entry.changed, entry.changeover, entry.walk, entry.trial)
        if said != expected:
            found.append(f"{entry.task}: set-up should be {expected}, is {said}")
    return tuple(found)


def _unmet_demands(task: Task, entry: Entry, axes: tuple[str, ...]) -> tuple[str, ...]:
    """Whether an entry names a value for every demanded axis, and one that will do."""
    demanded = dict(task.demands)
    if tuple(axis for axis, _ in entry.values) != tuple(axis for axis in axes if axis in demanded):
        return (f"{task.id} names values of {entry.values}, demands {task.demands}",)
    return tuple(
        f"{task.id}: {axis} stands at {value}, not at {demanded[axis]}"
        for axis, value in entry.values
        if not _will_do(value, demanded[axis])
    )


def _will_do(value: Value, demanded: Value) -> bool:
    if isinstance(value, str) or isinstance(demanded, str):
        return value == demanded
    above = demanded.high is not None and value.low > demanded.high
    return (
        value.low == value.high
        and value.of == demanded.of
        and value.low >= demanded.low
        and not above
    )


def _cheapest_ways(problem: Problem, station: str, name: str, axis: Axis) -> Costs:
    """Cost from every value of an axis to every other, by way of others where that is cheaper."""
    values = {
        value
        for task in problem.tasks
        if task.station == station
        for axis_name, value in task.demands
        if axis_name == name and isinstance(value, str)
    }
    values |= {value for old, new, _ in axis.between for value in (old, new) if value is not None}
    values |= {
        value
        for at, axis_name, value in problem.standing
        if (at, axis_name) == (station, name) and isinstance(value, str)
    }
    costs: Costs = {
        (old, new): axis.change for old in (None, *sorted(values)) for new in values if old != new
    }
    costs.update({(old, new): cost for old, new, cost in axis.between})
    shorter = bool(axis.between)
    while shorter:
        shorter = False
        for (old, via), toll in tuple(costs.items()):
            for new in sorted(values - {via}):
                if old != new and toll + costs[via, new] < costs[old, new]:
                    costs[old, new] = toll + costs[via, new]
                    shorter = True
    return costs


def _wrong_sums(problem: Problem, result: Result) -> tuple[str, ...]:
    entries, totals = result.schedule.entries, result.totals
    after = {task.id: task.after for task in problem.tasks}
    setup = sum(entry.changeover + entry.walk + entry.trial for entry in entries)
    work = sum(task.work for task in problem.tasks)
    expected = {
        "changeovers": sum(len(entry.changed) for entry in entries),
        "changeover": sum(entry.changeover for entry in entries),
        "walk": sum(entry.walk for entry in entries),
        "trial": sum(entry.trial for entry in entries),
        "setup": setup,
        "work": work,
        "attended": setup + work,
        "waiting": sum(entry.waiting for entry in entries),
        "elapsed": max((entry.end + after[entry.task] for entry in entries), default=0),
    }
    return tuple(
        f"{name} is {getattr(totals, name)}, the schedule says {value}"
        for name, value in expected.items()
        if getattr(totals, name) != value
    )


def _wrong_claims(result: Result) -> tuple[str, ...]:
    changeover, least = result.totals.changeover, result.lower_bound
    if changeover < least:
        return (f"changeover {changeover} is below the lower bound {least}",)
    if not least <= result.picks_bound <= changeover:
        return (f"the bound of these picks, {result.picks_bound}, does not lie between them",)
    if not least <= result.fewest_found <= changeover:
        return (f"the fewest found, {result.fewest_found}, lie outside {least} to {changeover}",)
    if result.proven != (changeover == least):
        return ("proven does not say whether the changeover is at the lower bound",)
    return ()
