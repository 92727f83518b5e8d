"""Damages of corners: mitres, fingers, tails, and the keys across them (TRADE B12 to B15)."""

import random
from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

from tests.rehearsal_damage.in_counting import left_out
from tests.rehearsal_damage.in_holding import other
from tests.rehearsal_damage.in_order import first_of
from tests.rehearsal_damage.in_reading import set_otherwise
from tests.rehearsal_damage.in_settings import ONE, number, shifted
from tests.rehearsal_damage.kind import Kind, drawn, kind
from tests.rehearsal_damage.places import deeds, shuffled, with_operation
from tests.rehearsal_damage.retelling import retold

from dryfit.plan.operation import Operation, Work
from dryfit.plan.plan import Plan
from dryfit.plan.setting import Setting
from dryfit.rehearsal.fault import Reason
from dryfit.rehearsal.goal import Goal, Mark, WantedPart


def is_mitre(operation: Operation) -> bool:
    """Whether ends are sawn at an angle."""
    return operation.kind == "mitre"


def mitre_at_another_angle(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """A degree off at each end opens a corner (TRADE B12)."""

    def new(setting: Setting) -> Setting | None:
        value = number(setting)
        return replace(setting, value=value + chance.choice((1, -1))) if value else None

    for axis in chance.sample(("angle", "tilt"), 2):
        told = set_otherwise(plan, chance, is_mitre, axis, new)
        if told is not None:
            return told
    return None


def mitre_to_another_length(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    def new(setting: Setting) -> Setting:
        return shifted(setting, chance.choice((ONE, -ONE)))

    return set_otherwise(plan, chance, is_mitre, "stop", new)


def mitre_left_out(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    return left_out(plan, chance, is_mitre)


def mitre_at_one_end_only(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    for _, _, op in shuffled(chance, deeds(plan)):
        if is_mitre(op) and len(op.work) > 1:
            gone = chance.choice(op.work)
            work = tuple(each for each in op.work if each is not gone)
            return retold(plan, with_operation(plan.steps, op.id, replace(op, work=work)))
    return None


def mitre_toward_the_outside(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """The part is turned about its length: its outer side is sawn off, its inner one stays long."""
    for _, _, op in shuffled(chance, deeds(plan)):
        row = next((work for work in op.work if work.hold is not None), None)
        if not is_mitre(op) or row is None or row.hold is None:
            continue
        hold = row.hold
        turned = replace(hold, down=other(hold.down), against_fence=other(hold.against_fence))
        return retold(plan, with_operation(plan.steps, op.id, _with_row(op, row, hold=turned)))
    return None


def _with_row(operation: Operation, row: Work, **changes: object) -> Operation:
    new = replace(row, **changes)  # type: ignore[arg-type]
    return replace(operation, work=tuple(new if each is row else each for each in operation.work))


def _finger_rows(plan: Plan) -> list[tuple[Operation, Work]]:
    return [
        (op, work)
        for _, _, op in deeds(plan)
        if op.kind == "fingers"
        for work in op.work
        if len(work.passes) > 1
    ]


def fingers_begun_on_the_wrong_side(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """Both boards begin alike: finger meets finger (TRADE B13)."""
    rows = _finger_rows(plan)
    for op, row in shuffled(chance, rows):
        for _, mate in rows:
            if mate.passes != row.passes and mate.part != row.part:
                new = _with_row(op, row, passes=mate.passes)
                return retold(plan, with_operation(plan.steps, op.id, new))
    return None


def finger_socket_left_out(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    for op, row in shuffled(chance, _finger_rows(plan)):
        new = _with_row(op, row, passes=row.passes[:-1])
        return retold(plan, with_operation(plan.steps, op.id, new))
    return None


def finger_socket_too_shallow(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """The blade is two millimetres low: the fingers of the mate stand out, nothing closes."""

    def new(setting: Setting) -> Setting | None:
        value = number(setting)
        return replace(setting, value=value - 2) if value is not None else None

    return set_otherwise(plan, chance, lambda op: op.kind == "fingers", "height", new)


def _is_tailed(operation: Operation) -> bool:
    return operation.kind in {"tails", "pins"}


def tail_or_pin_left_out(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    for _, _, op in shuffled(chance, deeds(plan)):
        for row in shuffled(chance, op.work):
            if _is_tailed(op) and len(row.features) > 1:
                gone = chance.choice(row.features)
                kept = tuple(name for name in row.features if name != gone)
                new = _with_row(op, row, features=kept)
                return retold(plan, with_operation(plan.steps, op.id, new))
    return None


def tails_on_the_board_of_pins(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    rows = [(op, work) for _, _, op in deeds(plan) if _is_tailed(op) for work in op.work]
    for op, row in shuffled(chance, rows):
        for mate_op, mate in rows:
            if op.kind == "tails" and mate_op.kind == "pins" and mate.part != row.part:
                new = _with_row(op, row, part=mate.part, copies=mate.copies)
                return retold(plan, with_operation(plan.steps, op.id, new))
    return None


def pins_marked_beside_their_tails(_plan: Plan, goal: Goal, chance: random.Random) -> Goal | None:
    """One pin socket is drawn four millimetres along: pin and tail share wood (TRADE B14)."""

    def moved(mark: Mark) -> Mark:
        along, (low, high), deep = mark.ranges
        return replace(mark, ranges=(along, (low + 4, high + 4), deep), halves=())

    return redrawn_one(goal, chance, lambda mark: mark.id.startswith("pin socket"), moved)


def redrawn_one(goal: Goal, chance: random.Random, fits: object, new: object) -> Goal | None:
    """The goal with one of the marks that fit drawn otherwise."""
    assert callable(fits)
    assert callable(new)
    rows: Iterator[tuple[WantedPart, Mark]] = (
        (part, mark) for part in goal.parts for mark in part.marks if fits(mark)
    )
    for part, mark in shuffled(chance, rows):
        marks = tuple(new(each) if each is mark else each for each in part.marks)
        own = replace(part, marks=marks)
        return replace(goal, parts=tuple(own if each is part else each for each in goal.parts))
    return None


def _is_key_slot(operation: Operation) -> bool:
    return operation.kind == "key slot"


def key_slot_too_shallow(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """The key that is cut for it stands out, and holds by less wood (TRADE B12.1)."""

    def new(setting: Setting) -> Setting | None:
        value = number(setting)
        return replace(setting, value=value - Fraction(3)) if value is not None else None

    return set_otherwise(plan, chance, _is_key_slot, "height", new)


def key_slots_before_the_glue(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """Two loose boards lie in the cradle: the slot runs across no closed corner."""
    ids = {op.id for _, _, op in deeds(plan)}
    pairs = (
        (glued, op.id)
        for _, _, op in deeds(plan)
        if _is_key_slot(op) and (glued := f"{op.id.partition(' / ')[0]} / glue up") in ids
    )
    return first_of(plan, chance, pairs)


_OPEN = (Reason.FIT, Reason.CUT, Reason.COUNT)
KINDS: tuple[Kind, ...] = (
    kind(mitre_at_another_angle, Reason.SETTING),
    kind(mitre_to_another_length, Reason.SIZE),
    kind(mitre_left_out, *_OPEN),
    kind(mitre_at_one_end_only, *_OPEN),
    kind(mitre_toward_the_outside, Reason.FIT, Reason.CUT),
    kind(fingers_begun_on_the_wrong_side, Reason.FIT, Reason.CUT, Reason.HOLD),
    kind(finger_socket_left_out, *_OPEN),
    kind(finger_socket_too_shallow, Reason.FIT, Reason.CUT),
    kind(tail_or_pin_left_out, *_OPEN),
    kind(tails_on_the_board_of_pins, *_OPEN),
    drawn(pins_marked_beside_their_tails, Reason.FIT, Reason.CUT),
    kind(key_slot_too_shallow, Reason.SETTING, Reason.CUT),
    kind(key_slots_before_the_glue, Reason.ORDER),
)
