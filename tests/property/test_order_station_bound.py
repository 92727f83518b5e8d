"""What a station needs at least: never more than an exhaustive search finds it to need."""

import random
from itertools import product

import pytest
from tests.property.order_lots import lot
from tests.property.order_oracle import NEVER, Oracle, alternatives
from tests.unit.order.shops import seeded

from dryfit.order import Axis, Precedence, Problem, Range, Station, Task
from dryfit.order.best_first import best_first
from dryfit.order.guide import guide_of_one, spans_of
from dryfit.order.instance import compiled
from dryfit.order.projecting import ancestors_of, projected
from dryfit.order.setting_tree import nodes_of, shortest_tree
from dryfit.order.station_bound import bounded

PLENTY = 10**6


@pytest.mark.parametrize("first", range(0, 400, 50))
def test_no_limit_makes_the_bound_of_a_station_exceed_the_fewest(first: int) -> None:
    """The sum over stations, searched whole or cut short and shared out, is never too much."""
    for seed in range(first, first + 50):
        problem = next(alternatives(lot(seed)))
        optimum = Oracle(problem).fewest()
        if optimum == NEVER:
            continue
        instance = compiled(problem)
        ancestors, spans = ancestors_of(instance), spans_of(instance)
        for limit in (1, 3, 40):
            found = [bounded(instance, ancestors, span, limit) for span in spans]
            assert sum(one.lift.least for one in found) <= optimum


@pytest.mark.parametrize("seed", range(12))
def test_shares_of_a_busy_saw_add_up_to_no_more_than_it_needs(seed: int) -> None:
    """Larger than the exhaustive search can do: against the search that is proved above."""
    instance = compiled(busy_saw(seeded(seed)))
    (span,), ancestors = spans_of(instance), ancestors_of(instance)
    whole = projected(instance, ancestors, span.tasks, dict.fromkeys(range(4), 1)).instance
    optimum = best_first(whole, guide_of_one(whole), PLENTY).least
    assert bounded(instance, ancestors, span, 2).lift.least <= optimum
    assert bounded(instance, ancestors, span, 60).lift.least <= optimum
    nodes = nodes_of(whole)
    for shares in product((0, 2), (1, 2), (0, 2), (0, 1)):
        rest = {axis: 2 - share for axis, share in enumerate(shares) if share < 2}
        part = projected(instance, ancestors, span.tasks, rest).instance
        searched = best_first(part, guide_of_one(part), PLENTY).least
        assert searched + shortest_tree(nodes, shares) <= 2 * optimum


def busy_saw(rng: random.Random) -> Problem:
    """Eleven tasks on four axes, some heights out of a range, a blade with uneven costs."""
    axes = (
        Axis("blade", 50, (("rip", "dado", 70), (None, "rip", 30))),
        Axis("height", 15),
        Axis("fence", 10),
        Axis("stop", 10),
    )
    tasks = []
    for number in range(11):
        blade, height = rng.choice(("rip", "dado", "cross")), rng.randint(1, 4)
        top = rng.choice((height, height, height + 1, None))
        values = (
            ("blade", blade),
            ("height", Range(height, top, blade)),
            ("fence", str(rng.randint(1, 4))),
            ("stop", str(rng.randint(1, 3))),
        )
        demands = tuple(pair for pair in values if rng.random() < 0.85)
        tasks.append(Task(str(number), "saw", demands, 1))
    rules = tuple(
        Precedence(str(before), str(after), 0, "by lot")
        for after in range(11)
        for before in range(after)
        if rng.random() < 0.15
    )
    return Problem((Station("saw", axes),), tuple(tasks), rules)


def test_a_tree_counts_what_combined_settings_need() -> None:
    """Four widths at two heights: two heights, and a fence for each of the four settings."""
    saw = Station("saw", (Axis("height", 15), Axis("fence", 10)))
    tasks = tuple(
        Task(f"{height} {fence}", "saw", (("height", height), ("fence", fence)), 1)
        for height, fence in product("ab", "xy")
    )
    instance = compiled(Problem((saw,), tasks))
    (span,) = spans_of(instance)
    part = projected(instance, ancestors_of(instance), span.tasks, {0: 1, 1: 1}).instance
    # by hand: the first setting 15 + 10, fence 10, height 15, fence 10
    assert shortest_tree(nodes_of(part), (1, 1)) == 60
    assert shortest_tree(nodes_of(part), (1, 0)) == 30
    assert best_first(part, guide_of_one(part), PLENTY).least == 60
