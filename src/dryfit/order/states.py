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

from dataclasses import dataclass

from dryfit.order.instance import Instance
from dryfit.order.moves import Move, moves_at
from dryfit.order.picking import is_alone


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
    fits       tasks that need no change (bits); what it says of finished ones means nothing
    moves      per station: what can be done there next, once it is known
    """

    spent: int
    walks: int
    done: int
    available: int
    current: tuple[int, ...]
    station: int
    segment: tuple[int, ...]
    parent: "State | None"
    fits: int
    moves: tuple[tuple[Move, ...], ...] | None = None

    def order(self) -> tuple[int, ...]:
        """All tasks done so far."""
        segments = []
        state: State | None = self
        while state is not None:
            segments.append(state.segment)
            state = state.parent
        return tuple(task for segment in reversed(segments) for task in segment)


def start(instance: Instance, *, walking: bool) -> State:
    """The state before the first change: everything that needs no setting is done."""
    sources = sum(1 << task for task, mask in enumerate(instance.predecessors) if not mask)
    fits = -1
    for table, value in zip(instance.axes, instance.standing, strict=True):
        fits &= table.fits[value]
    empty = State(0, 0, 0, sources, instance.standing, -1, (), None, fits)
    first = _settled(instance, empty, empty.current, (), -1, walking=walking)
    first.current = _alive(instance, first.current, first.done, -1)
    return first


def children(instance: Instance, state: State, cap: int | None, *, walking: bool) -> list[State]:
    """States after each worthwhile move, cheapest move first.

    `cap` limits the moves tried, None tries all. `walking` counts walks in `spent` and leaves
    free tasks at other stations to be chosen; without it the search is exact for changeover.
    """
    reached = []
    for cost, move in _moves(instance, state, walking=walking)[:cap]:
        child = _after(instance, state, move, cost, walking=walking)
        at_hand = not walking or move.station == state.station
        if at_hand and _is_dead_swap(instance, state, move, child):
            return [child]
        reached.append(child)
    return reached


def _allowed(instance: Instance, done: int) -> tuple[int, int]:
    """Tasks (bits) that the together groups permit now, and those that would open a group."""
    permitted, opening = -1, 0
    for group in instance.groups:
        if not group.tasks & done:
            opening |= group.tasks
        elif group.tasks & ~done:
            permitted &= instance.at_station[group.station]
    return permitted, opening


def _moves(instance: Instance, state: State, *, walking: bool) -> list[tuple[int, Move]]:
    """Moves with their costs, cheapest first. Those of a station stay until something is done.

    The value of an axis, which groups are opened, and what is available at a station change only
    with what is done there, or with what becomes available.
    """
    permitted, opening = _allowed(instance, state.done)
    parent = state.parent
    known = None if parent is None else parent.moves
    new = -1
    if parent is not None:
        new = (state.done ^ parent.done) | (state.available ^ parent.available)
    state.moves = tuple(
        known[station]
        if known is not None and not new & tasks
        else moves_at(instance, state.current, ~state.done, state.available & tasks, opening)
        for station, tasks in enumerate(instance.at_station)
    )
    walk = instance.problem.walk if walking else 0
    moves = [
        (move.cost + walk * (station != state.station), move)
        for station, there in enumerate(state.moves)
        if there and permitted & instance.at_station[station]
        for move in there
    ]
    moves.sort(key=lambda pair: (pair[0], -len(pair[1].tasks), pair[1].tasks))
    return moves


def _after(instance: Instance, state: State, move: Move, cost: int, *, walking: bool) -> State:
    current = list(state.current)
    for axis, value in move.changes:
        current[axis] = value
    return _settled(
        instance, state, tuple(current), move.tasks, move.station, walking=walking, cost=cost
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
    fits = parent.fits
    if tasks:
        here = -1
        for axis in instance.axes_at[station]:
            here &= instance.axes[axis].fits[current[axis]]
        fits ^= (fits ^ here) & instance.at_station[station]
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
    current = _alive(instance, current, done, done ^ parent.done)
    return State(
        parent.spent + cost, walks, done, available, current, station, tuple(segment), parent, fits
    )


def _alive(
    instance: Instance, current: tuple[int, ...], done: int, touched: int
) -> tuple[int, ...]:
    """The values of the axes, 0 where no unfinished task wants them any more.

    `touched` are tasks (bits) at whose stations this may have changed.
    """
    dead = []
    for axes, tasks in zip(instance.axes_at, instance.at_station, strict=True):
        if touched & tasks:
            for axis in axes:
                value, table = current[axis], instance.axes[axis]
                if value and table.by_entry and not table.wanted[value] & ~done:
                    dead.append(axis)
    if not dead:
        return current
    alive = list(current)
    for axis in dead:
        alive[axis] = 0
    return tuple(alive)


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
