"""The plan of an example, made once."""

from functools import cache

from tests.unit.operations.worked import listed, piece, shipped_shop

from dryfit.plan.plan import Plan
from dryfit.planning import make_plan


@cache
def plan_of(name: str = "boot_bench", *changes: tuple[str, str]) -> Plan:
    """The plan of an example's model with the shipped shop."""
    model = piece(name, *changes)
    work, _ = listed(model)
    plan, findings = make_plan(model, shipped_shop(), work)
    assert plan is not None, findings
    return plan
