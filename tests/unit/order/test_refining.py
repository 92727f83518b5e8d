"""The search at different worths of set-up: plans that are compared side by side agree."""

import pytest
from tests.benchmarks.reading import read_shop
from tests.unit.order.shops import EIGHT_TO_FOUR

from dryfit.order import Result, solve


def price(result: Result, k: int) -> int:
    return k * result.totals.setup + result.totals.waiting


@pytest.mark.parametrize("name", ["s13_3", "s11_3"])
def test_no_balanced_plan_is_cheaper_by_the_price_of_another_worth(name: str) -> None:
    problem = read_shop(name, EIGHT_TO_FOUR, walk=10)
    few, balanced, soon = (solve(problem, k=k, effort=5) for k in (100, 4, 1))
    assert price(few, 100) <= price(balanced, 100)
    assert price(soon, 1) <= price(balanced, 1)
