"""Damages of how a part lies: another face down, another end at the stop, the other hand."""

import random
from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

from tests.rehearsal_damage.in_settings import depth_of, sweep_at
from tests.rehearsal_damage.kind import Kind, kind
from tests.rehearsal_damage.places import Cut, deeds, joint_cuts, shuffled, with_operation
from tests.rehearsal_damage.retelling import retold
from tests.rehearsal_damage.wanted import copy_of, mark_of, sizes, spoils, with_range

from dryfit.geometry.frame import SURFACES
from dryfit.plan.operation import Operation, Work
from dryfit.plan.plan import Plan, Step
from dryfit.plan.setting import Hold, Setting
from dryfit.rehearsal.fault import Reason
from dryfit.rehearsal.goal import Goal

OPPOSITE = {"R": "R2", "R2": "R", "E": "E2", "E2": "E", "F": "B", "B": "F"}
ONE = Fraction(1)


def other(surface: str | None) -> str | None:
    """The surface on the other side."""
    return OPPOSITE[surface] if surface is not None else None


def reheld(plan: Plan, operation: Operation, work: Work, hold: Hold) -> Plan:
    """The plan with one work row held otherwise; what a setting is read from touches."""
    rows = tuple(replace(each, hold=hold) if each is work else each for each in operation.work)
    new = replace(operation, work=rows)
    steps = with_operation(plan.steps, operation.id, new)
    return retold(plan, [_read_from(step) if new in step.operations else step for step in steps])


def _read_from(step: Step) -> Step:
    """The step with stop and fence read from an end or edge that touches in it."""
    holds = [work.hold for op in step.operations for work in op.work if work.hold is not None]
    touching = {
        "stop": [hold.at_stop for hold in holds if hold.at_stop is not None],
        "fence": [hold.against_fence for hold in holds if hold.against_fence is not None],
    }

    def read(setting: Setting) -> Setting:
        ends = touching.get(setting.axis, [])
        if setting.origin is None or not ends or setting.origin in ends:
            return setting
        return replace(setting, origin=ends[0])

    return replace(
        step,
        settings=tuple((axis, s if s is None else read(s)) for axis, s in step.settings),
        operations=tuple(
            replace(op, settings=tuple(map(read, op.settings))) for op in step.operations
        ),
    )


