"""How little changeover the rest of the work can possibly need.

Along any chain of precedences the tasks come in a fixed order. Where the chain demands a value of
an axis, then another, then the first again, that value must be entered anew: each block of the
value on the chain is one entry, at the cheapest cost into it at least. Entries of different
values are different changes, so the bounds of all values of all axes add up.

For an axis with a cost matrix there is a second bound: the dearest chain, at its true costs. The
larger of the two counts.

A task that leaves a choice of values neither begins a block of one of them nor ends one; it ends
the blocks of all others. Such tasks are counted by classes of values that do not overlap: blocks
of tasks that need some value of the class, parted by tasks that can use none of it. Each block
enters some value of the class, so of a class the larger counts, its own blocks or those of its
values together.
"""

from dataclasses import dataclass

from dryfit.order.instance import Instance
from dryfit.order.sets import members


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
    classes per axis: classes of values (from 1 on) and their blocks; there are some only where a
            task leaves a choice
    chains  per axis: None, or per task and present value the cost of the dearest chain from it
    """

    blocks: tuple[tuple[Blocks, ...], ...]
    classes: tuple[tuple[tuple[tuple[int, ...], Blocks], ...], ...]
    chains: tuple[tuple[tuple[int, ...], ...] | None, ...]

    def remaining(self, undone: int, available: int, current: tuple[int, ...]) -> int:
        """Least changeover for the undone tasks (bits), of which some are available (bits).

        `current` is the value of every axis.
        """
        total = 0
        for values, classes, chains, now in zip(
            self.blocks, self.classes, self.chains, current, strict=True
        ):
            entries = 0
            for value, blocks in enumerate(values, start=1):
                for tasks in blocks.there if value == now else blocks.away:
                    if not tasks & undone:
                        break
                    entries += blocks.cost
            for inside, blocks in classes:
                entries += max(
                    0,
                    _entries(blocks, undone, at_it=now in inside)
                    - sum(
                        _entries(values[value - 1], undone, at_it=value == now) for value in inside
                    ),
                )
            if chains is not None and available:
                entries = max(entries, *(chains[task][now] for task in members(available)), 0)
            total += entries
        return total


def bound_of(instance: Instance) -> Bound:
    """Tables of an instance, filled from the last tasks to the first."""
    after = _direct_successors(instance)
    return Bound(
        blocks=tuple(_axis_blocks(instance, axis, after) for axis in range(len(instance.axes))),
        classes=tuple(_axis_classes(instance, axis, after) for axis in range(len(instance.axes))),
        chains=tuple(
            None if table.by_entry else _axis_chains(instance, axis, after)
            for axis, table in enumerate(instance.axes)
        ),
    )


def least_changeover(instance: Instance, bound: Bound) -> int:
    """Changeover, in tenths, that no valid order of the whole instance can go below."""
    every = (1 << len(instance.station)) - 1
    available = sum(1 << task for task, mask in enumerate(instance.predecessors) if not mask)
    return bound.remaining(every, available, instance.standing)


def _entries(blocks: Blocks, undone: int, *, at_it: bool) -> int:
    """Cost of the entries that the undone tasks (bits) still need."""
    entries = 0
    for tasks in blocks.there if at_it else blocks.away:
        if not tasks & undone:
            break
        entries += blocks.cost
    return entries


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
        acceptable = demanded[task]
        value = acceptable.bit_length() - 1
        if not acceptable:
            away[task], there[task] = later_away, later_there
        elif acceptable == 1 << value:
            kept = later_there[value]
            away[task] = (*later_away[:value], kept + 1, *later_away[value + 1 :])
            there[task] = (*later_away[:value], kept, *later_away[value + 1 :])
        else:
            away[task] = later_away
            there[task] = tuple(
                later_there[value] if acceptable >> value & 1 else later_away[value]
                for value in range(size)
            )
    return tuple(
        Blocks(table.entry[value], _levels(away, value), _levels(there, value))
        for value in range(1, size)
    )


def _axis_classes(
    instance: Instance, axis: int, after: tuple[tuple[int, ...], ...]
) -> tuple[tuple[tuple[int, ...], Blocks], ...]:
    """Classes that share no value: of ranges that overlap the one that ends first."""
    table = instance.axes[axis]
    if not table.ranged:
        return ()
    demanded = _demanded(instance, axis)
    taken = 0
    classes = []
    for values in sorted({mask for mask in demanded if mask}, key=table.ends_first):
        if values.bit_count() > 1 and not values & taken:
            taken |= values
            classes.append((tuple(members(values)), _class_blocks(instance, axis, after, values)))
    return tuple(classes)


def _class_blocks(
    instance: Instance, axis: int, after: tuple[tuple[int, ...], ...], inside: int
) -> Blocks:
    """Blocks of a class of values (bits), which all cost the same to enter."""
    demanded = _demanded(instance, axis)
    away, there = [0] * len(demanded), [0] * len(demanded)
    for task in reversed(instance.topological):
        away[task] = max((away[next_] for next_ in after[task]), default=0)
        there[task] = max((there[next_] for next_ in after[task]), default=0)
        if demanded[task] and not demanded[task] & ~inside:
            away[task] = there[task] + 1
        elif demanded[task] and not demanded[task] & inside:
            there[task] = away[task]
    value = inside.bit_length() - 1
    return Blocks(
        instance.axes[axis].entry[value],
        _levels([(count,) for count in away], 0),
        _levels([(count,) for count in there], 0),
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
        value = max(demanded[task].bit_length() - 1, 0)
        rest = later[value]
        chains[task] = tuple(row[value] + rest for row in costs) if value else later
    return tuple(chains)


def _demanded(instance: Instance, axis: int) -> tuple[int, ...]:
    """Per task: the values (bits) that will do on an axis, none if it does not demand the axis."""
    if instance.axes[axis].ranged:
        return tuple(dict(row).get(axis, 0) for row in instance.choices)
    return tuple(1 << value if (value := dict(row).get(axis, 0)) else 0 for row in instance.demands)


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
