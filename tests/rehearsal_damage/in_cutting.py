"""Damages of cutters, passes and of the sizes that blanks are cut to."""

import random
from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

from tests.rehearsal_damage.hours import SHOP
from tests.rehearsal_damage.in_settings import number, shifted
from tests.rehearsal_damage.kind import Kind, kind
from tests.rehearsal_damage.places import (
    deeds,
    joint_cuts,
    run_of,
    shuffled,
    stood_otherwise,
    with_operation,
)
from tests.rehearsal_damage.retelling import family_of, retold
from tests.rehearsal_damage.wanted import copy_of, part_of, sizes

from dryfit.plan.operation import Operation
from dryfit.plan.plan import Plan, Step
from dryfit.rehearsal.fault import Reason
from dryfit.rehearsal.goal import Goal

ONE = Fraction(1)


def wrong_cutter(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
    """Another chisel, bit or dado width is mounted; the near faces stand where they stood."""
    widths = dict(plan.cutters)
    for cut in shuffled(chance, joint_cuts(plan, goal)):
        old = cut.settings.get("cutter")
        if old is None or cut.work.hold is None or cut.step.station == "band saw":
            continue
        family = family_of(str(old.value))
        if family == "combination blade":
            continue
        rivals = [
            (other.name, other.widest)
            for other in SHOP.cutters_at(cut.step.station)
            if other.step == 0 and abs(other.widest - widths[str(old.value)]) >= ONE
            if other.kind == next(c.kind for c in SHOP.cutters if c.name == family)
        ]
        if family == "dado":
            rivals = [("dado 12", Fraction(12)), ("dado 9", Fraction(9))]
        for name, width in shuffled(chance, rivals):
            by = width - widths[str(old.value)]
            if abs(by) < ONE:
                continue
            new = replace(old, value=name)
            rows = stood_otherwise(plan, cut.at, "cutter", new)
            for index in run_of(plan, cut.at, "cutter"):
                rows[index] = _faces_moved(rows[index], name, by)
            told = retold(plan, rows)
            return replace(
                told, cutters=(*(c for c in plan.cutters if c[0] != name), (name, width))
            )
    return None


def _faces_moved(step: Step, cutter: str, by: Fraction) -> Step:
    """The far faces follow the new cutter."""

    def moved(operation: Operation) -> Operation:
        if not any(s.axis == "cutter" and s.value == cutter for s in operation.settings):
            return operation
        return replace(
            operation,
            settings=tuple(
                replace(s, far=s.far + by) if s.to == "near" and s.far is not None else s
                for s in operation.settings
            ),
        )

    return replace(step, operations=tuple(map(moved, step.operations)))


def pass_left_out(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
    """So few passes that cutter widths do not add up to the width of the cut."""
    widths = dict(plan.cutters)
    for cut in shuffled(chance, joint_cuts(plan, goal)):
        cutter = cut.settings.get("cutter")
        along = cut.mark.ranges[0]
        if cutter is None or len(cut.work.passes) < 2 or cut.mark.kind in {"long slot", "mortise"}:
            continue
        left = cut.work.passes[:-1]
        if len(left) * widths[str(cutter.value)] + ONE > along[1] - along[0]:
            continue
        op = cut.operation
        work = tuple(replace(each, passes=left) if each == cut.work else each for each in op.work)
        return retold(plan, with_operation(plan.steps, op.id, replace(op, work=work)))
    return None


def spacer_left_out(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
    """The limit that only the spacer gives is not cut; the passes that are left do not reach it."""
    widths = dict(plan.cutters)
    for cut in shuffled(chance, joint_cuts(plan, goal)):
        cutter = cut.settings.get("cutter")
        if cutter is None or not any(each.spacer is not None for each in cut.work.passes):
            continue
        along = cut.mark.ranges[0]
        left = tuple(each for each in cut.work.passes if each.spacer is None)
        if len(left) * widths[str(cutter.value)] + ONE > along[1] - along[0]:
            continue
        op = cut.operation
        work = tuple(replace(each, passes=left) if each == cut.work else each for each in op.work)
        return retold(plan, with_operation(plan.steps, op.id, replace(op, work=work)))
    return None


def pass_of_a_groove_left_out(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
    """One of the fence positions of a groove is left out, and the rest do not make its width."""
    widths = dict(plan.cutters)
    for cut in shuffled(chance, joint_cuts(plan, goal)):
        if cut.mark.kind != "long slot":
            continue
        cutter, stem = cut.settings.get("cutter"), cut.operation.id.rpartition(" / ")[0]
        family = [op for _, _, op in deeds(plan) if op.id.rpartition(" / ")[0] == stem]
        if cutter is None or len(family) < 2 or not cut.operation.id[-1].isdigit():
            continue
        low, high = cut.mark.ranges[1]
        if (len(family) - 1) * widths[str(cutter.value)] + Fraction(1, 2) > high - low:
            continue
        return retold(plan, with_operation(plan.steps, cut.operation.id, None))
    return None


def blade_too_low(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
    """The blade stays a millimetre under the upper face of what it should cut through."""
    base = dict(plan.accessories)
    for at, step, op in shuffled(chance, deeds(plan)):
        part = part_of(goal, op.part)
        settings = {setting.axis: setting for setting in op.settings}
        height, accessory = settings.get("height"), settings.get("accessory")
        through = op.kind in {"width", "length"} and step.station == "table saw"
        if not through or part is None or height is None or accessory is None:
            continue
        thick = sizes(part.copies[0])[2]
        new = replace(height, value=thick + base[str(accessory.value)] - ONE)
        if new.token() != height.token():
            return retold(plan, stood_otherwise(plan, at, "height", new))
    return None


def _resized(
    plan: Plan, goal: Goal, chance: random.Random, kind_of: str, axis: str, direction: int
) -> Plan | None:
    """The plan with a part's own size a millimetre off at the last deed that makes it."""
    for at, _, op in shuffled(chance, deeds(plan)):
        part = part_of(goal, op.part)
        setting = {each.axis: each for each in op.settings}.get(axis)
        value = number(setting)
        if op.kind != kind_of or part is None or setting is None or value is None:
            continue
        names = {name for work in op.work for name in work.copies}
        found = [copy_of(goal, name) for name in names]
        held = any(work.hold is not None for work in op.work)
        if None in found or setting.measure is not None or not held:
            continue
        wanted = {sizes(each[1])[direction] for each in found if each is not None}
        later = {"flatten", "second edge"} & {
            o.kind for _, _, o in deeds(plan) if o.part == op.part
        }
        if wanted != {value} or (later and kind_of != "length"):
            continue
        by = chance.choice((ONE, -ONE))
        return retold(plan, stood_otherwise(plan, at, axis, shifted(setting, by)))
    return None


def planed_to_another_thickness(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
    return _resized(plan, goal, chance, "thickness", "thickness", 2)


def ripped_to_another_width(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
    return _resized(plan, goal, chance, "width", "fence", 1)


def cut_to_another_length(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
    return _resized(plan, goal, chance, "length", "stop", 0)


def blank_too_small(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
    """A blank is cut from the board smaller than the finished part."""
    for _, _, op in shuffled(chance, deeds(plan)):
        part = part_of(goal, op.part)
        if op.rough is None or part is None or part.staves:
            continue
        want = sizes(part.copies[0])
        row = list(op.rough)
        if any(rough < size for rough, size in zip(row, want, strict=True)):
            continue  # Wide parts may be planed by hand from a blank that is glued up elsewhere.
        direction = chance.choice((0, 1, 2))
        row[direction] = want[direction] - ONE
        new = replace(op, rough=(row[0], row[1], row[2]))
        return retold(plan, with_operation(plan.steps, op.id, new))
    return None


def stop_for_the_shoulders(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
    """A part is cut as long as it is between its shoulders, without tenons and laps."""
    for at, _, op in shuffled(chance, deeds(plan)):
        part = part_of(goal, op.part)
        setting = {each.axis: each for each in op.settings}.get("stop")
        value = number(setting)
        if op.kind != "length" or part is None or setting is None or value is None:
            continue
        if setting.measure is not None:
            continue
        ends = max(_ends(goal, part.copies[0].name), default=Fraction(0))
        if 0 < ends < value - 2 * ONE:
            return retold(plan, stood_otherwise(plan, at, "stop", shifted(setting, -ends)))
    return None


def _ends(goal: Goal, name: str) -> Iterator[Fraction]:
    """How far the copy goes into others at its ends."""
    found = copy_of(goal, name)
    assert found is not None
    axis, _ = found[1].frame.axes[0]
    box = found[1].box
    for joint in goal.joints:
        region = joint.region
        if joint.guest != name or not 0 < region.extent(axis) < box.extent(axis) / 2:
            continue
        if region.low[axis] == box.low[axis] or region.high[axis] == box.high[axis]:
            yield region.extent(axis)


KINDS: tuple[Kind, ...] = (
    kind(wrong_cutter, Reason.CUT, Reason.FIT),
    kind(pass_left_out, Reason.CUT, Reason.FIT),
    kind(spacer_left_out, Reason.CUT, Reason.FIT),
    kind(pass_of_a_groove_left_out, Reason.CUT, Reason.FIT),
    kind(blade_too_low, Reason.CUT, Reason.SETTING),
    kind(planed_to_another_thickness, Reason.SIZE),
    kind(ripped_to_another_width, Reason.SIZE),
    kind(cut_to_another_length, Reason.SIZE),
    kind(stop_for_the_shoulders, Reason.SIZE),
    kind(blank_too_small, Reason.SIZE),
)
