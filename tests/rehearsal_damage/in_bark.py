"""Damages of boards that keep an edge as it grew (TRADE A2.6)."""

import random
from dataclasses import replace

from tests.rehearsal_damage.in_counting import left_out
from tests.rehearsal_damage.kind import Kind, drawn, kind
from tests.rehearsal_damage.places import copies_of, deeds, shuffled, with_operation
from tests.rehearsal_damage.retelling import retold

from dryfit.plan.plan import Plan
from dryfit.plan.setting import Hold
from dryfit.rehearsal.fault import Reason
from dryfit.rehearsal.goal import Goal


def bark_left_on(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    return left_out(plan, chance, lambda op: op.kind == "bark")


def _waney(plan: Plan) -> set[str]:
    return {name for _, _, op in deeds(plan) if op.kind == "bark" for name in copies_of(op)}


def waney_edge_jointed(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """The edge that is to stay goes over the jointer, in place of the one across from it."""
    waney = _waney(plan)
    edges = [op for _, _, op in deeds(plan) if op.kind == "edge" and copies_of(op) <= waney]
    for op in shuffled(chance, edges):
        turned = Hold("E2", "F", None)
        work = tuple(replace(row, hold=row.hold and turned) for row in op.work)
        other = replace(op, kind="second edge", work=work)
        return retold(plan, with_operation(plan.steps, op.id, other))
    return None


def other_edge_wanted_waney(goal_plan: Plan, goal: Goal, _chance: random.Random) -> Goal | None:
    """The notes want the very edge waney that the plan makes its reference."""
    waney = _waney(goal_plan)
    rows = [part for part in goal.parts if len(part.waney) == 1]
    rows = [part for part in rows if {copy.name for copy in part.copies} <= waney]
    if not rows:
        return None
    swapped = {part.name: replace(part, waney=frozenset({"E"})) for part in rows}
    return replace(goal, parts=tuple(swapped.get(part.name, part) for part in goal.parts))


KINDS: tuple[Kind, ...] = (
    kind(bark_left_on, Reason.SURFACE, Reason.ORDER, Reason.SIZE),
    kind(waney_edge_jointed, Reason.WOOD, Reason.SIZE, Reason.REFERENCE),
    drawn(other_edge_wanted_waney, Reason.WOOD),
)
