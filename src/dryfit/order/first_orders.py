"""Orders to begin with: those of narrow beams, and the one with the least set-up shuffled on."""

from dataclasses import replace

from dryfit.order.beam import Beam, Found, search
from dryfit.order.bound import Bound
from dryfit.order.decoder import decoded
from dryfit.order.guide import Guide, Remembering, spans_of
from dryfit.order.improve import offer
from dryfit.order.instance import Instance
from dryfit.order.sequencing import is_path, sequenced
from dryfit.order.shuffling import shuffled
from dryfit.order.watching import Lookout, Order

FIRST_BEAMS = (
    Beam(width=1, moves=6, weight=10, walking=False),
    Beam(width=1, moves=6, weight=13, walking=False),
    Beam(width=4, moves=6, weight=13, walking=False),
)
MANY = 1000  # tasks above which one beam has to do
FULL = 300  # tasks up to which each gets its share of moves


def proposals_of(instance: Instance, effort: int) -> int:
    """Moves that an effort is good for; of more than 300 tasks those of 300, as each is dearer."""
    return effort * min(len(instance.station), FULL)


def first_orders(
    instance: Instance, bound: Bound, effort: int, lookout: Lookout
) -> tuple[list[Order], int, int]:
    """Orders worth improving, the fewest changeover of any, and the work counted.

    `lookout.bound` says below what changeover no order goes.
    """
    beams = FIRST_BEAMS if len(instance.station) <= MANY else FIRST_BEAMS[:1]
    guide = Remembering(bound, spans_of(instance))
    exact = [_beamed(instance, guide, beam, lookout) for beam in beams]
    path = is_path(instance)
    walking = (
        [_beamed(instance, guide, replace(beam, walking=True), lookout) for beam in beams]
        if not path and (instance.problem.walk or len(beams) > 1)
        else []
    )
    opened = sum(result.opened for result in (*exact, *walking))
    orders = [result.order for result in (*exact, *walking)]
    fewest, order = min((found.spent, found.order) for found in exact)
    if path:
        order, played = sequenced(instance, order, proposals_of(instance, effort), lookout)
        orders.append(order)
        offer(instance, order, lookout)
        return orders, decoded(instance, order)[1].changeover, opened + played
    if fewest > lookout.bound and effort and len(order) > 1:
        flat = replace(instance, problem=replace(instance.problem, walk=0))
        share = min(len(order), FULL)  # the proof alone is quick enough where tasks are few
        proposals = proposals_of(instance, effort) * share // FULL
        order, played = shuffled(flat, order, proposals, lookout)
        orders.append(order)
        offer(instance, order, lookout)
        fewest = decoded(instance, order)[1].changeover
        opened += played
    return orders, fewest, opened


def _beamed(instance: Instance, guide: Guide, beam: Beam, lookout: Lookout) -> Found:
    """What a beam comes to; its order is kept if it is the best so far."""
    found = search(instance, guide, beam, lookout)
    offer(instance, found.order, lookout)
    return found
