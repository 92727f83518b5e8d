"""An order made from that of a problem a little different: what is still there keeps its turn."""

from collections.abc import Sequence

from dryfit.order.decoder import advance, opening
from dryfit.order.improve import keeps_visits
from dryfit.order.instance import Instance
from dryfit.order.projecting import ancestors_of
from dryfit.order.sets import bits
from dryfit.order.watching import Order


def repaired(instance: Instance, names: Sequence[str], worth: int) -> Order | None:
    """A valid order of the instance that is as near as can be to one of names.

    Tasks that are gone are dropped; what no longer keeps the precedences waits for what it needs;
    each new task is put where it costs least, `worth` * set-up + waiting. None where a together
    group would be torn.
    """
    ancestors = ancestors_of(instance)
    index = {task.id: i for i, task in enumerate(instance.problem.tasks)}
    order = _in_turn([index[name] for name in names if name in index], ancestors)
    placed = bits(order)
    for task in instance.topological:
        if placed >> task & 1:
            continue
        at = _cheapest_place(instance, order, task, ancestors, worth)
        if at is None:
            return None
        order.insert(at, task)
        placed |= 1 << task
    return tuple(order) if keeps_visits(instance, order) else None


def _in_turn(tasks: Sequence[int], ancestors: Sequence[int]) -> list[int]:
    """The tasks in this order, each after those of them that must be done before it."""
    left, waiting, order = bits(tasks), list(tasks), list[int]()
    while waiting:
        task = next(task for task in waiting if not ancestors[task] & left)
        waiting.remove(task)
        left &= ~(1 << task)
        order.append(task)
    return order


def _cheapest_place(
    instance: Instance, order: list[int], task: int, ancestors: Sequence[int], worth: int
) -> int | None:
    """Where a task may stand at the least cost, the first of equals; None if nowhere."""
    first = 1 + max(
        (i for i, other in enumerate(order) if ancestors[task] >> other & 1), default=-1
    )
    last = next((i for i, other in enumerate(order) if ancestors[other] >> task & 1), len(order))
    best: tuple[int, int] | None = None
    before = opening(instance)
    advance(instance, before, order[:first])
    for at in range(first, last + 1):
        progress = before.copy()
        limit = None if best is None else best[0] - 1
        after = (task, *order[at:])
        if advance(instance, progress, after, worth, limit) and keeps_visits(
            instance, (*order[:at], *after)
        ):
            best = worth * progress.setup + progress.waiting, at
        advance(instance, before, order[at : at + 1])
    return None if best is None else best[1]
