"""Whether a problem is well formed and has a schedule at all."""

from collections.abc import Iterable
from fractions import Fraction

from dryfit.order.hours import longest_stretch
from dryfit.order.instance import serving_of
from dryfit.order.pieces import Shortage, matched
from dryfit.order.precedence import cycle
from dryfit.order.problem import (
    DAY,
    Axis,
    Calendar,
    Problem,
    Range,
    Station,
    Task,
    Unsolvable,
    Value,
)
from dryfit.order.visits import visits_of


def require_solvable(problem: Problem) -> None:
    """Nothing, or the first fault found.

    Raises
    ------
    Unsolvable
        names that are unknown or doubled; negative numbers; a range that is empty or not exact,
        or is demanded of an axis with `between`; a calendar without working time; an
        unsplittable task longer than the working day; a hold above what there is, pieces that
        serve instead counted; a task for more workers than there are; precedences that form a
        circle, or that contradict a together group.

    A problem that passes has a schedule.
    """
    _require_calendar(problem.calendar)
    _require_stations(problem.stations)
    _require_resources(problem)
    _require_tasks(problem)
    _require_standing(problem)
    _require_precedences(problem)
    visits_of(problem)


def _require_calendar(calendar: Calendar) -> None:
    if not 0 <= calendar.opens < calendar.closes <= DAY:
        raise Unsolvable("the working day must open before it closes, within one day")
    if not calendar.days_off < frozenset(range(7)):
        raise Unsolvable("days off are weekdays 0 to 6, and at least one weekday is worked")
    if calendar.first_weekday not in range(7):
        raise Unsolvable("the weekday of day 1 is 0 to 6")
    if any(day < 1 for day in calendar.closed):
        raise Unsolvable("single days off are counted from day 1 as 0, which is worked itself")


def _require_stations(stations: tuple[Station, ...]) -> None:
    _require_distinct("station", (station.name for station in stations))
    for station in stations:
        _require_distinct(f"{station.name}: axis", (axis.name for axis in station.axes))
        for axis in station.axes:
            where = f"{station.name}, {axis.name}"
            _require_counts(where, (axis.change, *(cost for _, _, cost in axis.between)))
            _require_distinct(where, (f"{old} to {new}" for old, new, _ in axis.between))
            if any(old == new for old, new, _ in axis.between):
                raise Unsolvable(f"{where}: keeping a value costs nothing", (station.name,))


def _require_resources(problem: Problem) -> None:
    _require_distinct("resource", (resource.name for resource in problem.resources))
    names = {resource.name for resource in problem.resources}
    for resource in problem.resources:
        _require_counts(resource.name, (resource.capacity,))
        _require_distinct(f"{resource.name} is served by", (resource.name, *resource.instead))
        for name in resource.instead:
            if name not in names:
                message = f"{resource.name}: no resource {name} can serve instead"
                raise Unsolvable(message, (resource.name, name))
    _require_counts("walk", (problem.walk,))
    for group, cost in problem.trials.items():
        _require_counts(f"trial {group}", (cost,))


def _require_tasks(problem: Problem) -> None:
    _require_distinct("task", (task.id for task in problem.tasks))
    stations = {station.name: station for station in problem.stations}
    longest = longest_stretch(problem.calendar)
    for task in problem.tasks:
        if task.station not in stations:
            raise Unsolvable(f"{task.id}: no station {task.station}", (task.id, task.station))
        _require_demands(task, stations[task.station])
        _require_holds(task, problem)
        _require_counts(task.id, (task.work, task.after))
        if not 1 <= task.workers <= problem.workers:
            message = f"{task.id} takes {task.workers} workers, of whom there are {problem.workers}"
            raise Unsolvable(message, (task.id,), counts=(task.workers, problem.workers))
        if task.trial is not None and task.trial not in problem.trials:
            raise Unsolvable(f"{task.id}: no trial {task.trial}", (task.id, task.trial))
        if longest is not None and not task.splittable and task.work > longest:
            message = f"{task.id} may not be interrupted and is longer than the working day"
            raise Unsolvable(message, (task.id,))


