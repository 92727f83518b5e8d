"""Damages of holes, of measurements, of allowances, and of what a row of work names."""

import random
from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction

from tests.rehearsal_damage.in_order import first_of
from tests.rehearsal_damage.in_reading import set_otherwise
from tests.rehearsal_damage.kind import Kind, kind
from tests.rehearsal_damage.places import (
    deeds,
    shuffled,
    with_operation,
)
from tests.rehearsal_damage.retelling import retold
from tests.rehearsal_damage.wanted import members, part_of, sizes

from dryfit.plan.operation import Operation
from dryfit.plan.plan import Plan
from dryfit.plan.setting import Setting
from dryfit.rehearsal.fault import Reason
from dryfit.rehearsal.goal import Goal


def _changed(
    plan: Plan, chance: random.Random, new: Callable[[Operation], Operation | None]
) -> Plan | None:
    for _, _, op in shuffled(chance, deeds(plan)):
        changed = new(op)
        if changed is not None and changed != op:
            return retold(plan, with_operation(plan.steps, op.id, changed))
    return None


def hole_half_as_deep(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    def new(setting: Setting) -> Setting | None:
        value = setting.value
        return replace(setting, value=value / 2) if isinstance(value, Fraction) else None

    return set_otherwise(plan, chance, lambda op: op.kind == "hole", "depth", new)


def hole_out_at_the_other_side(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """A pilot hole comes nearer to, or out of, a face that shows."""

    def new(setting: Setting) -> Setting | None:
        value = setting.value
        return replace(setting, value=value + 4) if isinstance(value, Fraction) else None

    return set_otherwise(plan, chance, lambda op: op.kind == "hole", "depth", new)


def measured_before_glue_up(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
    """The base is measured while it lies about in parts (TRADE C5.3)."""
    rows = [op for _, _, op in deeds(plan)]
    assemblies = {assembly.name for assembly in goal.assemblies}
    pairs = (
        (glued.id, op.id)
        for op in rows
        if op.measure is not None
        for part in goal.parts
        for waits in part.waits
        if waits.measurement == op.id.partition(" / ")[0]
        for glued in rows
        if glued.kind == "glue up" and (name := glued.id.partition(" / ")[0]) in assemblies
        if any(
            (_beside(goal, copy.name) | set(waits.between)) & members(goal, name)
            for copy in part.copies
        )
    )
    return first_of(plan, chance, pairs)


def _beside(goal: Goal, name: str) -> frozenset[str]:
    return frozenset(
        other
        for joint in goal.joints
        if name in {joint.guest, joint.host}
        for other in (joint.guest, joint.host)
        if other != name
    )


def cut_to_the_drawing(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """The base was measured, and the slats are sawn to the figure of the drawing."""

    def new(setting: Setting) -> Setting | None:
        if setting.measure is None:
            return None
        return replace(setting, measure=None, formula=None)

    return set_otherwise(plan, chance, lambda op: op.kind == "length", "stop", new)


def measured_for_nothing(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    by = {setting.measure for _, _, op in deeds(plan) for setting in op.settings}

    def new(op: Operation) -> Operation | None:
        if op.measure is None or op.id.partition(" / ")[0] not in by:
            return None
        return replace(op, measure=replace(op.measure, sets=()))

    return _changed(plan, chance, new)


def no_wood_to_plane(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
    """A blank hardly thicker than the part: the jointer alone takes more (TRADE A5)."""
    jointed = {op.part for _, _, op in deeds(plan) if op.kind == "face" and op.station == "jointer"}

    def new(op: Operation) -> Operation | None:
        part = part_of(goal, op.part)
        if op.rough is None or part is None or part.staves or part.name not in jointed:
            return None
        return replace(op, rough=(*op.rough[:2], sizes(part.copies[0])[2] + Fraction(1, 5)))

    return _changed(plan, chance, new)


def row_without_copies(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    def new(op: Operation) -> Operation | None:
        if op.kind in {"fit", "measure", "dry fit"}:
            return None
        return replace(op, work=tuple(replace(each, copies=()) for each in op.work))

    return _changed(plan, chance, new)


def copy_named_twice(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    def new(op: Operation) -> Operation | None:
        return replace(
            op,
            work=tuple(replace(row, copies=(*row.copies, *row.copies[:1])) for row in op.work),
        )

    return _changed(plan, chance, new)


def row_of_another_part(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
    """The row says rails, and names the legs."""

    def new(op: Operation) -> Operation | None:
        others = [part.name for part in goal.parts if part.name != op.work[0].part]
        if not others or any(part_of(goal, row.part) is None for row in op.work):
            return None
        name = chance.choice(others)
        return replace(op, work=tuple(replace(row, part=name) for row in op.work))

    return _changed(plan, chance, lambda op: new(op) if op.work else None)


KINDS: tuple[Kind, ...] = (
    kind(hole_half_as_deep, Reason.CUT, Reason.FIT),
    kind(hole_out_at_the_other_side, Reason.CUT),
    kind(measured_before_glue_up, Reason.WAIT, Reason.ORDER),
    kind(cut_to_the_drawing, Reason.WAIT),
    kind(measured_for_nothing, Reason.WAIT),
    kind(no_wood_to_plane, Reason.SIZE),
    kind(row_without_copies, Reason.COUNT),
    kind(copy_named_twice, Reason.COUNT, Reason.CUT),
    kind(row_of_another_part, Reason.COUNT),
)
