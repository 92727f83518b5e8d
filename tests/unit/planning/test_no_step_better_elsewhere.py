"""A printed plan is not bettered by a move that `dryfit why` could name.

The moves and their prices are those of `order.moving`, which decodes the order from the move on;
what made the plan refuses most moves without playing them.
"""

import pytest
from tests.pieces.planning import planned
from tests.pieces.reading import EXAMPLES, text_of
from tests.unit.operations.worked import shipped_shop

from dryfit.operations import work_list
from dryfit.order import moved, room
from dryfit.placing.drift import with_drifts
from dryfit.plan.operation import ways_of
from dryfit.planning.reasons import reasoned


@pytest.mark.parametrize("name", sorted(path.stem for path in EXAMPLES.glob("*.dryfit")))
def test_no_step_alone_stands_better_at_another_place(name: str) -> None:
    checked, plan, _ = planned(text_of(name))
    assert plan is not None
    assert checked.model is not None
    shop = shipped_shop()
    model = with_drifts(checked.model, checked.declared, shop)
    work, _ = work_list(model, shop, ways_of(plan.alternatives), checked.laid)
    assert work is not None
    known = reasoned(plan, work, shop)
    for step in plan.steps:
        found = room(known.row, step.number - 1)
        for move in (*found.earlier, *found.later):
            assert move.price(known.worth) >= (0, 0), (step.number, move)
        for before in (0, len(plan.steps)):  # as far as it can be taken, with all that goes along
            far = moved(known.row, step.number - 1, before)
            assert far is None or far.price(known.worth) >= (0, 0), (step.number, far)
