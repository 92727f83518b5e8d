"""Damages of how blanks lie while they are milled, and of the machine at which that is done."""

import random
from collections.abc import Callable
from dataclasses import replace

from tests.rehearsal_damage.in_holding import other
from tests.rehearsal_damage.kind import Kind, kind
from tests.rehearsal_damage.places import alone, deeds, shuffled, with_operation
from tests.rehearsal_damage.retelling import key_of, retold

from dryfit.plan.operation import Operation
from dryfit.plan.plan import Plan
from dryfit.plan.setting import Hold, Setting
from dryfit.rehearsal.fault import Reason
from dryfit.rehearsal.goal import Goal


def relaid(
    plan: Plan,
    chance: random.Random,
    fits: Callable[[Operation], bool],
    how: Callable[[Hold], Hold],
) -> Plan | None:
    """The plan with one held operation of those that fit lying in another way."""
    rows = [op for _, _, op in deeds(plan) if fits(op) and any(w.hold for w in op.work)]
    for op in shuffled(chance, rows):
        work = tuple(
            replace(each, hold=how(each.hold) if each.hold is not None else None)
            for each in op.work
        )
        if work != op.work:
            return retold(plan, with_operation(plan.steps, op.id, replace(op, work=work)))
    return None


def of_kind(what: str) -> Callable[[Operation], bool]:
    """Whether an operation is of a kind."""
    return lambda op: op.kind == what


def back_faced(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """The jointer trues the back; the face, from which all is measured, stays rough."""
    return relaid(plan, chance, of_kind("face"), lambda hold: replace(hold, down=other(hold.down)))


def edge_squared_to_a_rough_face(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    return relaid(plan, chance, of_kind("edge"), lambda hold: replace(hold, against_fence="B"))


def other_edge_jointed(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    return relaid(plan, chance, of_kind("edge"), lambda hold: replace(hold, down="E2"))


def planed_on_a_rough_face(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """The planer copies what lies down (TRADE A3.1)."""
    return relaid(plan, chance, of_kind("thickness"), lambda hold: replace(hold, down="B"))


def ripped_along_a_rough_edge(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """The saw's fence needs a straight edge (TRADE A2.5)."""
    return relaid(plan, chance, of_kind("width"), lambda hold: replace(hold, against_fence="E2"))


def nothing_at_the_stop(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """The stop is set, and the part lies anywhere along the fence."""

    def fits(op: Operation) -> bool:
        return any(setting.axis == "stop" and setting.origin for setting in op.settings)

    return relaid(plan, chance, fits, lambda hold: replace(hold, at_stop=None))


def nothing_at_the_fence(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    return relaid(plan, chance, _is_cut, lambda hold: replace(hold, against_fence=None))


def _is_cut(op: Operation) -> bool:
    return any(work.features for work in op.work)


def no_pass_made(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    rows = [op for _, _, op in deeds(plan) if any(work.passes for work in op.work)]
    for op in shuffled(chance, rows):
        work = tuple(replace(each, passes=()) for each in op.work)
        return retold(plan, with_operation(plan.steps, op.id, replace(op, work=work)))
    return None


def at_another_machine(
    plan: Plan, chance: random.Random, what: str, station: str, settings: tuple[Setting, ...]
) -> Plan | None:
    """The plan with a held deed done at a machine that cannot do it, where it was done before."""
    rows = [
        (at, step, op)
        for at, step, op in deeds(plan)
        if op.kind == what and op.station != station and any(work.hold for work in op.work)
    ]
    for at, step, op in shuffled(chance, rows):
        own = alone(step, replace(op, station=station, settings=settings))
        own = replace(own, station=station)
        steps = with_operation(plan.steps, op.id, None)
        steps.insert(at + (len(step.operations) > 1), own)
        return retold(plan, steps, moved=frozenset({key_of(own)}))
    return None


def thickness_at_the_jointer(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """A jointer makes a face flat, and no two faces parallel (TRADE A3.1)."""
    settings = next((op.settings for _, _, op in deeds(plan) if op.station == "jointer"), None)
    return at_another_machine(plan, chance, "thickness", "jointer", settings) if settings else None


def length_at_the_band_saw(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """A band saw leaves no square end to measure from (TRADE A3.3)."""
    return at_another_machine(plan, chance, "length", "band saw", ())


_TRUE = (Reason.REFERENCE, Reason.HOLD)
KINDS: tuple[Kind, ...] = (
    kind(back_faced, *_TRUE),
    kind(edge_squared_to_a_rough_face, *_TRUE),
    kind(other_edge_jointed, *_TRUE),
    kind(planed_on_a_rough_face, *_TRUE),
    kind(ripped_along_a_rough_edge, *_TRUE),
    kind(nothing_at_the_stop, Reason.HOLD),
    kind(nothing_at_the_fence, Reason.HOLD),
    kind(no_pass_made, Reason.CUT, Reason.SETTING),
    kind(thickness_at_the_jointer, Reason.MACHINE),
    kind(length_at_the_band_saw, Reason.MACHINE),
)
