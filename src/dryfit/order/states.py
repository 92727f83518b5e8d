"""States of the search for few changeovers, and the moves between them.

Nothing matters to what is still to be paid but the set of finished tasks and the value of every
axis. Facts used, each exact for costs that obey the triangle inequality:

*Closure*: a task that is available and changes no axis is done at once.
*Minimal change sets*: a task whose changes include all changes of another available task can
wait until that one is done; tasks with the same changes are done together.
*Dead values*: a value that no unfinished task wants is as good as "not set" (where costs depend
on the value entered only).
*Dead swaps*: a move that replaces only dead values, and by values that are dead again once it is
made, costs the same whenever it is made: it is taken at once and nothing else is tried.

A task that opens a together group binds the worker to its station, so it is exempt from all
four: doing it is always a choice.

Where a task leaves a choice of values (an axis with ranges; every change of it costs the same),
each value is a move of its own, but those that serve no more unfinished tasks than another one:
that one can take their place whenever they are set. Closure, minimal change sets and dead values
speak of values that are set, and hold as they stand. A dead swap is only forced if on each axis
one of its tasks shares *no* acceptable value with any task that is unfinished after it: else the
change for that other task might have served this one too. If it shares none, every order pays a
change that serves nothing but tasks that are done by the move.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from itertools import combinations

from dryfit.order.axes import Demands
from dryfit.order.instance import Instance
from dryfit.order.picking import is_alone, ways_to_set
from dryfit.order.sets import members


@dataclass(slots=True)
class State:
    """A point reached by the search.

    spent      changeover so far, plus walks where the search counts them
    walks      number of walks
    done       finished tasks (bits)
    available  unfinished tasks all of whose predecessors are finished (bits)
    current    value of every axis, dead values as 0
    station    where the worker stands, -1 at the start
    segment    tasks done since `parent`, in order
    """

    spent: int
    walks: int
    done: int
    available: int
    current: tuple[int, ...]
    station: int
    segment: tuple[int, ...]
    parent: "State | None"

    def order(self) -> tuple[int, ...]:
        """All tasks done so far."""
        segments = []
        state: State | None = self
        while state is not None:
            segments.append(state.segment)
            state = state.parent
        return tuple(task for segment in reversed(segments) for task in segment)


@dataclass(frozen=True, slots=True)
class Move:
    """Tasks that need the same changes from here; `opening` if it opens a together group."""

    cost: int
    station: int
    changes: Demands
    tasks: tuple[int, ...]
    opening: bool


def start(instance: Instance, *, walking: bool) -> State:
    """The state before the first change: everything that needs no setting is done."""
    sources = sum(1 << task for task, mask in enumerate(instance.predecessors) if not mask)
    empty = State(0, 0, 0, sources, instance.standing, -1, (), None)
    return _settled(instance, empty, empty.current, (), -1, walking=walking)


def children(
    instance: Instance, state: State, cap: int | None, *, walking: bool
) -> tuple[list[State], bool]:
    """States after each worthwhile move, cheapest move first; and whether any was left out.

    `cap` limits the moves tried, None tries all. `walking` counts walks in `spent` and leaves
    free tasks at other stations to be chosen; without it the search is exact for changeover.
    """
    moves = _moves(instance, state, walking=walking)
    reached = []
    for move in moves[:cap]:
        child = _after(instance, state, move, walking=walking)
        at_hand = not walking or move.station == state.station
        if at_hand and _is_dead_swap(instance, state, move, child):
            return [child], False
        reached.append(child)
    return reached, len(reached) < len(moves)


def _allowed(instance: Instance, done: int) -> tuple[int, int]:
    """Tasks (bits) that the together groups permit now, and those that would open a group."""
    permitted, opening = -1, 0
    for group in instance.groups:
        if not group.tasks & done:
            opening |= group.tasks
        elif group.tasks & ~done:
            permitted &= instance.at_station[group.station]
    return permitted, opening


def _moves(instance: Instance, state: State, *, walking: bool) -> list[Move]:
    permitted, opening = _allowed(instance, state.done)
    grouped: dict[tuple[int, Demands], list[int]] = {}
    openers: list[tuple[int, Demands]] = []
    current = state.current
    for task in members(state.available & permitted):
        changes = tuple(pair for pair in instance.demands[task] if current[pair[0]] != pair[1])
        ways: tuple[Demands, ...] = (changes,)
        if instance.choices:
            ways = ways_to_set(instance, current, ~state.done, task, changes)
        for way in ways:
            if opening >> task & 1:
                openers.append((task, way))
            else:
                grouped.setdefault((instance.station[task], way), []).append(task)
    minimal = _minimal_sets(grouped)
    moves = [
        _move(instance, state, changes, tuple(tasks), opening=False, walking=walking)
        for (_, changes), tasks in grouped.items()
        if not changes or frozenset(changes) in minimal
    ]
    moves += [
        _move(instance, state, changes, (task,), opening=True, walking=walking)
        for task, changes in openers
        if not any(other <= frozenset(changes) for other in minimal)
    ]
    moves.sort(key=lambda move: (move.cost, -len(move.tasks), move.tasks))
    return moves


def _minimal_sets(
    grouped: Iterable[tuple[int, Demands]],
) -> set[frozenset[tuple[int, int]]]:
    """Sets of changes that include no other one; sets of different stations have nothing in common.

    `grouped` has (station, changes) pairs. The empty set, a free task, is passed over.
    """
    minimal: dict[int, set[frozenset[tuple[int, int]]]] = {}
    for station, changes in sorted(grouped, key=lambda key: len(key[1])):
        known = minimal.setdefault(station, set())
        candidate = frozenset(changes)
        if changes and not _includes_any(candidate, known):
            known.add(candidate)
    return {changes for known in minimal.values() for changes in known}


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
    state: State,
    changes: Demands,
    tasks: tuple[int, ...],
    *,
    opening: bool,
    walking: bool,
) -> Move:
    station = instance.station[tasks[0]]
    cost = sum(instance.axes[axis].costs[state.current[axis]][value] for axis, value in changes)
    if walking and station != state.station:
        cost += instance.problem.walk
    return Move(cost, station, changes, tasks, opening)


def _after(instance: Instance, state: State, move: Move, *, walking: bool) -> State:
    current = list(state.current)
    for axis, value in move.changes:
        current[axis] = value
    return _settled(
        instance, state, tuple(current), move.tasks, move.station, walking=walking, cost=move.cost
    )


def _settled(
    instance: Instance,
    parent: State,
    current: tuple[int, ...],
    tasks: tuple[int, ...],
    station: int,
    *,
    walking: bool,
    cost: int = 0,
) -> State:
    """The state after `tasks` and the closure; with `walking` only at the station itself."""
    done, available = parent.done, parent.available
    walks = parent.walks + (station != parent.station)
    segment: list[int] = []
    fits = _fitting(instance, current)
    pending = sum(1 << task for task in tasks)
    while True:
        while pending:
            task = (pending & -pending).bit_length() - 1
            done |= 1 << task
            available &= ~(1 << task)
            segment.append(task)
            for after in instance.successors[task]:
                if not instance.predecessors[after] & ~done:
                    available |= 1 << after
            pending &= available
        permitted, opening = _allowed(instance, done)
        free = available & fits & permitted & ~opening
        pending = free & instance.at_station[station] if station >= 0 else 0
        if not pending:
            if walking or not free:
                break
            station = instance.station[(free & -free).bit_length() - 1]
            walks += 1
            pending = free & instance.at_station[station]
    current = tuple(
        0 if value and table.by_entry and not table.wanted[value] & ~done else value
        for value, table in zip(current, instance.axes, strict=True)
    )
    return State(
        parent.spent + cost, walks, done, available, current, station, tuple(segment), parent
    )


def _fitting(instance: Instance, current: tuple[int, ...]) -> int:
    fits = -1
    for table, value in zip(instance.axes, current, strict=True):
        fits &= table.fits[value]
    return fits


def _is_dead_swap(instance: Instance, state: State, move: Move, child: State) -> bool:
    return not move.opening and all(
        instance.axes[axis].by_entry
        and not state.current[axis]
        and not child.current[axis]
        and (not instance.axes[axis].ranged or is_alone(instance, move.tasks, axis, child.done))
        for axis, _ in move.changes
    )


def dearer(instance: Instance, better: State, worse: State, *, walking: bool) -> bool:
    """Whether `worse`, with the same tasks done, can never end cheaper than `better`."""
    regret = better.spent - worse.spent
    if regret > 0:
        return False
    if walking and better.station != worse.station:
        regret += instance.problem.walk
    for table, mine, other in zip(instance.axes, better.current, worse.current, strict=True):
        if mine != other:
            regret += table.regret[mine][other]
            if regret > 0:
                return False
    return True
