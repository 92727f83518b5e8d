"""Damages of sanding and coats: at the wrong time, in the wrong place, or not at all."""

import random

from tests.rehearsal_damage.in_counting import copy_dropped, left_out
from tests.rehearsal_damage.in_order import first_of, glue_ups_with
from tests.rehearsal_damage.kind import Kind, kind
from tests.rehearsal_damage.places import copies_of, deeds

from dryfit.plan.operation import Operation
from dryfit.plan.plan import Plan
from dryfit.rehearsal.fault import Reason
from dryfit.rehearsal.goal import Goal

GRITS = ("120", "180")


def coarse_grit_last(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """The scratches of the coarse grit are left (TRADE D2)."""
    coarse, fine = GRITS
    ids = {op.id for _, _, op in deeds(plan)}
    pairs = (
        (name, other)
        for name in ids
        if name.endswith(coarse) and (other := name.removesuffix(coarse) + fine) in ids
    )
    return first_of(plan, chance, iter(sorted(pairs)))


def coat_before_sanding(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """Sanding takes off the coat of the very copies that it is done on."""
    pairs = (
        (sanded.id, coat.id)
        for _, _, sanded in deeds(plan)
        if sanded.kind == "sand" and "inside" not in sanded.id and "faces" not in sanded.id
        for _, _, coat in deeds(plan)
        if coat.kind == "coat" and " / coat 1" in coat.id and copies_of(coat) == copies_of(sanded)
    )
    return first_of(plan, chance, pairs)


def fitted_before_last_coat(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """What is fitted is coated afterwards, where nobody gets at it."""
    rows = [op for _, _, op in deeds(plan)]
    pairs = (
        (coat.id, fit.id)
        for fit in rows
        if fit.kind == "fit"
        for coat in rows
        if coat.kind == "coat" and copies_of(coat) & copies_of(fit)
    )
    return first_of(plan, chance, pairs)


def closed_surface_sanded(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """The inside faces are sanded when the frame is closed (TRADE D1)."""
    ids = {op.id for _, _, op in deeds(plan)}
    pairs = (
        (op.id, glued)
        for _, _, op in deeds(plan)
        if " / sand inside " in op.id and (glued := f"{op.id.partition(' / ')[0]} / glue up") in ids
    )
    return first_of(plan, chance, pairs)


def glue_patch_coated(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
    """A first coat on faces that are to be glued, where the notes want none before the glue."""
    late = {name for row in goal.coats if row.before is None for name in row.copies}
    pairs = (
        (glued, coat.id)
        for _, _, coat in deeds(plan)
        if coat.kind == "coat" and " / coat 1" in coat.id and copies_of(coat) <= late
        for joint in goal.joints
        if joint.patches and {joint.guest, joint.host} & copies_of(coat)
        for glued in glue_ups_with(goal, joint.guest, joint.host)
    )
    return first_of(plan, chance, pairs)


def coat_left_out(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    return left_out(plan, chance, lambda op: op.kind == "coat")


def sanding_left_out(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
    """The last sanding before the coats is left out."""
    coated = {name for row in goal.coats for name in row.copies}

    def fits(op: Operation) -> bool:
        last = "inside" not in op.id and "faces" not in op.id
        return op.kind == "sand" and last and bool(copies_of(op) & coated)

    return left_out(plan, chance, fits)


def copy_not_coated(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    return copy_dropped(plan, chance, lambda op: op.kind == "coat")


KINDS: tuple[Kind, ...] = (
    kind(coarse_grit_last, Reason.SURFACE, Reason.ORDER),
    kind(coat_before_sanding, Reason.SURFACE, Reason.ORDER),
    kind(fitted_before_last_coat, Reason.SURFACE, Reason.ORDER),
    kind(closed_surface_sanded, Reason.SURFACE, Reason.ORDER),
    kind(glue_patch_coated, Reason.SURFACE, Reason.ORDER),
    kind(coat_left_out, Reason.SURFACE, Reason.COUNT),
    kind(sanding_left_out, Reason.SURFACE, Reason.COUNT),
    kind(copy_not_coated, Reason.SURFACE, Reason.COUNT),
)
