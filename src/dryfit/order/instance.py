"""A problem in numbers: names become indexes, sets of tasks become bits of an integer."""

from collections.abc import Iterator
from dataclasses import dataclass

from dryfit.order.costs import Matrix, closed_costs, depends_on_entry_only, entry_costs, regrets
from dryfit.order.hours import Hours, hours_of
from dryfit.order.precedence import topological
from dryfit.order.problem import Axis, Problem
from dryfit.order.visits import Visits, visits_of

Demands = tuple[tuple[int, int], ...]


@dataclass(frozen=True, slots=True)
class AxisTable:
    """One axis of one station. Values are numbered from 1 by first mention; 0 is "not set".

    costs    closed cost matrix, row left, column entered
    entry    per value: cheapest way into it
    regret   per pair: how much dearer the future may be from the first value, at most
    by_entry whether costs depend on the value entered only
    wanted   per value: the tasks that demand it (bits); none for 0
    fits     per value: the tasks that demand no other (bits)
    """

    name: str
    costs: Matrix
    entry: tuple[int, ...]
    regret: Matrix
    by_entry: bool
    wanted: tuple[int, ...]
    fits: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Group:
    """A together group: its tasks as bits, and its station."""

    tasks: int
    station: int


@dataclass(frozen=True, slots=True)
class Instance:
    """A solvable problem, compiled. All tuples over tasks follow the problem's order.

    axes           axes of all stations in one row
    at_station     per station: its tasks (bits)
    station        per task: index of its station
    demands        per task: (axis, value) in the station's order of axes
    predecessors   per task: tasks that must be done before it (bits), those that its
                   together group waits for included
    successors     per task: the same the other way round
    topological    one order that keeps the precedences
    works          per task: attended time
    lags           per task: (predecessor, lag) of every precedence with a lag
    holds          per task: (resource, count, lag)
    serving        per resource: the resources whose pieces serve for it, itself first
    exchanging     per task: some of what it holds may be served by another resource
    splittable     per task: may be interrupted by the night
    timed          per task: the clock time of its end matters later
    clocked        per task: it is timed, or may have to wait for the clock itself
    cured          tasks that some other must wait for after their end
    trials         per task: index of its trial group, or -1
    trial_costs    per trial group
    groups         together groups of two tasks or more
    """

    problem: Problem
    hours: Hours
    axes: tuple[AxisTable, ...]
    at_station: tuple[int, ...]
    station: tuple[int, ...]
    demands: tuple[Demands, ...]
    predecessors: tuple[int, ...]
    successors: tuple[tuple[int, ...], ...]
    topological: tuple[int, ...]
    works: tuple[int, ...]
    lags: tuple[tuple[tuple[int, int], ...], ...]
    holds: tuple[tuple[tuple[int, int, int], ...], ...]
    serving: tuple[tuple[int, ...], ...]
    exchanging: tuple[bool, ...]
    splittable: tuple[bool, ...]
    timed: tuple[bool, ...]
    clocked: tuple[bool, ...]
    cured: tuple[int, ...]
    trials: tuple[int, ...]
    trial_costs: tuple[int, ...]
    groups: tuple[Group, ...]


def compiled(problem: Problem) -> Instance:
    """The problem in numbers. It must have passed `require_solvable`."""
    task_index = {task.id: i for i, task in enumerate(problem.tasks)}
    station_index = {station.name: i for i, station in enumerate(problem.stations)}
    station = tuple(station_index[task.station] for task in problem.tasks)
    values = _values(problem)
    demands = _demands(problem, values)
    visits = visits_of(problem)
    predecessors = _predecessors(problem, task_index, visits)
    lags = _lags(problem, task_index)
    cured = tuple(sorted({before for row in lags for before, _ in row}))
    timed = tuple(
        i in cured or bool(task.holds or task.after or not task.work)
        for i, task in enumerate(problem.tasks)
    )
    trial_index = {name: i for i, name in enumerate(problem.trials)}
    holds, serving = _holds(problem), serving_of(problem)
    return Instance(
        problem=problem,
        hours=hours_of(problem.calendar),
        axes=_axis_tables(problem, values, demands),
        at_station=tuple(
            bits(i for i, at in enumerate(station) if at == s) for s in range(len(problem.stations))
        ),
        station=station,
        demands=demands,
        predecessors=predecessors,
        successors=_turned_round(predecessors),
        topological=topological(predecessors),
        works=tuple(task.work for task in problem.tasks),
        lags=lags,
        holds=holds,
        serving=serving,
        exchanging=tuple(any(len(serving[hold[0]]) > 1 for hold in row) for row in holds),
        splittable=tuple(task.splittable for task in problem.tasks),
        timed=timed,
        clocked=tuple(
            timed[i] or bool(lags[i]) or not task.splittable for i, task in enumerate(problem.tasks)
        ),
        cured=cured,
        trials=tuple(-1 if t.trial is None else trial_index[t.trial] for t in problem.tasks),
        trial_costs=tuple(problem.trials.values()),
        groups=tuple(Group(bits(group), station[group[0]]) for group in visits.groups),
    )


