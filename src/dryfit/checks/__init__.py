"""The checks that a cabinet maker would make on the placed piece, by TRADE's letters."""

from __future__ import annotations

from dryfit.checks.geometry import check_geometry
from dryfit.checks.held import check_held
from dryfit.checks.sums import check_sums
from dryfit.diagnostics import Findings
from dryfit.placing.model import Model
from dryfit.shop.shop import Shop

__all__ = ["check_model"]


def check_model(model: Model, shop: Shop) -> Findings:
    """Return the findings of all checks that need no plan."""
    return (*check_geometry(model, shop), *check_sums(model), *check_held(model))
