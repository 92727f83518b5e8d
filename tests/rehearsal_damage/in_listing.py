"""Damages of what is listed for a glue-up: members, diagonals, clamps."""

import random
from collections.abc import Callable
from dataclasses import replace

from tests.rehearsal_damage.in_counting import copy_dropped
from tests.rehearsal_damage.kind import Kind, kind
from tests.rehearsal_damage.places import deeds, shuffled, with_operation
from tests.rehearsal_damage.retelling import retold

from dryfit.plan.operation import GlueUp, Operation
from dryfit.plan.plan import Plan
from dryfit.rehearsal.fault import Reason
from dryfit.rehearsal.goal import Goal


def told_of_glue(
    plan: Plan,
    goal: Goal,
    chance: random.Random,
    new: Callable[[Operation, GlueUp], Operation | None],
) -> Plan | None:
    """The plan with one glue-up of an assembly told otherwise."""
    names = {assembly.name for assembly in goal.assemblies}
    rows = [op for _, _, op in deeds(plan) if op.id.partition(" / ")[0] in names]
    for op in shuffled(chance, rows):
        changed = new(op, op.glue_up) if op.glue_up is not None else None
        if changed is not None:
            return retold(plan, with_operation(plan.steps, op.id, changed))
    return None


def member_left_out_of_glue_up(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
    """The frame is glued, and its panel lies on the bench."""

    def new(op: Operation, glue: GlueUp) -> Operation:
        gone = chance.choice(glue.parts)
        work = tuple(
            replace(each, copies=tuple(name for name in each.copies if name != gone))
            for each in op.work
        )
        parts = tuple(name for name in glue.parts if name != gone)
        return replace(op, work=work, glue_up=replace(glue, parts=parts))

    return told_of_glue(plan, goal, chance, new)


def stranger_in_glue_up(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
    def new(op: Operation, glue: GlueUp) -> Operation | None:
        subject = op.id.partition(" / ")[0]
        outer = {a.name for a in goal.assemblies if subject in a.of}
        strangers = [
            name
            for assembly in goal.assemblies
            if assembly.name in outer
            for name in assembly.of
            if name != subject
        ]
        if not strangers:
            return None
        return replace(op, glue_up=replace(glue, parts=(*glue.parts, chance.choice(strangers))))

    return told_of_glue(plan, goal, chance, new)


def member_listed_twice(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
    """One rail stands in the list twice, and another not at all."""

    def new(op: Operation, glue: GlueUp) -> Operation:
        return replace(op, glue_up=replace(glue, parts=(*glue.parts[:-1], glue.parts[0])))

    return told_of_glue(plan, goal, chance, new)


def dry_fit_without_a_member(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    return copy_dropped(plan, chance, lambda op: op.kind == "dry fit")


def wrong_diagonal(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
    """Pulled to that figure the frame is out of square (TRADE C3.5)."""

    def new(op: Operation, glue: GlueUp) -> Operation | None:
        if not glue.diagonals:
            return None
        rows = tuple((name, length + 10) for name, length in glue.diagonals)
        return replace(op, glue_up=replace(glue, diagonals=rows))

    return told_of_glue(plan, goal, chance, new)


def a_rail_without_a_clamp(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
    """One bar for two rails: the other stays open at its shoulders (TRADE C3.1)."""

    def new(op: Operation, glue: GlueUp) -> Operation | None:
        subject = op.id.partition(" / ")[0]
        of = next(each.of for each in goal.assemblies if each.name == subject)
        rails = {j.guest for j in goal.joints if j.kind in _DRAWN and {j.guest} <= set(of)}
        if len(glue.clamps) != 1 or glue.clamps[0].count != len(rails) or len(op.held) != 1:
            return None
        fewer = len(rails) - 1
        if not fewer:
            return None
        return replace(
            op,
            held=(replace(op.held[0], count=fewer),),
            glue_up=replace(glue, clamps=(replace(glue.clamps[0], count=fewer),)),
        )

    return told_of_glue(plan, goal, chance, new)


_DRAWN = frozenset({"mortise and tenon", "housing"})
KINDS: tuple[Kind, ...] = (
    kind(member_left_out_of_glue_up, Reason.COUNT),
    kind(stranger_in_glue_up, Reason.COUNT),
    kind(member_listed_twice, Reason.COUNT),
    kind(dry_fit_without_a_member, Reason.COUNT),
    kind(wrong_diagonal, Reason.SIZE),
    kind(a_rail_without_a_clamp, Reason.RESOURCES),
)