def _require_demands(task: Task, station: Station) -> None:
    _require_distinct(f"{task.id}: demand", (axis for axis, _ in task.demands))
    known = {axis.name: axis for axis in station.axes}
    for axis, value in task.demands:
        if axis not in known:
            raise Unsolvable(f"{task.id}: {station.name} has no axis {axis}", (task.id, axis))
        _require_value(task.id, known[axis], value)


def _require_value(where: str, axis: Axis, value: Value) -> None:
    """Ranges compare by `<=`, exactly; on their axis every change costs the same."""
    if isinstance(value, str):
        return
    for number in (value.low, value.high):
        if not isinstance(number, Fraction | int | None):
            raise Unsolvable(f"{where}: {axis.name} {number} is no exact number", (where,))
    if value.high is not None and value.high < value.low:
        message = f"{where}: nothing lies between {axis.name} {value.low} and {value.high}"
        raise Unsolvable(message, (where,))
    if axis.between:
        message = f"{where}: {axis.name} has ranges, so that all its changes must cost the same"
        raise Unsolvable(message, (where,))


def _require_standing(problem: Problem) -> None:
    axes = {
        (station.name, axis.name): axis for station in problem.stations for axis in station.axes
    }
    _require_distinct("standing", (f"{station}, {axis}" for station, axis, _ in problem.standing))
    for station, axis, value in problem.standing:
        where = f"{station}, {axis}"
        if (station, axis) not in axes:
            raise Unsolvable(f"what stands at the start: no {where}", (station, axis))
        _require_value(where, axes[station, axis], value)
        if isinstance(value, Range) and value.low != value.high:
            raise Unsolvable(f"{where} stands at one number, not at a range", (station, axis))


def _require_holds(task: Task, problem: Problem) -> None:
    _require_distinct(f"{task.id}: held resource", (hold.resource for hold in task.holds))
    index = {resource.name: i for i, resource in enumerate(problem.resources)}
    for hold in task.holds:
        if hold.resource not in index:
            message = f"{task.id}: no resource {hold.resource}"
            raise Unsolvable(message, (task.id, hold.resource))
        _require_counts(task.id, (hold.count, hold.lag))
    if not task.holds:
        return
    asked = [(index[hold.resource], hold.count) for hold in task.holds]
    capacities = [resource.capacity for resource in problem.resources]
    short = matched(asked, serving_of(problem), capacities)
    if isinstance(short, Shortage):
        names = tuple(task.holds[at].resource for at in short.holds)
        instead = any(problem.resources[index[name]].instead for name in names)
        what = " and ".join(names) + (" or what serves instead" if instead else "")
        message = f"{task.id} holds {short.needed} of {what}, of which there are {short.there}"
        raise Unsolvable(message, (task.id, *names), counts=(short.needed, short.there))


def _require_precedences(problem: Problem) -> None:
    known = {task.id for task in problem.tasks}
    for edge in problem.precedences:
        for name in (edge.before, edge.after):
            if name not in known:
                raise Unsolvable(f"a precedence names {name}, which is no task", (name,), (edge,))
        _require_counts(f"{edge.before} before {edge.after}", (edge.lag,))
    chain = cycle(problem)
    if chain is not None:
        steps = "; ".join(f"{edge.before} before {edge.after} ({edge.reason})" for edge in chain)
        names = tuple(edge.before for edge in chain)
        raise Unsolvable(f"these rules form a circle: {steps}", names, chain)


def _require_distinct(what: str, names: Iterable[str]) -> None:
    seen: set[str] = set()
    for name in names:
        if name in seen:
            raise Unsolvable(f"{what} {name} occurs twice", (name,))
        seen.add(name)


def _require_counts(where: str, numbers: Iterable[int]) -> None:
    for number in numbers:
        if number < 0:
            raise Unsolvable(f"{where}: {number} is below nothing", (where,))
