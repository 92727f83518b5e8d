"""One station by itself: its tasks, and the precedences that the others make between them.

To leave tasks out of a valid order, and axes out of its account, never makes it dearer. So what
no order of a station's own tasks can go below, no order of all tasks can; and since every change
is made at one station, on one axis, what is found for stations that share nothing adds up.
"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace

from dryfit.order.axes import AxisTable
from dryfit.order.costs import Matrix
from dryfit.order.instance import Instance, turned_round
from dryfit.order.precedence import topological
from dryfit.order.sets import bits, members

Row = tuple[tuple[int, int], ...]


def ancestors_of(instance: Instance) -> tuple[int, ...]:
    """Per task: all tasks that must be done before it (bits)."""
    found = [0] * len(instance.station)
    for task in instance.topological:
        mask = instance.predecessors[task]
        for before in members(mask):
            mask |= found[before]
        found[task] = mask
    return tuple(found)


@dataclass(frozen=True, slots=True)
class Projection:
    """A part of an instance, and which tasks of the whole its tasks are."""

    instance: Instance
    tasks: tuple[int, ...]

    def renumbered(self, tasks: int) -> int:
        """Tasks of the whole (bits) as those of the part, as far as they are in it."""
        found = 0
        for number, task in enumerate(self.tasks):
            if tasks >> task & 1:
                found |= 1 << number
        return found


def projected(
    instance: Instance, ancestors: Sequence[int], tasks: int, shares: Mapping[int, int]
) -> Projection:
    """The tasks (bits) of one station, as far as they demand some of its axes.

    Good for searches that count changeover only: what is said of work and time is left as it was.

    ancestors  of all tasks of the instance
    shares     per axis that is kept, what its changes cost, in parts of their true costs: 3 makes
               them three times as dear
    """
    axis_place = {axis: i for i, axis in enumerate(shares)}
    demands = {task: _of_axes(instance.demands[task], axis_place) for task in members(tasks)}
    choices = {
        task: _of_axes(instance.choices[task], axis_place) if instance.choices else ()
        for task in demands
    }
    kept = tuple(task for task in demands if demands[task] or choices[task])
    place = {task: i for i, task in enumerate(kept)}
    inside = bits(kept)

    def renumbered(mask: int) -> int:
        return bits(place[task] for task in members(mask & inside))

    predecessors = _direct(tuple(renumbered(ancestors[task]) for task in kept))
    part = replace(
        instance,
        axes=tuple(
            _table(instance.axes[axis], share, renumbered) for axis, share in shares.items()
        ),
        axes_at=(range(len(shares)),),
        at_station=((1 << len(kept)) - 1,),
        station=(0,) * len(kept),
        demands=tuple(demands[task] for task in kept),
        choices=tuple(choices[task] for task in kept) if any(choices.values()) else (),
        standing=tuple(instance.standing[axis] for axis in shares),
        predecessors=predecessors,
        successors=turned_round(predecessors),
        topological=topological(predecessors),
        groups=(),
    )
    return Projection(part, kept)


def _of_axes(row: Row, place: Mapping[int, int]) -> Row:
    return tuple((place[axis], value) for axis, value in row if axis in place)


def _direct(ancestors: tuple[int, ...]) -> tuple[int, ...]:
    """Of all tasks before each one those that are not before another of them."""
    direct = []
    for mask in ancestors:
        farther = 0
        for before in members(mask):
            farther |= ancestors[before]
        direct.append(mask & ~farther)
    return tuple(direct)


def _table(table: AxisTable, share: int, renumbered: Callable[[int], int]) -> AxisTable:
    return replace(
        table,
        costs=_times(table.costs, share),
        entry=tuple(cost * share for cost in table.entry),
        regret=_times(table.regret, share),
        wanted=tuple(renumbered(mask) for mask in table.wanted),
        fits=tuple(renumbered(mask) for mask in table.fits),
    )


def _times(matrix: Matrix, share: int) -> Matrix:
    return tuple(tuple(cost * share for cost in row) for row in matrix)
