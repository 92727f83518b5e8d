"""Damages of what the maker reads of a setting: askew, to another face, from another end."""

import random
from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction

from tests.rehearsal_damage.in_holding import other
from tests.rehearsal_damage.kind import Kind, kind
from tests.rehearsal_damage.places import deeds, shuffled, stood_otherwise
from tests.rehearsal_damage.retelling import retold

from dryfit.plan.operation import Operation
from dryfit.plan.plan import Plan
from dryfit.plan.setting import Setting
from dryfit.rehearsal.fault import Reason
from dryfit.rehearsal.goal import Goal

Fits = Callable[[Operation], bool]
New = Callable[[Setting], Setting | None]


def set_otherwise(
    plan: Plan, chance: random.Random, fits: Fits, axis: str, new: New
) -> Plan | None:
    """The plan with an axis at another value, for one of the operations that fit."""
    for at, _, op in shuffled(chance, [row for row in deeds(plan) if fits(row[2])]):
        old = {setting.axis: setting for setting in op.settings}.get(axis)
        changed = new(old) if old is not None else None
        if changed is not None:
            return retold(plan, stood_otherwise(plan, at, axis, changed))
    return None


def worded_otherwise(
    plan: Plan, chance: random.Random, fits: Fits, axis: str, new: New
) -> Plan | None:
    """The plan with other words beside the value of an axis, in the step of one operation."""
    for _, step, op in shuffled(chance, [row for row in deeds(plan) if fits(row[2])]):
        old = {setting.axis: setting for setting in op.settings}.get(axis)
        changed = new(old) if old is not None else None
        if old is None or changed is None or changed == old:
            continue
        own = replace(
            step,
            settings=tuple((name, changed if s == old else s) for name, s in step.settings),
            operations=tuple(
                replace(each, settings=tuple(changed if s == old else s for s in each.settings))
                for each in step.operations
            ),
        )
        return retold(plan, [own if each is step else each for each in plan.steps])
    return None


def blade_tilted(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """What should be square is sawn at five degrees."""
    new = _at(Fraction(5))
    return set_otherwise(plan, chance, lambda op: op.station == "table saw", "tilt", new)


def ends_sawn_askew(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    return set_otherwise(plan, chance, _of("length"), "angle", _at(Fraction(45)))


def edge_jointed_askew(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    return set_otherwise(plan, chance, _of("edge"), "fence", _at(Fraction(85)))


def _of(*kinds: str) -> Fits:
    return lambda op: op.kind in kinds


def _at(value: Fraction) -> New:
    return lambda setting: replace(setting, value=value)


def length_against_the_rip_fence(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """A trapped offcut kicks back (TRADE 0.8)."""

    def new(setting: Setting) -> Setting:
        return replace(setting, value="rip fence")

    return set_otherwise(plan, chance, _of("length"), "accessory", new)


def ripped_with_a_dado_set(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """A dado set makes a trench and saws nothing through."""
    sets = [name for name, _ in plan.cutters if name.startswith("dado")]
    if not sets:
        return None

    def new(setting: Setting) -> Setting | None:
        return None if setting.value in sets else replace(setting, value=sets[0])

    return set_otherwise(plan, chance, _of("width", "length"), "cutter", new)


def far_face_misprinted(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """Near face and kerf do not make the far face of a rip."""

    def new(setting: Setting) -> Setting | None:
        return None if setting.far is None else replace(setting, far=setting.far + 20)

    return set_otherwise(plan, chance, _of("width"), "fence", new)


def told_to_the_far_face(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """The same number to the other face: the cut lies a cutter's width off (TRADE 0.4)."""

    def new(setting: Setting) -> Setting | None:
        return replace(setting, to="far") if setting.to == "near" else None

    axis = chance.choice(("stop", "fence"))
    return worded_otherwise(plan, chance, lambda _: True, axis, new)


def told_from_the_other_side(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """The stop is said to touch one end, the part is said to lie with the other at it."""
    axis = chance.choice(("stop", "fence"))

    def fits(op: Operation) -> bool:
        holds = [work.hold for work in op.work if work.hold is not None]
        ends = {hold.at_stop if axis == "stop" else hold.against_fence for hold in holds}
        return len(ends) == 1

    def new(setting: Setting) -> Setting | None:
        return None if setting.origin is None else replace(setting, origin=other(setting.origin))

    return worded_otherwise(plan, chance, fits, axis, new)


def height_above_the_sled(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """The number above the table is said to be that above the sled's floor (TRADE 0.5)."""

    def new(setting: Setting) -> Setting:
        return replace(setting, above="sled")

    return worded_otherwise(plan, chance, lambda _: True, "height", new)


KINDS: tuple[Kind, ...] = (
    kind(blade_tilted, Reason.SETTING),
    kind(ends_sawn_askew, Reason.SETTING),
    kind(edge_jointed_askew, Reason.SETTING),
    kind(length_against_the_rip_fence, Reason.MACHINE),
    kind(ripped_with_a_dado_set, Reason.MACHINE),
    kind(far_face_misprinted, Reason.SETTING),
    kind(told_to_the_far_face, Reason.SETTING),
    kind(told_from_the_other_side, Reason.SETTING),
    kind(height_above_the_sled, Reason.SETTING),
)
