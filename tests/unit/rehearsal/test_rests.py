"""How long wood has to rest by the rehearsal's own account (TRADE A3.7)."""

from pathlib import Path

from tests.pieces.planning import planned
from tests.pieces.reading import text_of

from dryfit.rehearsal.rehearse import rehearse
from dryfit.rehearsing import goal_of

SHOP = """\
format = "dryfit-shop/1"
station.jointer = false
station.planer = false
[rest]
planed = "48 h"
straight = "12 h"
"""


def test_planed_by_hand_wood_rests_for_what_comes_off_it(tmp_path: Path) -> None:
    """Stiles of 27 mm become 22: less than a quarter comes off, so they rest as stiles do, 12 h."""
    shop = tmp_path / "shop.toml"
    shop.write_text(SHOP, encoding="utf-8")
    found, plan, _ = planned(text_of("resting_door"), shop)
    assert plan is not None
    assert found.model is not None
    assert found.shop is not None
    rests = {op.id: op.after_tenths for step in plan.steps for op in step.operations}
    assert rests["stile / rough thickness"] == 12 * 60 * 10
    assert rehearse(plan, goal_of(found.model), found.shop) == ()
