"""Damages of what has to agree, and of the room that wood needs to move."""

import random
from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

from tests.rehearsal_damage.in_settings import depth_of, height_stop, number
from tests.rehearsal_damage.kind import Kind, kind
from tests.rehearsal_damage.places import (
    alone,
    deeds,
    joint_cuts,
    shuffled,
    stood_otherwise,
    with_operation,
)
from tests.rehearsal_damage.retelling import key_of, retold

from dryfit.geometry.frame import SURFACES
from dryfit.plan.operation import Operation
from dryfit.plan.plan import Plan, Step
from dryfit.rehearsal.fault import Reason
from dryfit.rehearsal.goal import Goal


def panel_without_room(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
    """A groove is as deep as the panel goes in: the panel has no room to swell (TRADE B9, J10)."""
    return _without_room(plan, goal, chance, "groove")


def tongue_without_room(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
    """A groove is as deep as its tongue is long: no board can swell (TRADE B10)."""
    return _without_room(plan, goal, chance, "tongue and groove")


def bottom_without_room(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
    """A bottom that slides in goes to the bottom of its grooves (TRADE B20)."""
    return _without_room(plan, goal, chance, "slid panel")


def _without_room(plan: Plan, goal: Goal, chance: random.Random, kind_of: str) -> Plan | None:
    for cut in shuffled(chance, joint_cuts(plan, goal)):
        found = height_stop(cut)
        if cut.mark.kind != "long slot" or found is None:
            continue
        axis, old = found
        value = number(old)
        direction = cut.copy.frame.axes[SURFACES[cut.mark.surface][0]][0]
        for joint in goal.joints:
            if joint.kind != kind_of or joint.host != cut.copy.name or joint.clearance <= 0:
                continue
            goes_in = joint.region.extent(direction)
            if value is not None and goes_in + joint.clearance == depth_of(cut):
                new = replace(old, value=value - joint.clearance)
                return retold(plan, stood_otherwise(plan, cut.at, axis, new))
    return None


def laps_in_two_visits(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
    """The halves of a lap are cut at two settings of the same number (TRADE E3, J12)."""
    halves = {cut.operation.id for cut in joint_cuts(plan, goal) if _is_half(cut.copy.name, goal)}
    rows = [(at, op) for at, _, op in deeds(plan) if op.id in halves]
    for at, op in shuffled(chance, rows):
        mates = [other for n, other in rows if n == at and other.id != op.id]
        if op.station != "table saw" or not mates:
            continue
        for place in shuffled(chance, _between(plan, op)):
            told = _cut_at(plan, op, place)
            if told is not None and _set_anew(told, op, mates[0]):
                return told
    return None


def _is_half(name: str, goal: Goal) -> bool:
    return any(j.kind == "half lap" and name in {j.guest, j.host} for j in goal.joints)


def _between(plan: Plan, operation: Operation) -> Iterator[int]:
    """The places after a part is marked, or cut to length, and before anything is tried dry."""
    ready = [
        at
        for at, _, op in deeds(plan)
        if op.part == operation.part and op.kind in {"width", "length", "lay out"}
    ]
    for place in range(max(ready, default=len(plan.steps)) + 1, len(plan.steps)):
        yield place
        if any(op.kind in {"dry fit", "glue up"} for op in plan.steps[place].operations):
            return


def _cut_at(plan: Plan, operation: Operation, place: int) -> Plan | None:
    """The plan with a cut as a step of its own before the step that stands at a place."""
    beside = plan.steps[place]
    step = plan.step_of(operation.id)
    own = alone(step, operation)
    rows: list[Step] = with_operation(plan.steps, operation.id, None)
    where = next((n for n, each in enumerate(rows) if key_of(each) == key_of(beside)), None)
    if where is None:
        return None
    rows.insert(where, own)
    return retold(plan, rows, moved=frozenset({key_of(own)}))


def _set_anew(plan: Plan, one: Operation, other: Operation) -> bool:
    """Whether the blade's height is changed between two cuts and is the same in the end."""
    first, second = sorted(plan.step_of(op.id).number for op in (one, other))
    between = plan.steps[first:second]
    heights = [_height(plan.step_of(op.id)) for op in (one, other)]
    moved = [s for s in between if s.station == one.station and "height" in s.changed]
    return heights[0] == heights[1] and any(_height(step) != heights[0] for step in moved)


def _height(step: Step) -> Fraction | None:
    return number(dict(step.settings).get("height"))


KINDS: tuple[Kind, ...] = (
    kind(panel_without_room, Reason.CUT, Reason.FIT),
    kind(tongue_without_room, Reason.CUT, Reason.FIT),
    kind(bottom_without_room, Reason.CUT, Reason.FIT),
    kind(laps_in_two_visits, Reason.SETTING, Reason.ORDER),
)