def bits(tasks: Iterator[int] | tuple[int, ...]) -> int:
    """A set of task indexes as an integer."""
    mask = 0
    for task in tasks:
        mask |= 1 << task
    return mask


def members(mask: int) -> Iterator[int]:
    """Task indexes of a set, ascending."""
    while mask:
        lowest = mask & -mask
        yield lowest.bit_length() - 1
        mask ^= lowest


def _values(problem: Problem) -> dict[tuple[str, str], dict[str, int]]:
    """Per (station, axis): its values, numbered from 1 by first mention."""
    values: dict[tuple[str, str], dict[str, int]] = {
        (station.name, axis.name): {} for station in problem.stations for axis in station.axes
    }
    for task in problem.tasks:
        for axis_name, value in task.demands:
            known = values[task.station, axis_name]
            known.setdefault(value, len(known) + 1)
    for station in problem.stations:
        for axis in station.axes:
            known = values[station.name, axis.name]
            for old, new, _ in axis.between:
                for mentioned in (old, new):
                    if mentioned is not None:
                        known.setdefault(mentioned, len(known) + 1)
    return values


def _demands(
    problem: Problem, values: dict[tuple[str, str], dict[str, int]]
) -> tuple[Demands, ...]:
    number = {key: i for i, key in enumerate(values)}
    return tuple(
        tuple(
            sorted(
                (number[task.station, axis], values[task.station, axis][value])
                for axis, value in task.demands
            )
        )
        for task in problem.tasks
    )


def _axis_tables(
    problem: Problem,
    values: dict[tuple[str, str], dict[str, int]],
    demands: tuple[Demands, ...],
) -> tuple[AxisTable, ...]:
    wanted = [[0] * (len(known) + 1) for known in values.values()]
    for task, row in enumerate(demands):
        for axis, value in row:
            wanted[axis][value] |= 1 << task
    every = (1 << len(demands)) - 1
    axes = [axis for station in problem.stations for axis in station.axes]
    return tuple(
        _axis_table(axis, tuple(known), tuple(tasks), every)
        for axis, known, tasks in zip(axes, values.values(), wanted, strict=True)
    )


def _axis_table(
    axis: Axis, values: tuple[str, ...], wanted: tuple[int, ...], every: int
) -> AxisTable:
    indifferent = every & ~sum(wanted)
    costs = closed_costs(axis, values)
    return AxisTable(
        name=axis.name,
        costs=costs,
        entry=entry_costs(costs),
        regret=regrets(costs),
        by_entry=depends_on_entry_only(costs),
        wanted=wanted,
        fits=tuple(indifferent | tasks for tasks in wanted),
    )


def _predecessors(problem: Problem, index: dict[str, int], visits: Visits) -> tuple[int, ...]:
    masks = [0] * len(problem.tasks)
    for edge in problem.precedences:
        masks[index[edge.after]] |= 1 << index[edge.before]
    for group, waits in zip(visits.groups, visits.waits, strict=True):
        earlier = bits(waits)
        for task in group:
            masks[task] |= earlier
    return tuple(masks)


def _turned_round(predecessors: tuple[int, ...]) -> tuple[tuple[int, ...], ...]:
    successors: list[list[int]] = [[] for _ in predecessors]
    for after, mask in enumerate(predecessors):
        for before in members(mask):
            successors[before].append(after)
    return tuple(tuple(row) for row in successors)


def _lags(problem: Problem, index: dict[str, int]) -> tuple[tuple[tuple[int, int], ...], ...]:
    lags: list[dict[int, int]] = [{} for _ in problem.tasks]
    for edge in problem.precedences:
        if edge.lag:
            row = lags[index[edge.after]]
            before = index[edge.before]
            row[before] = max(edge.lag, row.get(before, 0))
    return tuple(tuple(row.items()) for row in lags)


def serving_of(problem: Problem) -> tuple[tuple[int, ...], ...]:
    """Per resource: the resources whose pieces serve for it, itself first."""
    index = {resource.name: i for i, resource in enumerate(problem.resources)}
    return tuple(
        (i, *(index[name] for name in resource.instead))
        for i, resource in enumerate(problem.resources)
    )


def _holds(problem: Problem) -> tuple[tuple[tuple[int, int, int], ...], ...]:
    index = {resource.name: i for i, resource in enumerate(problem.resources)}
    return tuple(
        tuple((index[hold.resource], hold.count, hold.lag) for hold in task.holds)
        for task in problem.tasks
    )
