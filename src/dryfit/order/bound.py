"""How little changeover the rest of the work can possibly need.

Along any chain of precedences the tasks come in a fixed order. Where the chain demands a value of
an axis, then another, then the first again, that value must be entered anew: each block of the
value on the chain is one entry, at the cheapest cost into it at least. Entries of different
values are different changes, so the bounds of all values of all axes add up.

For an axis with a cost matrix there is a second bound: the dearest chain, at its true costs. The
larger of the two counts.
"""

from dataclasses import dataclass

from dryfit.order.instance import Instance, members


@dataclass(frozen=True, slots=True)
class Blocks:
    """Entries that one value of an axis still needs.

    cost    of one entry
    away    tasks (bits) that begin a chain with at least 1, 2, ... blocks of the value
    there   the same when the axis stands at the value now: the first block may be free
    """

    cost: int
    away: tuple[int, ...]
    there: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Bound:
    """Tables for `remaining`.

    blocks  per axis, per value from 1 on
    chains  per axis: None, or per task and present value the cost of the dearest chain from it
    """

    blocks: tuple[tuple[Blocks, ...], ...]
    chains: tuple[tuple[tuple[int, ...], ...] | None, ...]

    def remaining(self, undone: int, available: int, current: tuple[int, ...]) -> int:
        """Least changeover for the undone tasks (bits), of which some are available (bits).

        `current` is the value of every axis.
        """
        total = 0
        for values, chains, now in zip(self.blocks, self.chains, current, strict=True):
            entries = 0
            for value, blocks in enumerate(values, start=1):
                for tasks in blocks.there if value == now else blocks.away:
                    if not tasks & undone:
                        break
                    entries += blocks.cost
            if chains is not None and available:
                entries = max(entries, *(chains[task][now] for task in members(available)), 0)
            total += entries
        return total


def bound_of(instance: Instance) -> Bound:
    """Tables of an instance, filled from the last tasks to the first."""
    after = _direct_successors(instance)
    return Bound(
        blocks=tuple(_axis_blocks(instance, axis, after) for axis in range(len(instance.axes))),
        chains=tuple(
            None if table.by_entry else _axis_chains(instance, axis, after)
            for axis, table in enumerate(instance.axes)
        ),
    )


def least_changeover(instance: Instance, bound: Bound) -> int:
    """Changeover, in tenths, that no valid order of the whole instance can go below."""
    every = (1 << len(instance.station)) - 1
    available = sum(1 << task for task, mask in enumerate(instance.predecessors) if not mask)
    return bound.remaining(every, available, (0,) * len(instance.axes))


def _axis_blocks(
    instance: Instance, axis: int, after: tuple[tuple[int, ...], ...]
) -> tuple[Blocks, ...]:
    table = instance.axes[axis]
    demanded = _demanded(instance, axis)
    size = len(table.wanted)
    away: list[tuple[int, ...]] = [()] * len(demanded)
    there: list[tuple[int, ...]] = [()] * len(demanded)
    nothing = (0,) * size
    for task in reversed(instance.topological):
        later_away = _highest([away[next_] for next_ in after[task]]) or nothing
        later_there = _highest([there[next_] for next_ in after[task]]) or nothing
        value = demanded[task]
        if not value:
            away[task], there[task] = later_away, later_there
            continue
        kept = later_there[value]
        away[task] = (*later_away[:value], kept + 1, *later_away[value + 1 :])
        there[task] = (*later_away[:value], kept, *later_away[value + 1 :])
    return tuple(
        Blocks(table.entry[value], _levels(away, value), _levels(there, value))
        for value in range(1, size)
    )


def _axis_chains(
    instance: Instance, axis: int, after: tuple[tuple[int, ...], ...]
) -> tuple[tuple[int, ...], ...]:
    costs = instance.axes[axis].costs
    demanded = _demanded(instance, axis)
    chains: list[tuple[int, ...]] = [()] * len(demanded)
    nothing = (0,) * len(costs)
    for task in reversed(instance.topological):
        later = _highest([chains[next_] for next_ in after[task]]) or nothing
        value = demanded[task]
        rest = later[value]
        chains[task] = tuple(row[value] + rest for row in costs) if value else later
    return tuple(chains)


def _demanded(instance: Instance, axis: int) -> tuple[int, ...]:
    """Per task: the value it demands of an axis, or 0."""
    return tuple(dict(row).get(axis, 0) for row in instance.demands)


def _highest(rows: list[tuple[int, ...]]) -> tuple[int, ...]:
    """Element-wise maximum; empty for no rows."""
    if len(rows) < 2:
        return rows[0] if rows else ()
    return tuple(map(max, *rows))


def _levels(counts: list[tuple[int, ...]], value: int) -> tuple[int, ...]:
    """Tasks (bits) with a count of at least 1, 2, ... for a value."""
    levels: list[int] = []
    for task, row in enumerate(counts):
        for level in range(row[value]):
            if level == len(levels):
                levels.append(0)
            levels[level] |= 1 << task
    return tuple(levels)


def _direct_successors(instance: Instance) -> tuple[tuple[int, ...], ...]:
    """Successors that are not also reached by way of another one: chains lose nothing."""
    place = {task: i for i, task in enumerate(instance.topological)}
    reached = [0] * len(instance.successors)
    direct: list[tuple[int, ...]] = [()] * len(instance.successors)
    for task in reversed(instance.topological):
        kept = []
        for next_ in sorted(instance.successors[task], key=place.__getitem__):
            if not reached[task] >> next_ & 1:
                kept.append(next_)
                reached[task] |= reached[next_] | 1 << next_
        direct[task] = tuple(kept)
    return tuple(direct)
