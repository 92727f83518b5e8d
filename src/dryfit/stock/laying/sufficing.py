"""Ways to make the parts of one wood that the boards suffice for.

What suffices for the first boards suffices with more: where nothing is found of all of them, the
first ones are looked at alone, so that a board more never makes the verdict worse.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from itertools import product

from dryfit.cutting import Layout
from dryfit.stock.laid_out import StockBoard
from dryfit.stock.laying.at_least import at_least
from dryfit.stock.laying.mixing import Mixture, as_usual, mixture_of
from dryfit.stock.laying.outcome import laid_out
from dryfit.stock.laying.too_few import Taken, There
from dryfit.stock.laying.ways import Option

Ways = Callable[[Sequence[StockBoard]], Sequence[Option]]
"""The ways to make the parts of a wood out of some of its boards."""


def sufficing(ways: Sequence[Option], there: There, effort: int) -> Taken | Mixture | None:
    """Return the first way that there is enough for, else the mixture that comes nearest.

    A way looked at in passing comes before a mixture, and that before one that gives something up.
    """
    kept = [way for way in ways if not way.gives_up]
    found = _at_a_glance(kept, there)
    if found is not None:
        return _enough(found, there, effort)
    if surely_too_few(ways, there):
        return None
    mixture = mixture_of(kept, there.boards, there.shop, effort)
    if mixture is not None and mixture.whole:
        mixture = as_usual(mixture, ways[0], there.boards, there.shop)
        return _enough((mixture.way, False), there, effort, mixture.known)
    given_up = [way for way in ways if way.gives_up]
    found = _at_a_glance(given_up, there)
    if found is not None:
        return _enough(found, there, effort)
    # Where there is nothing to mix the usual way is searched for longer.
    for way in given_up if mixture is not None else [*kept[:1], *given_up]:
        one = _enough((way, False), there, effort)
        if one.on_hand.verdict == "enough":
            return one
    return mixture


def of_the_first_boards(ways: Ways, there: There, effort: int) -> Taken | None:
    """Return a way that fewer boards suffice for, the first of them; None where there is none."""
    for count in range(len(there.boards) - 1, 0, -1):
        first = There(there.boards[:count], there.yard, there.shop)
        own = ways(first.boards)
        if not own or surely_too_few(own, first):
            return None
        found = sufficing(own, first, effort)
        if isinstance(found, Taken):
            return found
    return None


def surely_too_few(ways: Sequence[Option], there: There) -> bool:
    """Return whether it is proved at a glance that the boards are too few for any way."""
    least = at_least([way.blanks for way in ways], there.boards, there.shop, 0)
    return least.verdict == "not enough"


def _enough(
    found: tuple[Option, bool], there: There, effort: int, known: tuple[Layout, ...] = ()
) -> Taken:
    way, sparing = found
    outcome = laid_out(
        way.blanks,
        there.boards,
        there.shop,
        effort,
        sparing=sparing,
        known=known,
        prove=False,
    )
    return Taken(way, "enough", outcome, None, outcome.work)


def _at_a_glance(ways: Sequence[Option], there: There) -> tuple[Option, bool] | None:
    """Return the first way that there is enough for, and whether thick boards are spared."""
    for sparing, way in product((True, False), ways):
        if laid_out(way.blanks, there.boards, there.shop, 0, sparing=sparing).verdict == "enough":
            return way, sparing
    return None
