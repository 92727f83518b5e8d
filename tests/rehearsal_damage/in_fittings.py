"""Damages of what is fitted: runners, fronts, backs, bottoms, and of what holds a top."""

import random
from collections.abc import Iterator
from dataclasses import replace

from tests.rehearsal_damage.in_counting import left_out
from tests.rehearsal_damage.in_order import first_of, glue_ups_with
from tests.rehearsal_damage.kind import Kind, kind
from tests.rehearsal_damage.places import alone, copies_of, deeds, shuffled, with_operation
from tests.rehearsal_damage.retelling import key_of, retold
from tests.rehearsal_damage.wanted import copy_of

from dryfit.plan.operation import Operation
from dryfit.plan.plan import Plan
from dryfit.rehearsal.fault import Reason
from dryfit.rehearsal.goal import Goal


def _hosts(goal: Goal, kind_of: str) -> frozenset[str]:
    return frozenset(joint.host for joint in goal.joints if joint.kind == kind_of)


def _guests(goal: Goal, kind_of: str) -> frozenset[str]:
    return frozenset(joint.guest for joint in goal.joints if joint.kind == kind_of)


def kerf_for_clips_left_out(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
    """Nothing holds the clips of a top (TRADE B22)."""
    rails = _hosts(goal, "clips")

    def fits(op: Operation) -> bool:
        return op.kind == "groove" and bool(copies_of(op) & rails)

    return left_out(plan, chance, fits)


def hole_for_a_fixing_left_out(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    ends = (
        "/ plate recesses",
        "/ screw slots",
        "/ pocket holes",
        "/ hinge recesses",
        "/ pin holes",
    )
    return left_out(plan, chance, lambda op: op.id.endswith(ends))


def _runners(goal: Goal) -> frozenset[str]:
    found = _guests(goal, "runner")
    glued = {name for assembly in goal.assemblies for name in assembly.of}
    return found - glued


def runner_glued(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
    """A runner across the grain of its side is put into the glue-up of the case (TRADE B21.3)."""
    runners = _runners(goal)
    hosts = {j.host for j in goal.joints if j.guest in runners and j.kind != "runner"}
    for _, _, op in shuffled(chance, deeds(plan)):
        if op.kind != "glue up" or not runners or not copies_of(op) & hosts:
            continue
        row = replace(op.work[0], copies=(*op.work[0].copies, *sorted(runners)))
        new = replace(op, work=(row, *op.work[1:]))
        return retold(plan, with_operation(plan.steps, op.id, new))
    return None


def runner_coated(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
    """A film on what runs makes it stick (TRADE B21)."""
    coated = {name for row in goal.coats for name in row.copies}
    runners = sorted(_runners(goal) - coated)
    coats = [(step, op) for _, step, op in deeds(plan) if op.kind == "coat"]
    if not runners or not coats:
        return None
    found = copy_of(goal, chance.choice(runners))
    assert found is not None
    part, (step, op) = found[0], coats[0]
    row = replace(op.work[0], part=part.name, copies=tuple(copy.name for copy in part.copies))
    new = replace(op, id=f"{part.name} / coat 1", part=part.name, work=(row,))
    own, steps = alone(step, new), list(plan.steps)
    steps.insert(next(n for n, each in enumerate(steps) if each is step) + 1, own)
    return retold(plan, steps, moved=frozenset({key_of(own)}))


def _fits(plan: Plan) -> list[Operation]:
    return [op for _, _, op in deeds(plan) if op.kind == "fit"]


def put_in_before_its_finish(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
    """The back lies in its rabbet when the case is coated: the inside is got at no more (B24)."""
    pairs = (
        (coat.id, fit.id)
        for fit in _fits(plan)
        for joint in goal.joints
        if joint.kind == "back rabbet" and joint.guest in copies_of(fit)
        for _, _, coat in deeds(plan)
        if coat.kind == "coat" and joint.host in copies_of(coat)
    )
    return first_of(plan, chance, pairs)


def bottom_slid_in_before_the_glue(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
    """A bottom that slides under the back is put in when nothing is glued yet (TRADE B20)."""
    pairs = (
        (glued, fit.id)
        for fit in _fits(plan)
        for joint in goal.joints
        if joint.kind == "slid panel" and joint.guest in copies_of(fit)
        for mate in goal.joints
        if joint.host in {mate.guest, mate.host}
        for glued in glue_ups_with(goal, mate.guest, mate.host)
    )
    return first_of(plan, chance, pairs)


def front_on_before_its_drawer_runs(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
    """A front is set by its gaps in the opening, on a drawer that is in place (TRADE C5.5)."""
    running = _guests(goal, "runner") | _hosts(goal, "runner")

    def pairs() -> Iterator[tuple[str, str]]:
        fits = _fits(plan)
        for joint in goal.joints:
            for late in fits:
                for early in fits:
                    held = joint.kind == "screws" and joint.guest in copies_of(late)
                    drawer = joint.host in copies_of(early) and copies_of(early) & running
                    if held and drawer and early.id != late.id and len(copies_of(early)) > 1:
                        yield early.id, late.id

    return first_of(plan, chance, pairs())


_OPEN = (Reason.FIT, Reason.CUT, Reason.COUNT)
KINDS: tuple[Kind, ...] = (
    kind(kerf_for_clips_left_out, *_OPEN),
    kind(hole_for_a_fixing_left_out, *_OPEN),
    kind(runner_glued, Reason.ORDER, Reason.COUNT, Reason.FIT),
    kind(runner_coated, Reason.SURFACE),
    kind(put_in_before_its_finish, Reason.ORDER, Reason.SURFACE),
    kind(bottom_slid_in_before_the_glue, Reason.ORDER),
    kind(front_on_before_its_drawer_runs, Reason.ORDER),
)
