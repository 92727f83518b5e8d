"""What one station needs at least: searched whole, or else in parts whose bounds add up.

Where the search of the station comes to no end, the costs of its axes are shared out between two
bounds: a search that sees only the axes of which it has a share, and so comes further, and the
tree of combined settings, which sees all axes and no precedence. Shares are tried axis by axis,
as long as one makes the sum larger.

Measured on saws of 63 and 84 tasks, minutes: chain bound 76.5 and 71.0, search ended after 100,000
states 84.0 and 77.0, this 88.5 and 89.5, best orders known 96.5 and 97.5. What did not pay: a
search of all axes guided by both bounds (flat: every order in a cluster of settings looks alike),
tours instead of trees by prices on the nodes (Held and Karp 1970; no gain, since a node may have to
be visited twice), directed trees, shares by value instead of by axis, and leaving out states that
have less done at the same settings (too few, and dear to find).
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import gcd

from dryfit.order.best_first import best_first
from dryfit.order.guide import Lift, Span, guide_of_one
from dryfit.order.instance import Instance
from dryfit.order.projecting import ancestors_of, projected
from dryfit.order.setting_tree import nodes_of, shortest_tree
from dryfit.order.watching import Lookout

PARTS = 4
"""Into so many parts the costs of an axis are divided; so all sums are whole numbers."""

SMALLER = 10
"""A search of some axes gets this part of the limit of the whole one."""

PLENTY = 1_000
"""States with which such a search nearly always comes to its end, if it ever does."""

Shares = tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Found:
    """What is found of a station.

    lift   for the guide of the whole problem
    ended  the search of the station ran to its end: no order of it alone needs less than all do
    made   states made
    """

    lift: Lift
    ended: bool
    made: int


def bounded(
    instance: Instance,
    ancestors: Sequence[int],
    span: Span,
    limit: int,
    lookout: Lookout | None = None,
) -> Found:
    """What a station needs, searched by making about `limit` states."""
    axes = range(span.first, span.last)
    part = projected(instance, ancestors, span.tasks, dict.fromkeys(axes, 1))
    reached = best_first(part.instance, guide_of_one(part.instance), limit, None, lookout)
    least, made = reached.least, reached.made
    if not reached.ended:
        sharing = _Sharing(part.instance, min(limit // SMALLER, PLENTY), lookout)
        least = max(least, sharing.best())
        made += sharing.made
    return Found(Lift(least, reached.opened, part.renumbered), reached.ended, made)


class _Sharing:
    """The search for shares that make the sum of both bounds large.

    made  states made, trees counted by their nodes
    """

    def __init__(self, instance: Instance, limit: int, lookout: Lookout | None) -> None:
        self.made = 0
        self._lookout = lookout
        self._instance = instance
        self._limit = limit
        self._ancestors = ancestors_of(instance)
        self._nodes = nodes_of(instance)
        self._searched: dict[Shares, int] = {}

    def best(self) -> int:
        """The largest sum found, in tenths: no order of the station can go below."""
        shares = self._first()
        sum_ = self._sum(shares)
        improved = True
        while improved:
            improved = False
            for axis in range(len(shares)):
                for share in range(PARTS + 1):
                    other = (*shares[:axis], share, *shares[axis + 1 :])
                    if other != shares and (more := self._sum(other)) > sum_:
                        shares, sum_, improved = other, more, True
        return self._rounded(-(-sum_ // PARTS))

    def _first(self) -> Shares:
        """Where trying begins: the search gets the dearest axis, some of those not cheapest."""
        costs = [max(table.entry) for table in self._instance.axes]
        dearest, cheapest = max(costs), min(costs)
        return tuple(PARTS if cost == dearest else int(cost > cheapest) for cost in costs)

    def _sum(self, shares: Shares) -> int:
        """Both bounds together, in parts of a tenth."""
        rest = tuple(PARTS - share for share in shares)
        self.made += len(self._nodes.links)
        return self._search(shares) + shortest_tree(self._nodes, rest)

    def _search(self, shares: Shares) -> int:
        if shares not in self._searched:
            seen = {axis: share for axis, share in enumerate(shares) if share}
            every = self._instance.at_station[0]
            part = projected(self._instance, self._ancestors, every, seen).instance
            reached = best_first(part, guide_of_one(part), self._limit, None, self._lookout)
            self.made += reached.made
            self._searched[shares] = reached.least
        return self._searched[shares]

    def _rounded(self, least: int) -> int:
        """The least sum of changes that is not below."""
        step = gcd(*(cost for table in self._instance.axes for row in table.costs for cost in row))
        return -(-least // step) * step if step else least
