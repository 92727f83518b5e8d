"""The axes of a problem in tables: values become numbers, demands become sets of them."""

from dataclasses import dataclass
from fractions import Fraction

from dryfit.order.costs import Matrix, closed_costs, depends_on_entry_only, entry_costs, regrets
from dryfit.order.problem import Axis, Problem, Value
from dryfit.order.ranges import Choices, Key, as_value, lowest, serves
from dryfit.order.sets import bits, members

Demands = tuple[tuple[int, int], ...]
"""(axis, value) pairs in the station's order of axes."""

Numbers = dict[tuple[str, str], dict[Key, int]]
"""Per (station, axis): its values, numbered from 1 by first mention."""


@dataclass(frozen=True, slots=True)
class AxisTable:
    """One axis of one station. Values are numbered from 1 by first mention; 0 is "not set".

    values   per value from 1 on: as the problem has it
    costs    closed cost matrix, row left, column entered
    entry    per value: cheapest way into it
    regret   per pair: how much dearer the future may be from the first value, at most
    by_entry whether costs depend on the value entered only
    ranged   some task leaves a choice between values; every change costs the same
    wanted   per value: the tasks that it serves and that demand the axis (bits); none for 0
    fits     per value: the tasks that need no other (bits)
    """

    name: str
    values: tuple[Value, ...]
    costs: Matrix
    entry: tuple[int, ...]
    regret: Matrix
    by_entry: bool
    ranged: bool
    wanted: tuple[int, ...]
    fits: tuple[int, ...]

    def stands(self, current: int, value: int) -> bool:
        """Whether what the decoder says of an axis includes a value."""
        return bool(current >> value & 1) if self.ranged else current == value

    def lowest(self, values: int) -> int:
        """The lowest number of a set of values (bits), or the name that is alone in it."""
        return min(members(values), key=lambda value: _height(self.values[value - 1]))

    def ends_first(self, values: int) -> tuple[Fraction, int, int]:
        """Sorts sets of values (bits) by their highest number, of equals the larger set first."""
        highest = max(_height(self.values[value - 1]) for value in members(values))
        return highest, -values.bit_count(), values


def numbered(problem: Problem) -> Numbers:
    """The values that are worth setting, and those that stand at the start."""
    numbers: Numbers = {
        (station.name, axis.name): {} for station in problem.stations for axis in station.axes
    }
    for task in problem.tasks:
        for axis_name, value in task.demands:
            _add(numbers[task.station, axis_name], lowest(value))
    for station in problem.stations:
        for axis in station.axes:
            for old, new, _ in axis.between:
                for mentioned in (old, new):
                    if mentioned is not None:
                        _add(numbers[station.name, axis.name], mentioned)
    for station_name, axis_name, value in problem.standing:
        _add(numbers[station_name, axis_name], lowest(value))
    return numbers


def choices_of(problem: Problem, numbers: Numbers) -> tuple[Choices, ...]:
    """Per task: what will do on each axis that it demands, by axis."""
    place = {key: i for i, key in enumerate(numbers)}
    return tuple(
        tuple(
            sorted(
                (place[task.station, axis], _acceptable(numbers[task.station, axis], value))
                for axis, value in task.demands
            )
        )
        for task in problem.tasks
    )


def axis_tables(
    problem: Problem, numbers: Numbers, choices: tuple[Choices, ...]
) -> tuple[AxisTable, ...]:
    """One table for each axis of all stations, in their order."""
    wanted = [[0] * (len(known) + 1) for known in numbers.values()]
    ranged = [False] * len(wanted)
    for task, row in enumerate(choices):
        for axis, acceptable in row:
            ranged[axis] |= acceptable.bit_count() > 1
            for value in members(acceptable):
                wanted[axis][value] |= 1 << task
    every = (1 << len(choices)) - 1
    axes = [axis for station in problem.stations for axis in station.axes]
    return tuple(
        _axis_table(axis, tuple(known), every, tuple(tasks), ranged=several)
        for axis, known, tasks, several in zip(axes, numbers.values(), wanted, ranged, strict=True)
    )


def _height(value: Value) -> Fraction:
    return Fraction(0) if isinstance(value, str) else Fraction(value.low)


def _add(known: dict[Key, int], key: Key) -> None:
    known.setdefault(key, len(known) + 1)


def _acceptable(known: dict[Key, int], demanded: Value) -> int:
    if isinstance(demanded, str):
        return 1 << known[demanded]
    return bits(number for key, number in known.items() if serves(key, demanded))


def _axis_table(
    axis: Axis, keys: tuple[Key, ...], every: int, wanted: tuple[int, ...], *, ranged: bool
) -> AxisTable:
    indifferent = every
    for tasks in wanted:
        indifferent &= ~tasks
    costs = closed_costs(axis, keys)
    return AxisTable(
        name=axis.name,
        values=tuple(as_value(key) for key in keys),
        costs=costs,
        entry=entry_costs(costs),
        regret=regrets(costs),
        by_entry=depends_on_entry_only(costs),
        ranged=ranged,
        wanted=wanted,
        fits=tuple(indifferent | tasks for tasks in wanted),
    )
