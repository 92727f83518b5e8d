"""Picking values where a task leaves a choice: one by one in the search, late along an order."""

from dryfit.order.axes import Demands
from dryfit.order.instance import Instance
from dryfit.order.ranges import stretches, worthwhile
from dryfit.order.sets import members


def ways_to_set(
    instance: Instance, current: tuple[int, ...], undone: int, task: int, changes: Demands
) -> tuple[Demands, ...]:
    """The changes that a task needs, with every worthwhile value of each axis with ranges.

    `changes` are those of the other axes, `undone` the unfinished tasks (bits).
    """
    ways = [changes]
    for axis, acceptable in instance.choices[task]:
        if not acceptable >> current[axis] & 1:
            values = worthwhile(instance.axes[axis].wanted, acceptable, undone)
            ways = [(*way, (axis, value)) for way in ways for value in values]
    return tuple(tuple(sorted(way)) for way in ways)


def is_alone(instance: Instance, tasks: tuple[int, ...], axis: int, done: int) -> bool:
    """Whether one of the tasks shares no setting of an axis with a task that is not done (bits)."""
    return any(not _may_share(instance, task, axis) & ~done for task in tasks)


def _may_share(instance: Instance, task: int, axis: int) -> int:
    shared = 0
    for value in members(dict(instance.choices[task])[axis]):
        shared |= instance.axes[axis].wanted[value]
    return shared


def used(instance: Instance, order: tuple[int, ...], standing: list[int]) -> list[Demands]:
    """Per task of an order: the value used on each axis that it demands, the lowest that will do.

    `standing` is what the decoder says of the axes at the start.
    """
    if not instance.choices:
        return [instance.demands[task] for task in order]
    kept = stretches([instance.choices[task] for task in order], standing)
    found = []
    for task, row in zip(order, kept, strict=True):
        chosen = [(axis, instance.axes[axis].lowest(values)) for axis, values in row.items()]
        found.append(tuple(sorted((*instance.demands[task], *chosen))))
    return found
