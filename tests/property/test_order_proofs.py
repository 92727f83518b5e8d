"""Proofs of the fewest changeovers against exhaustive search on tiny problems."""

import pytest
from tests.property.order_lots import lot
from tests.property.order_oracle import NEVER, Oracle, alternatives

from dryfit.order.best_first import best_first
from dryfit.order.bound import bound_of, least_changeover
from dryfit.order.guide import Remembering, guide_of_one, spans_of
from dryfit.order.instance import Instance, compiled
from dryfit.order.projecting import ancestors_of, projected
from dryfit.order.proving import proved
from dryfit.order.states import children, start

PLENTY = 10**6


@pytest.mark.parametrize("first", range(0, 400, 50))
def test_proofs_of_random_problems(first: int) -> None:
    """Best first is exact, stations need no more than all do, and no limit falsifies a bound."""
    for seed in range(first, first + 50):
        problem = next(alternatives(lot(seed)))
        optimum = Oracle(problem).fewest()
        if optimum == NEVER:
            continue
        instance = compiled(problem)
        bound = bound_of(instance)
        guide = Remembering(bound, spans_of(instance))
        whole = best_first(instance, guide, PLENTY)
        assert (whole.least, whole.ended) == (optimum, True)
        assert best_first(instance, guide, PLENTY, optimum).order is None
        for limit in (1, 2, 4, 8):
            assert best_first(instance, guide, limit).least <= optimum
        least = least_changeover(instance, bound)
        for effort in (1, 10):
            proof = proved(instance, bound, (least, optimum + 5), effort)
            assert least <= proof.least <= optimum <= proof.fewest
        assert proof.least == proof.fewest == optimum
        assert proof.order is not None
        assert _least_of_stations(instance) <= optimum


def _least_of_stations(instance: Instance) -> int:
    ancestors = ancestors_of(instance)
    least = 0
    for span in spans_of(instance):
        axes = dict.fromkeys(range(span.first, span.last), 1)
        part = projected(instance, ancestors, span.tasks, axes).instance
        least += best_first(part, guide_of_one(part), PLENTY).least
    return least


def test_a_guide_remembers_what_the_bound_says() -> None:
    """The sum over stations is the bound of the whole, in every state along an order."""
    for seed in range(60):
        problem = next(alternatives(lot(seed)))
        if Oracle(problem).fewest() == NEVER:
            continue
        instance = compiled(problem)
        bound = bound_of(instance)
        guide = Remembering(bound, spans_of(instance))
        every = (1 << len(instance.station)) - 1
        state = start(instance, walking=False)
        while state.done != every:
            place = every & ~state.done, state.available, state.current
            assert guide.remaining(*place) >= bound.remaining(*place)
            if all(axis.by_entry for axis in instance.axes):
                assert guide.remaining(*place) == bound.remaining(*place)
            state = children(instance, state, None, walking=False)[-1]
