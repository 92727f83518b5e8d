"""Search of the most promising state first (A*): the fewest changeovers, with proof.

The state with the least changeover so far and to come is opened next. Once that is a state with
all tasks done, no other order is cheaper. Where the search is ended before, no order can go below
what its most promising open state may still come to.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from heapq import heappop, heappush

from dryfit.order.guide import Guide, StateKey
from dryfit.order.instance import Instance
from dryfit.order.states import children, dearer, start
from dryfit.order.watching import Lookout


@dataclass(frozen=True, slots=True)
class Reached:
    """What a search came to.

    order   task indexes of an order with the fewest changeovers; None if the limit came first,
            or if no order is below the ceiling
    least   changeover, in tenths, that no order can go below
    made    states made
    ended   the search ran to its end: `least` is what the best order needs, or it is the ceiling
    opened  per opened state, that is (unfinished tasks as bits, value of every axis), the
            changeover up to there; the rest needs `least` without it, or more
    """

    order: tuple[int, ...] | None
    least: int
    made: int
    ended: bool
    opened: Mapping[StateKey, int]


def best_first(
    instance: Instance,
    guide: Guide,
    limit: int,
    ceiling: int | None = None,
    lookout: Lookout | None = None,
) -> Reached:
    """The fewest changeovers, if making `limit` states is enough to find them.

    With a ceiling only an order that needs less is looked for. Walks do not count.
    """
    every = (1 << len(instance.station)) - 1
    first = start(instance, walking=False)
    left = guide.remaining(every & ~first.done, first.available, first.current)
    heap = [(left, -first.done.bit_count(), 0, first)]
    seen = {first.done: [first]}
    opened: dict[StateKey, int] = {}
    made = 1
    while heap:
        promised, _, _, state = heappop(heap)
        if ceiling is not None and promised >= ceiling:
            break
        if state.done == every:
            return Reached(state.order(), state.spent, made, ended=True, opened=opened)
        if made >= limit:
            return Reached(None, promised, made, ended=False, opened=opened)
        key = every & ~state.done, state.current
        if opened.get(key, state.spent + 1) <= state.spent:
            continue
        opened[key] = state.spent
        offspring = children(instance, state, None, walking=False)
        if lookout is not None:
            lookout.count(len(offspring))
        for child in offspring:
            rivals = seen.setdefault(child.done, [])
            if any(dearer(instance, rival, child, walking=False) for rival in rivals):
                continue
            rivals.append(child)
            left = guide.remaining(every & ~child.done, child.available, child.current)
            total = max(promised, child.spent + left)
            if ceiling is None or total < ceiling:
                made += 1
                heappush(heap, (total, -child.done.bit_count(), made, child))
    assert ceiling is not None, "without a ceiling some order is the best"
    return Reached(None, ceiling, made, ended=True, opened=opened)
