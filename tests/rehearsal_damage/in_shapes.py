"""Damages of shapes: tapers, curves and bevels (TRADE B0, B0.5, H63)."""

import random
from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

from tests.rehearsal_damage.in_counting import left_out
from tests.rehearsal_damage.in_holding import other
from tests.rehearsal_damage.in_order import first_of
from tests.rehearsal_damage.in_reading import Fits, New, set_otherwise
from tests.rehearsal_damage.in_settings import ONE, number
from tests.rehearsal_damage.kind import Kind, kind
from tests.rehearsal_damage.places import copies_of, deeds, shuffled, with_operation
from tests.rehearsal_damage.retelling import retold

from dryfit.plan.operation import Operation
from dryfit.plan.plan import Plan
from dryfit.plan.setting import Setting
from dryfit.rehearsal.fault import Reason
from dryfit.rehearsal.goal import Goal

SHAPES = frozenset({"taper", "curve", "bevel"})


def _on_jig(operation: Operation) -> bool:
    return operation.kind == "taper" and operation.station == "table saw"


def bevel_at_another_angle(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    def new(setting: Setting) -> Setting | None:
        value = number(setting)
        return replace(setting, value=value + chance.choice((1, -1))) if value else None

    for axis in chance.sample(("angle", "tilt"), 2):
        told = set_otherwise(plan, chance, lambda op: op.kind == "bevel", axis, new)
        if told is not None:
            return told
    return None


def bevel_too_far_from_the_fence(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """The blade comes out of the wood beside its corner."""
    return set_otherwise(plan, chance, lambda op: op.kind == "bevel", "fence", _by(chance, ONE))


def _by(chance: random.Random, much: Fraction) -> New:
    def new(setting: Setting) -> Setting | None:
        value, by = number(setting), chance.choice((much, -much))
        return None if value is None else replace(setting, value=value + by)

    return new


def cleat_a_little_off(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """More or less is left at the foot."""
    return set_otherwise(plan, chance, _on_jig, "jig", _by(chance, ONE))


def taper_begins_elsewhere(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    return set_otherwise(plan, chance, _on_jig, "stop", _by(chance, Fraction(10)))


def taper_at_the_other_end(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """The end that should stay whole lies at the stop block; the part is turned to lie so."""
    return _held_otherwise(plan, chance, _on_jig, ("at_stop", "down"))


def taper_in_the_opposite_face(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """The face that should be tapered leans on the cleat."""
    return _held_otherwise(plan, chance, _on_jig, ("against_fence", "down"))


def bevel_on_the_other_edge(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    return _held_otherwise(
        plan, chance, lambda op: op.kind == "bevel" and op.station != "bench", ("against_fence",)
    )


def bevel_with_the_other_side_down(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    return _held_otherwise(
        plan, chance, lambda op: op.kind == "bevel" and op.station == "table saw", ("down",)
    )


def _held_otherwise(
    plan: Plan, chance: random.Random, fits: Fits, names: tuple[str, ...]
) -> Plan | None:
    for _, _, op in shuffled(chance, deeds(plan)):
        row = next((work for work in op.work if work.hold is not None), None)
        if not fits(op) or row is None or row.hold is None:
            continue
        new = {name: other(getattr(row.hold, name)) for name in names}
        turned = replace(row, hold=replace(row.hold, **new))
        work = tuple(turned if each is row else each for each in op.work)
        return retold(plan, with_operation(plan.steps, op.id, replace(op, work=work)))
    return None


def shape_left_out(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    return left_out(plan, chance, lambda op: op.kind in SHAPES)


def curve_left_as_sawn(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    return left_out(plan, chance, lambda op: op.kind == "fair")


def shape_before_what_is_measured_from_its_face(
    plan: Plan, goal: Goal, chance: random.Random
) -> Plan | None:
    """What lies or leans on a face is cut when that is tapered already (H63)."""
    return first_of(plan, chance, _leaning(plan, goal))


def _leaning(plan: Plan, goal: Goal) -> Iterator[tuple[str, str]]:
    surfaces = {(part.name, mark.id): mark.surface for part in goal.parts for mark in part.marks}
    rows = [op for _, _, op in deeds(plan)]
    for shape in rows:
        if shape.kind not in {"taper", "curve"}:
            continue
        gone = {surfaces.get((work.part, name)) for work in shape.work for name in work.features}
        for joint in rows:
            held = {
                side
                for work in joint.work
                if work.hold is not None and work.features
                for side in (work.hold.down, work.hold.against_fence)
            }
            if joint.kind not in SHAPES and copies_of(joint) & copies_of(shape) and held & gone:
                yield joint.id, shape.id


KINDS: tuple[Kind, ...] = (
    kind(bevel_at_another_angle, Reason.CUT, Reason.SETTING),
    kind(bevel_too_far_from_the_fence, Reason.CUT),
    kind(cleat_a_little_off, Reason.CUT),
    kind(taper_begins_elsewhere, Reason.CUT),
    kind(taper_at_the_other_end, Reason.CUT),
    kind(taper_in_the_opposite_face, Reason.CUT),
    kind(bevel_on_the_other_edge, Reason.CUT, Reason.HOLD),
    kind(bevel_with_the_other_side_down, Reason.CUT, Reason.HOLD),
    kind(shape_left_out, Reason.CUT),
    kind(curve_left_as_sawn, Reason.SURFACE),
    kind(shape_before_what_is_measured_from_its_face, Reason.REFERENCE),
)
