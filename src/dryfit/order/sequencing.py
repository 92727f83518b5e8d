"""Local search where all set-up is on one axis and costs depend on what was set before.

Where every task demands a value of that axis, at one station, an order is a path whose cost is a
sum over neighbours: the sequential ordering problem. A move swaps two blocks side by side. Three
pairs of neighbours tell what it costs, however long the blocks are; whether a precedence forbids
it is only looked at when the cost will do. One of the three new pairs is drawn from the cheapest
ones of a task. Where both blocks are drawn at random few will do: in half a second published
instances of 26 to 110 tasks came to 0 to 16 % above the best known, and so to 0 to 3 %.

Dearer moves are accepted by annealing, less and less so. Round after round that begins again: the
best order so far is heated, which shakes it, and cooled. It is heated as much as at first: at half
of that two runs of five stayed in the valley where they were (26 tasks, 3 and 4 % above the best).
"""

import random
from collections.abc import Callable
from dataclasses import dataclass
from itertools import pairwise
from math import log

from dryfit.order.improve import offer
from dryfit.order.instance import Instance, turned_round
from dryfit.order.projecting import ancestors_of
from dryfit.order.sets import bits
from dryfit.order.watching import Lookout, Order

SWAPS = 100  # swaps of blocks that take about as long as a move of the other searches
BATCH = 100  # swaps between two looks at the temperature
TOLD = 100  # batches between two looks whether there is a better order to hand over
ROUNDS = 10
HEATED = 0.6  # share of a usual cost accepted when a round begins
COOLED = 0.02  # what is left of it at the end of a round
SHORT = 30  # longest block in every other round
NEAR = 12  # cheapest tasks to come next that are tried


@dataclass(slots=True)
class _Path:
    """A path from the start to the end, which are numbered after the tasks, and the best so far.

    costs   from each task or the start to each task or the end
    before  per task, the start and the end: tasks that must be done before it (bits)
    near    per task and the start: the cheapest tasks that may come next
    tasks   the path
    place   per task, the start and the end: its place
    """

    costs: list[list[int]]
    before: list[int]
    near: list[list[int]]
    tasks: list[int]
    place: list[int]
    cost: int
    best: int
    kept: list[int]


def is_path(instance: Instance) -> bool:
    """Whether an order of the instance costs a sum over neighbours that is worth this search."""
    demanded = {row[0][0] for row in instance.demands if len(row) == 1}
    return (
        len(demanded) == 1
        and not instance.choices
        and all(len(row) == 1 for row in instance.demands)
        and len(set(instance.station)) == 1
        and not instance.axes[demanded.pop()].by_entry
    )


def never_waits(instance: Instance) -> bool:
    """Whether no order keeps the worker waiting, so that set-up is all that tells them apart."""
    return all(
        task.splittable and not task.after and not task.holds for task in instance.problem.tasks
    ) and not any(instance.lags)


def sequenced(instance: Instance, order: Order, moves: int, lookout: Lookout) -> tuple[Order, int]:
    """An order that costs no more than the given one, and the work counted.

    The instance must be a path; `moves` are worth a hundred swaps each. The lookout is handed
    what is better than the given order.
    """
    path = _path_of(instance, order)
    rng = random.Random(len(order))  # noqa: S311 - a search, not a secret
    usual = _usual_cost(path)
    told = path.best
    batches = moves * SWAPS // (BATCH * ROUNDS)
    for turn in range(ROUNDS):
        _begin_again(path)
        longest = min(SHORT, len(order)) if turn % 2 else len(order)
        for number in range(batches):
            _swap(path, HEATED * usual * COOLED ** (number / batches), longest, rng)
            if number % TOLD == TOLD - 1 and path.best < told:
                told = path.best
                offer(instance, tuple(path.kept[1:-1]), lookout)
            lookout.count(1)
    return tuple(path.kept[1:-1]), moves


