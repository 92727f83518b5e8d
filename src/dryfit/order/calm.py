"""A plan made again from the order that a maker already has: it changes only where that pays.

The old order is repaired, and then left only for strict gains; at a tie everything keeps its
turn. The search begins anew after each pass that gained something, with the same lots, so that it
ends at an order which another solving leaves as it is.
"""

from collections.abc import Sequence
from dataclasses import replace

from dryfit.order.attempts import FEW
from dryfit.order.first_orders import proposals_of
from dryfit.order.improve import improved
from dryfit.order.instance import Instance
from dryfit.order.picks import Picks, count, picked, picks_of
from dryfit.order.problem import Problem, Unsolvable
from dryfit.order.result import Result, gap_percent
from dryfit.order.validity import require_solvable
from dryfit.order.watching import Lookout, Order


def bettered(
    instance: Instance, order: Order, k: int, effort: int, lookout: Lookout
) -> tuple[Order, int]:
    """The order after all strict gains that passes of the local search find; the work counted."""
    proposals = proposals_of(instance, effort)
    played = 0
    while len(order) > 1 and proposals:
        after, more = improved(instance, order, k, proposals, lookout, strict=True)
        played += more
        if after == order:
            break
        order = after
    return order, played


def told_picks(problem: Problem, order: Sequence[str]) -> Picks | None:
    """The picks that an order is of; None if it does not tell all, or they have no schedule now."""
    known = {task.id for task in problem.tasks}
    try:
        picks = picks_of(problem, [name for name in order if name in known])
        require_solvable(picked(problem, picks))
    except Unsolvable:
        return None
    return picks


def over_picks(problem: Problem, picks: Picks, result: Result, least: int) -> Result:
    """A result of some picks, with what is known over all combinations.

    least  changeover that no order of any combination can go below, in tenths
    """
    least = min(least, result.lower_bound)
    return replace(
        result,
        lower_bound=least,
        proven=result.totals.changeover == least,
        gap_percent=gap_percent(result.totals.changeover, least),
        picks=picks,
        picks_bound=result.lower_bound,
        over="every pick" if count(problem) <= FEW else "common tasks",
    )
