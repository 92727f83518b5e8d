"""Instances with a known best: what is found, and what is claimed of it.

Sources of the figures: instances/README.md. Costs are in tenths of a minute.
"""

import pytest
from tests.benchmarks.reading import part_by_part, read_shop
from tests.unit.order.shops import EIGHT_TO_FOUR

from dryfit.order import changeover_bound, evaluate, solve, violations

PROVED = {"s13_3": 790, "s11_3": 825, "s13_5": 890, "s1_5": 750, "s11_5": 825}


@pytest.mark.parametrize(("name", "fewest"), PROVED.items())
def test_the_fewest_changeover_minutes_are_proved(name: str, fewest: int) -> None:
    result = solve(read_shop(name), k=100, effort=20)
    assert result.lower_bound == fewest
    assert fewest <= result.totals.changeover <= 1.02 * fewest
    assert result.proven == (result.totals.changeover == fewest)


@pytest.mark.parametrize(("name", "fewest"), [*PROVED.items(), ("s1_11", 1115)])
def test_the_chain_bound_stays_below_the_fewest(name: str, fewest: int) -> None:
    assert 0.9 * fewest <= changeover_bound(read_shop(name)) <= fewest


def test_a_hundred_and_twenty_seven_operations_are_proved() -> None:
    result = solve(read_shop("s1_11"), k=100, effort=100)
    assert (result.fewest_found, result.lower_bound) == (1115, 1115)
    assert result.fewest_proven


def test_the_gap_at_three_hundred_operations_is_small() -> None:
    """The best order known needs 1650 (instances/README.md); the bound was 1510 once."""
    result = solve(read_shop("s1_28"), k=100, effort=20)
    assert 1560 <= result.lower_bound <= 1650
    assert result.status == "bounded"
    assert 100 * (result.fewest_found - result.lower_bound) <= 12 * result.lower_bound


@pytest.mark.parametrize("name", PROVED)
def test_a_working_week_is_kept_and_better_used_than_part_by_part(name: str) -> None:
    problem = read_shop(name, EIGHT_TO_FOUR, walk=10)
    result = solve(problem, effort=10)
    assert violations(problem, result) == ()
    schedule, plain = evaluate(problem, part_by_part(name))
    assert violations(problem, schedule) == ()
    assert result.totals.setup <= 0.75 * plain.setup
    assert result.totals.elapsed <= plain.elapsed
