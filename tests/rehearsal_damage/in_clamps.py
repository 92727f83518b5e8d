"""Damages of what is shared: clamps, and the air of a one-room shop."""

import random
from dataclasses import replace

from tests.rehearsal_damage.hours import SHOP
from tests.rehearsal_damage.in_time import earlier
from tests.rehearsal_damage.kind import Kind, kind
from tests.rehearsal_damage.places import alone, copies_of, deeds, shuffled, with_operation
from tests.rehearsal_damage.retelling import key_of, retold

from dryfit.plan.operation import Operation
from dryfit.plan.plan import Plan, Step
from dryfit.rehearsal.fault import Reason
from dryfit.rehearsal.goal import Goal

DUSTY = frozenset(
    {"mitre saw", "band saw", "jointer", "planer", "table saw", "router table", "sander"}
)


def clamps_used_twice(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """A glue-up begins while so many clamps are in use that there are not enough."""
    count = {clamp.name: clamp.count for clamp in SHOP.clamps}
    rows = [(at, step, op) for at, step, op in deeds(plan) if op.held]
    for at, step, op in shuffled(chance, rows):
        for later, _, other in rows:
            short = [
                held.lag
                for held in op.held
                for more in other.held
                if held.resource == more.resource and held.count + more.count > count[held.resource]
            ]
            if later > at and short:
                told = earlier(plan, later, step.ends.tenths + max(short), op.id)
                if told is not None:
                    return told
    return None


def more_clamps_than_there_are(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    count = {clamp.name: clamp.count for clamp in SHOP.clamps}
    rows = [op for _, _, op in deeds(plan) if op.held and op.glue_up is not None]
    for op in shuffled(chance, rows):
        held = chance.choice(op.held)
        glue = op.glue_up
        assert glue is not None
        more = count[held.resource] + 1
        if len(glue.clamps) != len(op.held):
            continue
        index = op.held.index(held)
        clamps = tuple(
            replace(row, count=more) if n == index else row for n, row in enumerate(glue.clamps)
        )
        if glue.clamps[index].count != held.count:
            continue
        new = replace(
            op,
            held=tuple(replace(h, count=more) if h == held else h for h in op.held),
            glue_up=replace(glue, clamps=clamps),
        )
        return retold(plan, with_operation(plan.steps, op.id, new))
    return None


def clamp_too_short(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """A clamp is taken that does not open as far as the work is wide."""
    opens = {clamp.name: clamp for clamp in SHOP.clamps}
    for _, _, op in shuffled(chance, deeds(plan)):
        if op.glue_up is None or len(op.held) != 1:
            continue
        longest = max((row.length for row in op.glue_up.clamps), default=None)
        for name, clamp in opens.items():
            if longest is not None and clamp.opens < longest and clamp.count >= op.held[0].count:
                new = replace(op, held=(replace(op.held[0], resource=name),))
                return retold(plan, with_operation(plan.steps, op.id, new))
    return None


def dust_on_a_wet_coat(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """The last sanding of other copies is done right after a coat, before that is free of dust."""
    rows = list(deeds(plan))
    pairs = [
        (at, coat, sanded)
        for at, step, coat in rows
        if coat.kind == "coat"
        for before, _, sanded in rows
        if before < at
        and sanded.kind == "sand"
        and not copies_of(sanded) & copies_of(coat)
        and not any(
            before < n < at and copies_of(op) & copies_of(sanded) and op.kind == "glue up"
            for n, _, op in rows
        )
    ]
    for _, coat, sanded in shuffled(chance, pairs):
        told = _sanded_after(plan, coat, sanded)
        if told is not None:
            return told
    return None


def _sanded_after(plan: Plan, coat: Operation, sanded: Operation) -> Plan | None:
    """The sanding, and what its copies need between it and the coat, done right after the coat."""
    subject = sanded.id.partition(" / ")[0]
    found = [(at, step, op) for at, step, op in deeds(plan) if op.id == coat.id]
    place = found[0][0]
    at = next(n for n, _, op in deeds(plan) if op.id == sanded.id)
    after = [
        (step, op)
        for n, step, op in deeds(plan)
        if at <= n < place
        and op.id.partition(" / ")[0] == subject
        and op.kind in {"sand", "ease edges", "coat"}
    ]
    if any(op.kind == "coat" for _, op in after):
        return None
    names = {op.id for _, op in after}
    steps: list[Step] = list(plan.steps)
    for name in names:
        steps = with_operation(steps, name, None)
    own = [alone(step, op) for step, op in after]
    behind = next(n for n, step in enumerate(steps) if coat.id in key_of(step))
    steps[behind + 1 : behind + 1] = own
    told = retold(plan, steps, tight=frozenset(map(key_of, own)))
    wet = SHOP.finishes.get(next(str(s.value) for s in coat.settings if s.axis == "product"))
    ended = told.step_of(coat.id).ends.tenths
    dusty = told.step_of(sanded.id)
    # The sanding has to begin and to make dust while the coat is wet.
    if wet is None or dusty.station not in DUSTY or dusty.ends.tenths > ended + wet.dust_free:
        return None
    return told


KINDS: tuple[Kind, ...] = (
    kind(clamps_used_twice, Reason.RESOURCES),
    kind(more_clamps_than_there_are, Reason.RESOURCES),
    kind(clamp_too_short, Reason.RESOURCES),
    kind(dust_on_a_wet_coat, Reason.DUST),
)
