"""From first orders to the best one found: by way of other worths of set-up.

What is searched for first is not what is wanted. With set-up worth more, tasks that share a
setting come together, and stay so while waiting is then filled; with set-up worth little from the
beginning they would be scattered for good.
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


def refined(
    instance: Instance, found: Sequence[Order], k: int, effort: int, lookout: Lookout
) -> tuple[Order, int]:
    """The best order after local search, and the work counted."""
    worths = _worths(k)
    order = min(score(instance, order, worths[0][0]) for order in found)[-1]
    proposals = proposals_of(instance, effort)
    # One order alone has only been mended; of several a path is among them, searched already.
    done = len(found) > 1 and is_path(instance) and never_waits(instance)
    if len(order) < 2 or not proposals or done:
        return min(score(instance, order, k) for order in found)[-1], 0
    played = 0
    if k >= STEEP:
        order, played = shuffled(instance, order, proposals // 3, lookout)
    for worth, share in worths:
        order, more = improved(instance, order, worth, proposals * share // 10, lookout)
        played += more
    return min(score(instance, order, k) for order in (order, *found))[-1], played


def _worths(k: int) -> tuple[tuple[int, int], ...]:
    """What set-up is worth, one search after another, and their shares in tenths."""
    if k >= STEEP:
        return ((k, 7),)
    if k >= MIDDLE:
        return (STEEP, 3), (k, 7)
    if k >= SMOOTH:
        return (STEEP, 1), (MIDDLE, 3), (k, 5)
    return (MIDDLE, 2), (SMOOTH, 4), (k, 4)
