"""What can be done next at a station: tasks by the changes that they need."""

from collections.abc import Iterable
from dataclasses import dataclass
from itertools import combinations

from dryfit.order.axes import Demands
from dryfit.order.instance import Instance
from dryfit.order.picking import ways_to_set
from dryfit.order.sets import members


@dataclass(frozen=True, slots=True)
class Move:
    """Tasks that need the same changes from here; `opening` if it opens a together group.

    `cost` is that of the changes alone.
    """

    cost: int
    station: int
    changes: Demands
    tasks: tuple[int, ...]
    opening: bool


def moves_at(
    instance: Instance, current: tuple[int, ...], undone: int, available: int, opening: int
) -> tuple[Move, ...]:
    """Moves with available tasks (bits) of one station.

    current  value of every axis
    undone   unfinished tasks (bits)
    opening  tasks (bits) that would open a together group
    """
    grouped: dict[Demands, list[int]] = {}
    openers: list[tuple[int, Demands]] = []
    for task in members(available):
        changes = tuple(pair for pair in instance.demands[task] if current[pair[0]] != pair[1])
        ways: tuple[Demands, ...] = (changes,)
        if instance.choices:
            ways = ways_to_set(instance, current, undone, task, changes)
        for way in ways:
            if opening >> task & 1:
                openers.append((task, way))
            else:
                grouped.setdefault(way, []).append(task)
    minimal = _minimal_sets(grouped)
    moves = [
        _move(instance, current, changes, tuple(tasks), opening=False)
        for changes, tasks in grouped.items()
        if not changes or frozenset(changes) in minimal
    ]
    moves += [
        _move(instance, current, changes, (task,), opening=True)
        for task, changes in openers
        if not any(other <= frozenset(changes) for other in minimal)
    ]
    return tuple(moves)


def _minimal_sets(grouped: Iterable[Demands]) -> set[frozenset[tuple[int, int]]]:
    """Of sets of changes those that include no other one; the empty set is passed over."""
    minimal: set[frozenset[tuple[int, int]]] = set()
    for changes in sorted(grouped, key=len):
        candidate = frozenset(changes)
        if changes and not _includes_any(candidate, minimal):
            minimal.add(candidate)
    return minimal


def _includes_any(
    candidate: frozenset[tuple[int, int]], known: set[frozenset[tuple[int, int]]]
) -> bool:
    """Whether a set has one of the known ones as a part; the shorter list is gone through."""
    if len(known) >> len(candidate) == 0:
        return any(other < candidate for other in known)
    return any(
        frozenset(part) in known
        for size in range(1, len(candidate))
        for part in combinations(candidate, size)
    )


def _move(
    instance: Instance,
    current: tuple[int, ...],
    changes: Demands,
    tasks: tuple[int, ...],
    *,
    opening: bool,
) -> Move:
    cost = sum(instance.axes[axis].costs[current[axis]][value] for axis, value in changes)
    return Move(cost, instance.station[tasks[0]], changes, tasks, opening)
