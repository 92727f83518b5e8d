"""Damages of wood that rests: nothing, or nearly all, left after it; strips that stay unsawn."""

import random
from dataclasses import replace
from fractions import Fraction

from tests.rehearsal_damage.kind import Kind, kind
from tests.rehearsal_damage.places import deeds, shuffled, stood_otherwise, with_operation
from tests.rehearsal_damage.retelling import retold

from dryfit.plan.plan import Plan
from dryfit.rehearsal.fault import Reason
from dryfit.rehearsal.goal import Goal

OFF = (Fraction(-7, 5), Fraction(3))
"""mm: 1 to 2 are left for the last pass (TRADE A3.7), so that both are beyond it."""


def rest_at_another_thickness(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """What rests has its thickness nearly, or loses most of it after its rest."""
    rows = [(at, op) for at, _, op in deeds(plan) if op.kind == "rough thickness"]
    for at, op in shuffled(chance, rows):
        setting = dict(plan.steps[at].settings).get("thickness")
        if op.station == "planer" and setting is not None:
            value = setting.value
            assert isinstance(value, Fraction)
            new = replace(setting, value=value + chance.choice(OFF))
            return retold(plan, stood_otherwise(plan, at, "thickness", new))
    return None


def one_leaf_not_resawn(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """Of all the leaves that are planed one is never sawn off."""
    for op in shuffled(chance, [op for _, _, op in deeds(plan) if op.kind == "resaw"]):
        first = op.work[0]
        work = (replace(first, copies=first.copies[1:]), *op.work[1:])
        return retold(plan, with_operation(plan.steps, op.id, replace(op, work=work)))
    return None


KINDS: tuple[Kind, ...] = (
    replace(kind(rest_at_another_thickness, Reason.WAIT), pieces=("resting_door", "waney_bench")),
    replace(
        kind(one_leaf_not_resawn, Reason.ORDER, Reason.COUNT),
        pieces=("resting_door", "resawn_tray"),
    ),
)
