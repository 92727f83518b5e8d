"""What `--favour setups` comes to, where one search used to get stuck.

Within a minute of set-up of the best that searches with many times the effort found for that
worth; a minute of set-up is worth 100 of waiting. (Measured once over all examples and test
pieces; nothing outside the project knows these figures.)
"""

import pytest
from tests.unit.operations.worked import listed, piece, shipped_shop

from dryfit.planning import make_plan


@pytest.mark.parametrize(("name", "best"), [("step_stool", 835), ("inch_stool", 815)])
def test_few_setups_are_within_a_minute_of_the_best_found(name: str, best: int) -> None:
    model = piece(name)
    plan, _ = make_plan(model, shipped_shop(), listed(model)[0], favour="setups")
    assert plan is not None
    assert plan.totals.setup <= best + 10
