"""From first orders to the best one found: by way of other worths of set-up.

What is searched for first is not what is wanted. With set-up worth more, tasks that share a
setting come together, and stay so while waiting is then filled; with set-up worth little from the
beginning they would be scattered for good.

Where set-up is worth very much, an order with a little less of it can lie far away, and one
search gets stuck. So the search for a middling worth, which such a plan is compared with, is made
as well, and set-up alone (walks and test cuts too) is searched for several times, from each of
the orders known by then, by other lots.
"""

from collections.abc import Sequence

from dryfit.order.first_orders import proposals_of
from dryfit.order.improve import improved, score
from dryfit.order.instance import Instance
from dryfit.order.sequencing import is_path, never_waits
from dryfit.order.shuffling import shuffled
from dryfit.order.watching import Lookout, Order

SMOOTH, STEEP = 4, 100
MIDDLE = 10

LOTS, TIMES = 6, 2
"""Searches for little set-up alone where it is worth very much, and each one's multiple of the
usual moves, which for set-up alone cost little."""

Orders = tuple[Order, ...]


def refined(
    instance: Instance, found: Sequence[Order], k: int, effort: int, lookout: Lookout
) -> tuple[Order, int]:
    """The best order after local search, and the work counted.

    The search for `SMOOTH` is part of those for less and for very much, so that no plan it comes
    to is cheaper at their `k`: plans for different worths are compared side by side.
    """
    proposals = proposals_of(instance, effort)
    # One order alone has only been mended; of several a path is among them, searched already.
    done = len(found) > 1 and is_path(instance) and never_waits(instance)
    if len(found[0]) < 2 or not proposals or done:
        return _cheapest(instance, found, k), 0
    if k < STEEP:
        last, played = _chained(instance, found, _worths(k), proposals, lookout)
    else:
        near, played = shuffled(instance, _cheapest(instance, found, k), proposals // 3, lookout)
        last, more = _chained(instance, (near,), _worths(k), proposals, lookout)
        played += more
    orders = (*last, *found)
    if SMOOTH <= k < STEEP or is_path(instance):  # a path was searched for by itself
        return _cheapest(instance, orders, k), played
    chained, more = _chained(instance, found, _worths(SMOOTH), proposals, lookout)
    played += more
    orders = (*chained, *orders)
    if k >= STEEP:
        fewer, more = _with_fewer(instance, (*chained, *found), k, proposals, lookout)
        last, again = _chained(instance, fewer, _worths(k), proposals, lookout)
        played += more + again
        orders = (*last, *fewer, *orders)
    return _cheapest(instance, orders, k), played


def _chained(
    instance: Instance,
    found: Sequence[Order],
    worths: tuple[tuple[int, int], ...],
    proposals: int,
    lookout: Lookout,
) -> tuple[Orders, int]:
    """The order after each of several searches, one from where the other ended; the work."""
    order = _cheapest(instance, found, worths[0][0])
    orders, played = [], 0
    for worth, share in worths:
        order, more = improved(instance, order, worth, proposals * share // 10, lookout)
        orders.append(order)
        played += more
    return tuple(orders), played


def _with_fewer(
    instance: Instance, found: Orders, k: int, proposals: int, lookout: Lookout
) -> tuple[Orders, int]:
    """The orders, cheapest at `k` first, with those of less set-up made from them; the work."""
    orders = sorted(dict.fromkeys(found), key=lambda order: score(instance, order, k))
    walks = instance.problem.walk * len(set(instance.station))
    floor = lookout.bound + walks + sum(instance.trial_costs)
    played = 0
    for lot in range(LOTS):
        if min(score(instance, order, k)[2] for order in orders) <= floor:
            break
        start = orders[lot % len(orders)]
        order, more = shuffled(instance, start, TIMES * proposals, lookout, lot)
        orders.append(order)
        played += more
    return tuple(orders), played


def _cheapest(instance: Instance, orders: Sequence[Order], k: int) -> Order:
    return min(score(instance, order, k) for order in orders)[-1]


def _worths(k: int) -> tuple[tuple[int, int], ...]:
    """What set-up is worth, one search after another, and their shares in tenths."""
    if k >= STEEP:
        return ((k, 7),)
    if k >= MIDDLE:
        return (STEEP, 3), (k, 7)
    if k >= SMOOTH:
        return (STEEP, 1), (MIDDLE, 3), (k, 5)
    return (MIDDLE, 2), (SMOOTH, 4), (k, 4)
