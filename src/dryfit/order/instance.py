"""A problem in numbers: names become indexes, sets of tasks become bits of an integer."""

from dataclasses import dataclass

from dryfit.order.axes import AxisTable, Demands, Numbers, axis_tables, choices_of, numbered
from dryfit.order.hours import Hours, hours_of
from dryfit.order.precedence import topological
from dryfit.order.problem import Problem
from dryfit.order.ranges import Choices, lowest
from dryfit.order.sets import bits, members
from dryfit.order.visits import Visits, visits_of


@dataclass(frozen=True, slots=True)
class Group:
    """A together group: its tasks as bits, and its station."""

    tasks: int
    station: int


@dataclass(frozen=True, slots=True)
class Instance:
    """A solvable problem, compiled. All tuples over tasks follow the problem's order.

    axes           axes of all stations in one row
    axes_at        per station: its axes
    at_station     per station: its tasks (bits)
    station        per task: index of its station
    demands        per task: (axis, value) of its axes without ranges, by axis
    choices        per task: (axis, values as bits) of its axes with ranges, by axis; empty if
                   no axis of the problem has any
    mates          per task and axis that it demands: the tasks that one value may serve with it
    standing       per axis: the value at the start
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
    axes_at: tuple[range, ...]
    at_station: tuple[int, ...]
    station: tuple[int, ...]
    demands: tuple[Demands, ...]
    choices: tuple[Choices, ...]
    mates: tuple[tuple[int, ...], ...]
    standing: tuple[int, ...]
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
    """The problem in numbers. It must have passed `require_solvable`, and be without choices."""
    assert not problem.choices, "choices are made by `picked` first"
    task_index = {task.id: i for i, task in enumerate(problem.tasks)}
    station_index = {station.name: i for i, station in enumerate(problem.stations)}
    station = tuple(station_index[task.station] for task in problem.tasks)
    numbers = numbered(problem)
    choices = choices_of(problem, numbers)
    axes = axis_tables(problem, numbers, choices)
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
        axes=axes,
        axes_at=_axes_at(problem),
        at_station=tuple(
            bits(i for i, at in enumerate(station) if at == s) for s in range(len(problem.stations))
        ),
        station=station,
        demands=tuple(
            tuple((axis, mask.bit_length() - 1) for axis, mask in row if not axes[axis].ranged)
            for row in choices
        ),
        choices=_ranged(axes, choices),
        mates=tuple(tuple(_served(axes[axis], mask) for axis, mask in row) for row in choices),
        standing=_standing(problem, numbers),
        predecessors=predecessors,
        successors=turned_round(predecessors),
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


def _axes_at(problem: Problem) -> tuple[range, ...]:
    rows = []
    first = 0
    for station in problem.stations:
        rows.append(range(first, first + len(station.axes)))
        first += len(station.axes)
    return tuple(rows)


def _ranged(axes: tuple[AxisTable, ...], choices: tuple[Choices, ...]) -> tuple[Choices, ...]:
    if not any(table.ranged for table in axes):
        return ()
    return tuple(tuple(pair for pair in row if axes[pair[0]].ranged) for row in choices)


def _served(table: AxisTable, acceptable: int) -> int:
    """Tasks that one of the values (bits) serves."""
    tasks = 0
    for value in members(acceptable):
        tasks |= table.wanted[value]
    return tasks


def _standing(problem: Problem, numbers: Numbers) -> tuple[int, ...]:
    standing = dict.fromkeys(numbers, 0)
    for station, axis, value in problem.standing:
        standing[station, axis] = numbers[station, axis][lowest(value)]
    return tuple(standing.values())


def _predecessors(problem: Problem, index: dict[str, int], visits: Visits) -> tuple[int, ...]:
    masks = [0] * len(problem.tasks)
    for edge in problem.precedences:
        masks[index[edge.after]] |= 1 << index[edge.before]
    for group, waits in zip(visits.groups, visits.waits, strict=True):
        earlier = bits(waits)
        for task in group:
            masks[task] |= earlier
    return tuple(masks)


def turned_round(predecessors: tuple[int, ...]) -> tuple[tuple[int, ...], ...]:
    """Per task: the tasks that have it among their predecessors (bits per task)."""
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