def _path_of(instance: Instance, order: Order) -> _Path:
    (axis, _), *_ = instance.demands[0]
    table = instance.axes[axis].costs
    values = [row[0][1] for row in instance.demands]
    start = instance.standing[axis]
    costs = [[*(table[old][new] for new in values), 0, 0] for old in (*values, start)]
    tasks = [len(order), *order, len(order) + 1]
    cost = sum(costs[left][right] for left, right in pairwise(tasks[:-1]))
    before = ancestors_of(instance)
    near = _near(costs, before)
    return _Path(costs, [*before, 0, 0], near, tasks, [0] * len(tasks), cost, cost, tasks.copy())


def _near(costs: list[list[int]], before: tuple[int, ...]) -> list[list[int]]:
    """Per task, and for the start: the cheapest tasks that may come right after it."""
    after = [bits(row) for row in turned_round(before)]
    tasks = range(len(before))
    followers = [
        [
            other
            for other in tasks
            if other != task and not before[task] >> other & 1 and not after[task] & before[other]
        ]
        for task in tasks
    ]
    followers.append([task for task in tasks if not before[task]])
    return [sorted(row, key=costs[task].__getitem__)[:NEAR] for task, row in enumerate(followers)]


def _usual_cost(path: _Path) -> int:
    """How much dearer than the cheapest a cost is at the lower quartile of all."""
    known = sorted(cost for row in path.costs for cost in row if cost)
    return known[len(known) // 4] - known[0] if known else 1


def _begin_again(path: _Path) -> None:
    """Go back to the best order."""
    path.cost, path.tasks = path.best, path.kept.copy()
    for place, task in enumerate(path.tasks):
        path.place[task] = place


def _swap(path: _Path, heat: float, longest: int, rng: random.Random) -> None:
    """Try a batch of swaps and make those that will do; the best order on the way is kept."""
    costs, near, tasks, place, lot = path.costs, path.near, path.tasks, path.place, rng.random
    for _ in range(BATCH):
        drawn = _drawn(near, place, longest, lot)
        if drawn is None:
            continue
        first, middle, last = drawn
        before, begun, ended = tasks[first - 1], tasks[first], tasks[middle - 1]
        next_, closed, after = tasks[middle], tasks[last - 1], tasks[last]
        left = costs[ended]
        change = (
            costs[before][next_]
            + costs[closed][begun]
            + left[after]
            - costs[before][begun]
            - left[next_]
            - costs[closed][after]
        )
        if change > 0 and change > -heat * log(1.0 - lot()):
            continue
        if _swapped(path, first, middle, last):
            path.cost += change
            if path.cost < path.best:
                path.best, path.kept = path.cost, tasks.copy()


def _drawn(
    near: list[list[int]], place: list[int], longest: int, lot: Callable[[], float]
) -> tuple[int, int, int] | None:
    """Places where two blocks begin, and the one after, so that a task gets a near one next.

    None if these two stand so already, or a block would be too long.
    """
    task = int(lot() * len(near))
    row = near[task]
    if not row:
        return None
    here, there = place[task], place[row[int(lot() * lot() * len(row))]]
    if there < here:  # the near one begins the first block, the task ends the second
        length = here - there
        return None if length > longest else (there, there + 1 + int(lot() * length), here + 1)
    if there - here == 1 or there - here > longest:
        return None
    length = 1 + int(lot() * lot() * longest)
    if lot() < 0.5:  # the task stands before both blocks, the near one begins the second
        return None if there + length > len(near) else (here + 1, there, there + length)
    return None if length > here else (here + 1 - length, here + 1, there)


def _swapped(path: _Path, first: int, middle: int, last: int) -> bool:
    """Swap two blocks, unless a task of the second must be done after one of the first."""
    tasks, place, before = path.tasks, path.place, path.before
    first_block, blocks = tasks[first:middle], tasks[middle:last]
    early = 0
    for task in first_block:
        early |= 1 << task
    for task in blocks:
        if before[task] & early:
            return False
    blocks += first_block
    tasks[first:last] = blocks
    for number, task in enumerate(blocks, first):
        place[task] = number
    return True
