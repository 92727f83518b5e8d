"""What it costs to do a part of an order at another time, all else in the order as it is.

A block is a stretch of an order: the tasks of a step, of a visit. It is taken out and put back
between two other blocks; each such place is priced by decoding the whole order anew, so that a
price is exact for that move. It says nothing of moving several things at a time.
"""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from itertools import chain

from dryfit.order.decoder import Progress, advance, decoded, elapsed, opening
from dryfit.order.improve import keeps_visits
from dryfit.order.instance import Instance, compiled
from dryfit.order.picks import picked, picks_of
from dryfit.order.problem import Precedence, Problem
from dryfit.order.result import Schedule
from dryfit.order.sets import bits, members

Block = tuple[int, ...]
Bound = Callable[[Instance, Block, int], bool]


@dataclass(frozen=True, slots=True)
class Move:
    """A block at another place of the order.

    before   the block that it stands before then; the number of blocks where it comes last
    along    blocks between here and there that have to go with it, ascending
    setup, waiting, elapsed  what it adds to the totals, tenths; below nothing where it saves
    order    all tasks in the order that comes of it
    """

    before: int
    along: tuple[int, ...]
    setup: int
    waiting: int
    elapsed: int
    order: tuple[str, ...]

    def price(self, worth: int) -> tuple[int, int]:
        """What the move costs: `worth` * set-up + waiting, then elapsed time; nothing at a tie."""
        return worth * self.setup + self.waiting, self.elapsed


@dataclass(frozen=True, slots=True)
class Room:
    """Where a block can stand while all others keep their order.

    earlier, later  moves of the block alone, the nearest place first; empty where none keeps
                    the rules
    after    precedences from the nearest block before it without which it cannot be done
    until    precedences to the nearest block after it that cannot be done without it
    """

    earlier: tuple[Move, ...]
    later: tuple[Move, ...]
    after: tuple[Precedence, ...]
    until: tuple[Precedence, ...]


@dataclass(frozen=True, slots=True)
class Laid:
    """An order cut into blocks, with the shop before each of them and at the end."""

    instance: Instance
    blocks: tuple[Block, ...]
    before: tuple[Progress, ...]


def laid(problem: Problem, blocks: Sequence[Sequence[str]]) -> Laid:
    """The blocks of a valid order, ready to be moved.

    blocks  task ids; one after the other they are the order, which `evaluate` would take
    """
    if problem.choices:
        problem = picked(problem, picks_of(problem, tuple(chain.from_iterable(blocks))))
    instance = compiled(problem)
    index = {task.id: i for i, task in enumerate(problem.tasks)}
    numbers = tuple(tuple(index[name] for name in block) for block in blocks)
    shop = opening(instance)
    stages = [shop]
    for block in numbers:
        shop = shop.copy()
        advance(instance, shop, block)
        stages.append(shop)
    return Laid(instance, numbers, tuple(stages))


def room(row: Laid, at: int) -> Room:
    """Where the block numbered `at` can stand alone, and what holds it there."""
    first = _barrier(row, at, range(at - 1, -1, -1), _needs)
    last = _barrier(row, at, range(at + 1, len(row.blocks)), _needed_by)
    early = range(at - 1, -1 if first is None else first, -1)
    late = range(at + 2, (len(row.blocks) if last is None else last) + 1)
    return Room(
        earlier=tuple(_moves(row, at, early)),
        later=tuple(_moves(row, at, late)),
        after=() if first is None else _reasons(row, row.blocks[first], row.blocks[at]),
        until=() if last is None else _reasons(row, row.blocks[at], row.blocks[last]),
    )


def moved(row: Laid, at: int, before: int) -> Move | None:
    """The block put before another, with all blocks that have to go along.

    None where it stands there already, where all that stands between would go along, so that
    nothing changes, or where what must be done in one visit would be parted.
    """
    numbers = list(range(len(row.blocks)))
    if before in {at, at + 1}:
        return None
    if before < at:
        along = _following(row, at, range(at - 1, before - 1, -1), _needs)
        stretch = range(before, at)
        put = [*along, at, *(n for n in stretch if n not in along)]
        order = [*numbers[:before], *put, *numbers[at + 1 :]]
    else:
        along = _following(row, at, range(at + 1, before), _needed_by)
        stretch = range(at + 1, before)
        put = [*(n for n in stretch if n not in along), at, *along]
        order = [*numbers[:at], *put, *numbers[before:]]
    return None if order == numbers else _priced(row, order, before, along, min(at, before))


def schedule_of(row: Laid, move: Move | None = None) -> Schedule:
    """The schedule of the order as it is, or as a move leaves it."""
    index = {task.id: i for i, task in enumerate(row.instance.problem.tasks)}
    order = _flat(row.blocks) if move is None else tuple(index[name] for name in move.order)
    return decoded(row.instance, order)[0]


def _flat(blocks: Sequence[Block]) -> tuple[int, ...]:
    return tuple(task for block in blocks for task in block)


def _needs(instance: Instance, block: Block, other: int) -> bool:
    """Whether a task of the block cannot be done before all of `other` (bits)."""
    return any(instance.predecessors[task] & other for task in block)


def _needed_by(instance: Instance, block: Block, other: int) -> bool:
    own = bits(block)
    return any(instance.predecessors[task] & own for task in members(other))


def _barrier(row: Laid, at: int, others: range, bound: Bound) -> int | None:
    """The first of the other blocks that this one cannot pass."""
    return next(
        (n for n in others if bound(row.instance, row.blocks[at], bits(row.blocks[n]))), None
    )


def _following(row: Laid, at: int, others: range, bound: Bound) -> tuple[int, ...]:
    """The other blocks that the block takes along, directly or by way of another, ascending."""
    taken = [at]
    for other in others:
        if any(bound(row.instance, row.blocks[n], bits(row.blocks[other])) for n in taken):
            taken.append(other)
    return tuple(sorted(taken[1:]))


def _reasons(row: Laid, first: Block, then: Block) -> tuple[Precedence, ...]:
    """The precedences between two blocks; without one it is a visit's task that has to wait."""
    problem = row.instance.problem
    early = {problem.tasks[task].id for task in first}
    late = {problem.tasks[task].id for task in then}
    told = tuple(p for p in problem.precedences if p.before in early and p.after in late)
    return told or tuple(
        Precedence(
            problem.tasks[before].id,
            problem.tasks[task].id,
            0,
            f"one visit: {problem.tasks[task].together}",
        )
        for task in then
        for before in first
        if row.instance.predecessors[task] >> before & 1
    )


def _moves(row: Laid, at: int, places: range) -> Iterator[Move]:
    for before in places:
        move = moved(row, at, before)
        if move is not None:
            yield move


def _priced(
    row: Laid, order: list[int], before: int, along: tuple[int, ...], same: int
) -> Move | None:
    """The move that leaves the blocks in this order, the first `same` of them as they are."""
    instance = row.instance
    tasks = _flat([row.blocks[n] for n in order])
    if not keeps_visits(instance, tasks):
        return None
    shop = row.before[same].copy()
    advance(instance, shop, _flat([row.blocks[n] for n in order[same:]]))
    as_is = row.before[-1]
    return Move(
        before=before,
        along=along,
        setup=shop.setup - as_is.setup,
        waiting=shop.waiting - as_is.waiting,
        elapsed=elapsed(instance, shop) - elapsed(instance, as_is),
        order=tuple(instance.problem.tasks[task].id for task in tasks),
    )
