"""What is tried for a proof of the fewest changeovers, and in which order.

First each station by itself: most are small, and the sum of what they need is nearly always what
all of them need together. Then the whole problem, guided by what was found at the stations; it
may find a better order too. Where the search of a station came to no end, that of all stations
would not either, and is left out. All count the states they make, so that a proof takes no longer
than the effort allows.
"""

from dataclasses import dataclass, replace

from dryfit.order.best_first import best_first
from dryfit.order.bound import Bound
from dryfit.order.guide import Remembering, Span, spans_of
from dryfit.order.instance import Instance
from dryfit.order.projecting import ancestors_of
from dryfit.order.sequencing import is_path
from dryfit.order.station_bound import Found, bounded
from dryfit.order.watching import Lookout, Order

AT_A_STATION, AT_ALL = 60, 30
"""States made for a station, and for the whole problem, for each unit of effort; from so much
effort on, the square of the effort, or half of it: a proof that is not cheap is worth patience."""

MOST_AT_A_STATION, MOST_AT_ALL = 100_000, 40_000
"""States beyond which none are made: 100,000 take about 100 MB."""

FEW = 20
"""Tasks up to which a path gets all these states: of more it is never searched whole."""

FULL = 300
"""Tasks up to which that many are made; with more, each state is more work."""


@dataclass(frozen=True, slots=True)
class Proof:
    """What is proved.

    least   changeover, in tenths, that no valid order can go below
    fewest  changeover of the best order known
    order   an order that needs `fewest`, if the proof has found it; None if it was known before
    made    states made
    """

    least: int
    fewest: int
    order: Order | None
    made: int


def proved(
    instance: Instance,
    bound: Bound,
    known: tuple[int, int],
    effort: int,
    lookout: Lookout | None = None,
) -> Proof:
    """The best lower bound for an effort.

    known  changeover that no order goes below, and that of the best order known, in tenths
    """
    least, fewest = known
    share = effort * FULL // max(FULL, len(instance.station))
    if least == fewest or not share:
        return Proof(least, fewest, None, 0)
    at_a_station = min(MOST_AT_A_STATION, share * max(AT_A_STATION, share))
    at_all = share * max(AT_ALL, share // 2)
    if is_path(instance):
        at_a_station = at_a_station * FEW // max(FEW, len(instance.station))
    spans, found = _lifted(instance, at_a_station, lookout)
    least = max(least, sum(one.lift.least for one in found))
    made = sum(one.made for one in found)
    if least == fewest or not all(one.ended for one in found):
        return Proof(least, fewest, None, made)
    if lookout is not None:
        lookout.bound = max(lookout.bound, least)
    guide = Remembering(bound, spans)
    reached = best_first(instance, guide, min(MOST_AT_ALL, at_all), fewest, lookout)
    least, made = max(least, reached.least), made + reached.made
    if reached.order is None:
        return Proof(least, fewest, None, made)
    return Proof(least, reached.least, reached.order, made)


def _lifted(
    instance: Instance, limit: int, lookout: Lookout | None
) -> tuple[list[Span], list[Found]]:
    """The stations, and what a search of each one alone has found."""
    ancestors = ancestors_of(instance)
    spans = spans_of(instance)
    found = [bounded(instance, ancestors, span, limit, lookout) for span in spans]
    lifted = [replace(span, lift=one.lift) for span, one in zip(spans, found, strict=True)]
    return lifted, found
