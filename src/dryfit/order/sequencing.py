"""Local search where all set-up is on one axis and costs depend on what was set before.

Where every task demands a value of that axis, at one station, an order is a path whose cost is a
sum over neighbours: the sequential ordering problem. A move swaps two blocks side by side. Three
pairs of neighbours tell what it costs, however long the blocks are; whether a precedence forbids
it is only looked at when the cost will do. Dearer moves are accepted by annealing: less and less
so, first with blocks of any length, then with short ones.
"""

import random
from dataclasses import dataclass
from itertools import pairwise
from math import log

from dryfit.order.instance import Instance
from dryfit.order.watching import Lookout, Order

SWAPS = 100  # swaps of blocks that take about as long as a move of the other searches
SHORT = 30
ROUNDS = ((0.6, None), (0.3, SHORT))  # share of a usual cost accepted at first; longest block
COOLED = 0.02  # what is left of it in the end
BATCH = 100  # swaps between two looks at the temperature


@dataclass(slots=True)
class _Path:
    """A path from the start to the end, which are numbered after the tasks, and the best so far.

    costs   from each task or the start to each task or the end
    before  tasks that must be done before each (bits)
    """

    costs: list[list[int]]
    before: list[int]
    tasks: list[int]
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


def sequenced(instance: Instance, order: Order, moves: int, lookout: Lookout) -> tuple[Order, int]:
    """An order that costs no more than the given one, and the work counted.

    The instance must be a path; `moves` are worth a hundred swaps each.
    """
    path = _path_of(instance, order)
    rng = random.Random(len(order))  # noqa: S311 - a search, not a secret
    usual = _usual_cost(path)
    for share, longest in ROUNDS:
        batches = moves * SWAPS // (BATCH * len(ROUNDS))
        path.cost, path.tasks = path.best, path.kept.copy()
        length = min(longest or len(order), len(order) // 2 + 1)
        for number in range(batches):
            heat = share * usual * COOLED ** (number / batches)
            _swap(path, heat, length, rng)
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
    return _Path(costs, [*instance.predecessors, 0, 0], tasks, cost, cost, tasks.copy())


def _usual_cost(path: _Path) -> int:
    """How much dearer than the cheapest a cost is at the lower quartile of all."""
    known = sorted(cost for row in path.costs for cost in row if cost)
    return known[len(known) // 4] - known[0] if known else 1


def _swap(path: _Path, heat: float, longest: int, rng: random.Random) -> None:
    """Try a batch of swaps and make those that will do; the best order on the way is kept."""
    costs, tasks = path.costs, path.tasks
    lot = rng.random
    places = len(tasks) - 2
    for _ in range(BATCH):
        first = 1 + int(lot() * places)
        middle = first + 1 + int(lot() * lot() * longest)
        last = middle + 1 + int(lot() * lot() * longest)
        if last > places + 1:
            continue
        before, begun, ended = tasks[first - 1], tasks[first], tasks[middle - 1]
        next_, closed, after = tasks[middle], tasks[last - 1], tasks[last]
        change = (
            costs[before][next_]
            + costs[closed][begun]
            + costs[ended][after]
            - costs[before][begun]
            - costs[ended][next_]
            - costs[closed][after]
        )
        if change > 0 and change > -heat * log(1.0 - lot()):
            continue
        if _may_swap(path, first, middle, last):
            tasks[first:last] = tasks[middle:last] + tasks[first:middle]
            path.cost += change
            if path.cost < path.best:
                path.best, path.kept = path.cost, tasks.copy()


def _may_swap(path: _Path, first: int, middle: int, last: int) -> bool:
    """Whether no task of the second block must be done after one of the first."""
    early = 0
    for task in path.tasks[first:middle]:
        early |= 1 << task
    return all(not path.before[task] & early for task in path.tasks[middle:last])
