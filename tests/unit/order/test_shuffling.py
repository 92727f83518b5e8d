"""The search for little set-up alone, held against figures known of the instances."""

import pytest
from tests.benchmarks.reading import read_shop

from dryfit.order.beam import Beam, search
from dryfit.order.bound import bound_of
from dryfit.order.improve import score
from dryfit.order.instance import compiled
from dryfit.order.precedence import topological
from dryfit.order.shuffling import shuffled
from dryfit.order.watching import Lookout


@pytest.mark.parametrize(("name", "fewest"), [("s11_3", 825), ("s1_5", 750)])
def test_the_proved_fewest_are_reached_from_any_order(name: str, fewest: int) -> None:
    # instances/README.md; 825 and 750 tenths are proved
    instance = compiled(read_shop(name))
    order, _ = shuffled(instance, topological(instance.predecessors), 20_000, Lookout(4, None))
    assert score(instance, order, 1)[2] == fewest


def test_it_betters_a_beam() -> None:
    instance = compiled(read_shop("s1_28"))
    start = search(instance, bound_of(instance), Beam(1, 6, 10, walking=False)).order
    assert start is not None
    order, _ = shuffled(instance, start, 20_000, Lookout(4, None))
    assert 1650 <= score(instance, order, 1)[2] <= 0.97 * score(instance, start, 1)[2]
