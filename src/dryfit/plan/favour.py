"""What the maker favours: the one knob of the order."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from dryfit.plan.plan import Plan

USUAL = "balanced"
WORTH = {"setups": 100, USUAL: 4, "soonest": 1}
"""Minutes of waiting that one minute of set-up is worth, by what the maker favours.

Even `setups` is never the bare fewest: that leaves the maker waiting for nothing gained.
"""


def price_of(plan: Plan) -> tuple[int, int, int]:
    """Return what plans of one piece are ordered by, as the engine does: less is better."""
    totals = plan.totals
    hands_on = totals.setup + totals.work
    return WORTH[plan.favour] * hands_on + totals.waiting, totals.elapsed, totals.walk
