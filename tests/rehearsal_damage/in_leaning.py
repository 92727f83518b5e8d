"""Damages of legs that lean: a wrong slope, the wrong way, square, a wrong length, feet left."""

import random
from collections.abc import Callable, Iterator
from dataclasses import replace
from fractions import Fraction

from tests.rehearsal_damage.in_counting import left_out
from tests.rehearsal_damage.in_holding import OPPOSITE
from tests.rehearsal_damage.in_reading import set_otherwise
from tests.rehearsal_damage.in_settings import number
from tests.rehearsal_damage.kind import Kind, kind
from tests.rehearsal_damage.places import deeds, shuffled, with_operation
from tests.rehearsal_damage.retelling import retold

from dryfit.plan.operation import Operation, Work
from dryfit.plan.plan import Plan
from dryfit.plan.setting import Pass, Setting
from dryfit.rehearsal.fault import Reason
from dryfit.rehearsal.goal import Goal

Slopes = tuple[tuple[str, Fraction], ...]


def _rows(plan: Plan) -> Iterator[tuple[Operation, Work]]:
    for _, _, op in deeds(plan):
        yield from ((op, work) for work in op.work if work.slopes)


def _led_by(
    plan: Plan, chance: random.Random, new: Callable[[Slopes], Slopes | None]
) -> Plan | None:
    for op, row in shuffled(chance, _rows(plan)):
        slopes = new(row.slopes)
        if slopes is not None and slopes != row.slopes:
            changed = replace(row, slopes=slopes)
            work = tuple(changed if each is row else each for each in op.work)
            return retold(plan, with_operation(plan.steps, op.id, replace(op, work=work)))
    return None


def leaning_cut_at_another_slope(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """A tenth steeper, as if the bevel had slipped."""
    return _led_by(plan, chance, lambda old: tuple((s, v * Fraction(11, 10)) for s, v in old))


def leaning_cut_the_other_way(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """The leg leans inwards, or its shoulder stands open by twice the slope."""
    return _led_by(plan, chance, lambda old: tuple((OPPOSITE[s], v) for s, v in old))


def leaning_cut_square(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    return _led_by(plan, chance, lambda _old: ())


def leaning_one_way_only(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """Of the two slopes of a hole one is forgotten."""
    return _led_by(plan, chance, lambda old: old[:1] if len(old) > 1 else None)


def _lengths_of_leaning(goal: Goal) -> dict[str, Fraction]:
    return {
        part.name: part.copies[0].box.extent(2)
        for part in goal.parts
        if any(copy.lean is not None for copy in part.copies)
    }


def leaning_leg_as_long_as_it_is_high(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
    high = _lengths_of_leaning(goal)

    def fits(op: Operation) -> bool:
        return op.kind == "length" and op.part in high

    def new(setting: Setting) -> Setting | None:
        value = number(setting)
        part = next((op.part for _, _, op in deeds(plan) if fits(op)), None)
        if value is None or part is None:
            return None
        by = high[part] - value
        far = None if setting.far is None else setting.far + by
        return replace(setting, value=value + by, far=far)

    return set_otherwise(plan, chance, fits, "stop", new)


def _feet(op: Operation) -> bool:
    return op.kind == "feet"


def feet_left_as_they_are(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    return left_out(plan, chance, _feet)


def feet_over_another_block(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """The seat comes out a millimetre too high or too low."""
    by = chance.choice((1, -1))
    for _, _, op in deeds(plan):
        if _feet(op):
            work = tuple(
                replace(
                    row, passes=tuple(Pass(spacer=Fraction(p.spacer or 0) + by) for p in row.passes)
                )
                for row in op.work
            )
            return retold(plan, with_operation(plan.steps, op.id, replace(op, work=work)))
    return None


def foot_forgotten(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    for _, _, op in deeds(plan):
        if _feet(op):
            row = chance.choice(op.work)
            gone = chance.choice(row.copies)
            kept = replace(row, copies=tuple(name for name in row.copies if name != gone))
            work = tuple(kept if each is row else each for each in op.work)
            return retold(plan, with_operation(plan.steps, op.id, replace(op, work=work)))
    return None


def seat_put_onto_leaning_legs(plan: Plan, goal: Goal, _chance: random.Random) -> Plan | None:
    """All at once: legs that point apart go into no seat so."""
    leaning = {c.name for part in goal.parts for c in part.copies if c.lean is not None}
    # Two legs that lean alike, glued to a stretcher, count as one: a seat goes onto no two of them.
    leaning |= {each.name for each in goal.assemblies if leaning & set(each.of)}
    seats = {each.host for each in goal.joints if each.guest in leaning}
    for _, _, op in deeds(plan):
        if op.glue_up is None or not seats & set(op.glue_up.parts):
            continue
        if len(leaning & set(op.glue_up.parts)) > 1:
            order = tuple(sorted(op.glue_up.parts, key=lambda name: name not in leaning))
            new = replace(op, glue_up=replace(op.glue_up, parts=order))
            return retold(plan, with_operation(plan.steps, op.id, new))
    return None


def hole_where_the_upright_leg_has_it(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
    """The height is measured along the leg, as if it stood plumb, from its square end."""
    upright = {
        part.name: mark.ranges[0]
        for part in goal.parts
        for mark in part.marks
        if part.sloped is not None and mark.kind == "hole"
    }

    def fits(op: Operation) -> bool:
        stops = [s for s in op.settings if s.axis == "stop" and s.origin == "R"]
        return op.station == "drill press" and op.part in upright and bool(stops)

    def new(setting: Setting) -> Setting | None:
        value = number(setting)
        part = next((op.part for _, _, op in deeds(plan) if fits(op)), None)
        if value is None or part is None or setting.far is None:
            return None
        by = sum(upright[part], Fraction(0)) / 2 - (value + setting.far) / 2
        return replace(setting, value=value + by, far=setting.far + by)

    return set_otherwise(plan, chance, fits, "stop", new)


KINDS: tuple[Kind, ...] = (
    kind(leaning_cut_at_another_slope, Reason.CUT),
    kind(leaning_cut_the_other_way, Reason.CUT),
    kind(leaning_cut_square, Reason.CUT),
    kind(leaning_one_way_only, Reason.CUT),
    kind(leaning_leg_as_long_as_it_is_high, Reason.SIZE),
    kind(feet_left_as_they_are, Reason.COUNT),
    kind(feet_over_another_block, Reason.SIZE),
    kind(foot_forgotten, Reason.COUNT),
    kind(seat_put_onto_leaning_legs, Reason.ORDER),
    kind(hole_where_the_upright_leg_has_it, Reason.CUT, Reason.FIT),
)