def held_as_its_mirror_image(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """One of three directions is turned round: only the mirror image of the part lies so."""
    for _, _, op in shuffled(chance, deeds(plan)):
        for work in op.work:
            hold = work.hold
            if hold is None or None in (hold.down, hold.against_fence, hold.at_stop):
                continue
            if not work.features:
                continue  # A part without a cut has no hand yet: either edge will do.
            return reheld(plan, op, work, replace(hold, against_fence=other(hold.against_fence)))
    return None


def wrong_face_down(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
    """Turned over, as the part can lie: but the cutter meets the other face."""
    for cut in shuffled(chance, joint_cuts(plan, goal)):
        hold = cut.work.hold
        if hold is None or hold.down is None:
            continue
        if depth_of(cut) >= sizes(cut.copy)[SURFACES[cut.mark.surface][0]] - ONE:
            continue  # What goes right through is the same from either side.
        turned = replace(hold, down=other(hold.down), against_fence=other(hold.against_fence))
        return reheld(plan, cut.operation, cut.work, turned)
    return None


def other_end_at_the_stop(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
    """Turned end for end, as the part can lie, with the same number: R2 for R."""
    for cut in shuffled(chance, joint_cuts(plan, goal)):
        hold, stop = cut.work.hold, cut.settings.get("stop")
        if hold is None or hold.at_stop is None or stop is None:
            continue
        turned = replace(hold, at_stop=other(hold.at_stop), against_fence=other(hold.against_fence))
        there = replace(cut, work=replace(cut.work, hold=turned))
        one, two = sweep_at(cut, "stop", stop), sweep_at(there, "stop", stop)
        if one is None or two is None or one == two:
            continue
        # Measured from there the cut has to miss the mark by a millimetre at least.
        if abs(two[1][0] - one[1][0]) >= ONE and not _has_the_same_at(cut, two[1]):
            return reheld(plan, cut.operation, cut.work, turned)
    return None


def _has_the_same_at(cut: Cut, along: tuple[Fraction, Fraction]) -> bool:
    """Whether a like mark stands at the other end too: its own row would cut it there."""
    low, high = along
    return (
        any(
            mark.surface == cut.mark.surface and abs(mark.ranges[0][0] - low) < ONE
            for mark in cut.part.marks
            if mark.id != cut.mark.id
        )
        and high <= sizes(cut.copy)[0]
    )


def hands_exchanged(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
    """A left and a right copy change places between two rows that hold them as mirror images."""
    rows = [(op, work) for _, _, op in deeds(plan) for work in op.work if work.features]
    pairs: Iterator[tuple[tuple[Operation, Work], tuple[Operation, Work]]] = (
        (one, two)
        for index, one in enumerate(rows)
        for two in rows[index + 1 :]
        if one[1].part == two[1].part and one[1].features == two[1].features
    )
    for (op_a, work_a), (op_b, work_b) in shuffled(chance, pairs):
        first, second = copy_of(goal, work_a.copies[0]), copy_of(goal, work_b.copies[0])
        if first is None or second is None or not _mirrored(op_a, work_a, op_b, work_b):
            continue
        if first[1].frame.handedness() == second[1].frame.handedness():
            continue
        a = (work_b.copies[0], *work_a.copies[1:])
        b = (work_a.copies[0], *work_b.copies[1:])
        new = {id(work_a): replace(work_a, copies=a), id(work_b): replace(work_b, copies=b)}
        steps = plan.steps
        for op in {op_a.id: op_a, op_b.id: op_b}.values():
            work = tuple(new.get(id(each), each) for each in op.work)
            steps = tuple(with_operation(steps, op.id, replace(op, work=work)))
        return retold(plan, steps)
    return None


def _mirrored(op_a: Operation, work_a: Work, op_b: Operation, work_b: Work) -> bool:
    """Whether the two rows are held so that a copy fits one of them only."""
    a, b = work_a.hold, work_b.hold
    if a is None or b is None or None in (a.down, a.against_fence, a.at_stop, b.at_stop):
        return False
    sides = {s.side for op in (op_a, op_b) for s in op.settings if s.axis == "stop"}
    if a == b:
        return sides == {"left", "right"}
    return len(sides) == 1 and replace(a, against_fence=b.against_fence) == b


def fence_at_the_other_edge(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
    """A groove or mortise is measured from the other edge, with the same number."""
    for cut in shuffled(chance, joint_cuts(plan, goal)):
        hold, fence = cut.work.hold, cut.settings.get("fence")
        along = cut.mark.kind in {"long slot", "mortise"}
        if hold is None or fence is None or hold.against_fence is None or not along:
            continue
        turned = replace(hold, against_fence=other(hold.against_fence))
        if hold.at_stop is not None:
            continue  # Three directions: that would be a mirror image as well.
        there = replace(cut, work=replace(cut.work, hold=turned))
        one, two = sweep_at(cut, "fence", fence), sweep_at(there, "fence", fence)
        if one is None or two is None:
            continue
        before, after = (with_range(cut.mark.ranges, *limits) for limits in (one, two))
        if spoils(goal, cut.copy, cut.mark, [before], [after]):
            return reheld(plan, cut.operation, cut.work, turned)
    return None


def cut_in_no_mark(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
    """A row works on a copy of another part, which carries no such mark."""
    for cut in shuffled(chance, joint_cuts(plan, goal)):
        strangers = [p for p in goal.parts if p.name != cut.part.name and p.copies]
        for part in shuffled(chance, strangers):
            if mark_of(part, cut.mark.id) is not None:
                continue
            copies = (part.copies[0].name, *cut.work.copies[1:])
            work = tuple(
                replace(each, copies=copies) if each is cut.work else each
                for each in cut.operation.work
            )
            new = replace(cut.operation, work=work)
            return retold(plan, with_operation(plan.steps, new.id, new))
    return None


KINDS: tuple[Kind, ...] = (
    kind(held_as_its_mirror_image, Reason.HOLD),
    kind(wrong_face_down, Reason.CUT, Reason.FIT, Reason.HOLD),
    kind(other_end_at_the_stop, Reason.CUT, Reason.FIT),
    kind(hands_exchanged, Reason.HOLD),
    kind(fence_at_the_other_edge, Reason.CUT, Reason.FIT),
    kind(cut_in_no_mark, Reason.CUT, Reason.FIT, Reason.HOLD, Reason.COUNT),
)
