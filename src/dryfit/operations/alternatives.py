"""The ways to cut a family of joints that were weighed, and the rule that chose (TRADE B0.1)."""

from __future__ import annotations

from fractions import Fraction

from dryfit.operations.cross_cuts import CROSS_KINDS
from dryfit.operations.cutting import Joinery
from dryfit.plan.operation import Alternative

GROUP = "laps, housings and tenons"
DADO = "dado set"
BLADE = "single blade in passes"


def alternatives_of(joinery: Joinery) -> tuple[Alternative, ...]:
    """Return, for the cuts across the grain, the chosen method and the one not taken."""
    ids = tuple(
        operation.id
        for operation, cuts in zip(joinery.operations, joinery.cuts, strict=True)
        if cuts[0].site.feature.kind in CROSS_KINDS
    )
    if not ids:
        return ()
    choice = joinery.choice
    if choice.saved is None or choice.cost is None:
        reason = "the only way that the shop's machines allow"
        return (Alternative(GROUP, choice.chosen, ids, chosen=True, reason=reason),)
    figures = (
        f"a dado set saves {_minutes(choice.saved)} of passes and takes {_minutes(choice.cost)} "
        "to fit, prove and remove"
    )
    other = BLADE if choice.chosen == DADO else DADO
    return (
        Alternative(GROUP, choice.chosen, ids, chosen=True, reason=figures),
        Alternative(GROUP, other, ids, chosen=False, reason=figures),
    )


def _minutes(tenths: Fraction) -> str:
    whole, rest = divmod(round(tenths), 10)
    return f"{whole}.{rest} min" if rest else f"{whole} min"
