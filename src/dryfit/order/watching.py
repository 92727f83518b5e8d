"""Looking on while a search runs, and what is kept of it when it is ended early.

The search counts its work here and hands over every order that is better than those before. Who
looks on hears of the best one after every so much of counted work; a clock is not read. Whatever
the looker-on does, the search goes the same way, except that a `KeyboardInterrupt` ends it.
"""

from collections.abc import Callable
from dataclasses import dataclass

from dryfit.order.instance import Instance

Order = tuple[int, ...]
Score = tuple[int, int, int, int, Order]  # cost, elapsed, set-up, walks, and the order itself

EVERY = 400
"""Tasks played and states opened between two glimpses: some thousandths of a second."""


@dataclass(frozen=True, slots=True)
class Glimpse:
    """The best that a search has come to so far. Times in tenths of a minute.

    changeover  of the best order so far, by axis changes
    setup       of the same, walks and test cuts included
    waiting     of the same
    bound       changeover that no valid order can go below, as far as it is known yet
    """

    changeover: int
    setup: int
    waiting: int
    bound: int


Watch = Callable[[Glimpse], None]


@dataclass(frozen=True, slots=True)
class Kept:
    """The best order so far, with what it is an order of."""

    instance: Instance
    score: Score
    waiting: int


class Lookout:
    """Counts the work of one search, keeps its best order, and tells who looks on.

    worth  the k by which the orders of this search are compared
    bound  the best lower bound on changeover so far
    kept   the best order so far, None before there is one. It is replaced whole, so that it
           stands whenever the search is interrupted
    """

    def __init__(
        self, worth: int, watch: Watch | None, known: Callable[[], Glimpse | None] | None = None
    ) -> None:
        """Begin to count; `known` gives what to tell as long as this search has no order."""
        self.worth = worth
        self.bound = 0
        self.kept: Kept | None = None
        self._watch = watch
        self._known = known
        self._left = EVERY

    def take(self, instance: Instance, score: Score, waiting: int) -> None:
        """Keep an order if it is better than the one kept. Its score is at this `worth`."""
        if self.kept is None or score < self.kept.score:
            self.kept = Kept(instance, score, waiting)

    def count(self, work: int) -> None:
        """Count tasks decoded or states opened."""
        self._left -= work
        if self._left <= 0:
            self._left = EVERY
            glimpse = self._glimpse()
            if self._watch is not None and glimpse is not None:
                self._watch(glimpse)

    def _glimpse(self) -> Glimpse | None:
        if self.kept is not None:
            return _glimpse(self.kept, self.bound)
        return None if self._known is None else self._known()


def _glimpse(kept: Kept, bound: int) -> Glimpse:
    _, _, setup, walks, _ = kept.score
    # Every trial group that some task belongs to is paid once in every order.
    paid = set(kept.instance.trials) - {-1}
    trial = sum(kept.instance.trial_costs[group] for group in paid)
    other = kept.instance.problem.walk * walks + trial
    return Glimpse(setup - other, setup, kept.waiting, bound)
