"""Damages of the order: two deeds change places of which one needs the other."""

import random
from collections.abc import Iterator

from tests.rehearsal_damage.kind import Kind, kind
from tests.rehearsal_damage.places import (
    copies_of,
    deeds,
    joint_cuts,
    moved_to,
    place_of,
    shuffled,
)
from tests.rehearsal_damage.retelling import retold
from tests.rehearsal_damage.wanted import copy_of, members

from dryfit.plan.operation import Operation
from dryfit.plan.plan import Plan
from dryfit.rehearsal.fault import Reason
from dryfit.rehearsal.goal import Goal


def turned_round(plan: Plan, chance: random.Random, first: str, then: str) -> Plan | None:
    """The plan with `then` done before `first`, whichever of the two is moved."""
    before, after = place_of(plan, first), place_of(plan, then)
    if before is None or after is None or before > after:
        return None
    moves = chance.sample(((then, first, False), (first, then, True)), 2)
    for operation, beside, behind in moves:
        found = moved_to(plan, operation, beside, after=behind)
        if found is not None:
            rows, moved = found
            told = retold(plan, rows, moved=moved)
            if (place_of(told, then) or 0) < (place_of(told, first) or 0):
                return told
    return None


def first_of(plan: Plan, chance: random.Random, pairs: Iterator[tuple[str, str]]) -> Plan | None:
    """The plan with one of the pairs turned round."""
    for first, then in shuffled(chance, pairs):
        told = turned_round(plan, chance, first, then)
        if told is not None:
            return told
    return None


def _of_one_part(plan: Plan, first: str, then: str) -> Iterator[tuple[str, str]]:
    """Pairs of deeds at machines on the same copies."""
    rows = [op for _, _, op in deeds(plan)]
    for one in rows:
        for other in rows:
            held = all(work.hold is not None for work in (*one.work, *other.work))
            same = one.part == other.part and copies_of(one) & copies_of(other)
            if same and (one.kind, other.kind) == (first, then) and held:
                yield one.id, other.id


def thickness_before_face(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """The planer copies the face that lies down (TRADE A3.1)."""
    return first_of(plan, chance, _of_one_part(plan, "face", "thickness"))


def edge_before_face(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """The edge is squared to the face (TRADE A3.1)."""
    return first_of(plan, chance, _of_one_part(plan, "face", "edge"))


def width_before_edge(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """The saw's fence needs a straight edge (TRADE A2.5)."""
    return first_of(plan, chance, _of_one_part(plan, "edge", "width"))


def cut_before_length(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
    """A cut is measured from an end that is not there yet."""

    def pairs() -> Iterator[tuple[str, str]]:
        for cut in joint_cuts(plan, goal):
            hold = cut.work.hold
            for _, _, op in deeds(plan):
                own = op.kind == "length" and cut.copy.name in copies_of(op)
                if own and hold is not None and hold.at_stop is not None:
                    yield op.id, cut.operation.id

    return first_of(plan, chance, pairs())


def cut_before_width(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
    """A cut is made in, or along, an edge that is not there yet."""

    def pairs() -> Iterator[tuple[str, str]]:
        for cut in joint_cuts(plan, goal):
            hold = cut.work.hold
            for _, _, op in deeds(plan):
                own = op.kind == "width" and cut.copy.name in copies_of(op)
                if own and hold is not None and "E2" in {hold.down, hold.against_fence}:
                    yield op.id, cut.operation.id

    return first_of(plan, chance, pairs())


def glue_ups_with(goal: Goal, *copies: str) -> Iterator[str]:
    """The glue-up that first brings copies together, as the id of its operation."""
    for assembly in goal.assemblies:
        inside = [members(goal, each) for each in assembly.of]
        whole = frozenset().union(*inside)
        if set(copies) <= whole and not any(set(copies) <= each for each in inside):
            yield f"{assembly.name} / glue up"


def _cuts_of_glued_joints(plan: Plan, goal: Goal) -> Iterator[tuple[Operation, str]]:
    """Cuts whose place is taken by the mate once the two are glued, with that glue-up."""
    for cut in joint_cuts(plan, goal):
        box = cut.copy.frame.to_piece(cut.copy.box, cut.mark.ranges)
        for joint in goal.joints:
            if cut.copy.name not in {joint.guest, joint.host}:
                continue
            mate = joint.host if joint.guest == cut.copy.name else joint.guest
            found = copy_of(goal, mate)
            if found is not None and box.overlap(found[1].box) is not None:
                for glued in glue_ups_with(goal, joint.guest, joint.host):
                    yield cut.operation, glued


def cut_after_glue_up(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
    pairs = ((op.id, glued) for op, glued in _cuts_of_glued_joints(plan, goal))
    return first_of(plan, chance, pairs)


def cut_after_dry_fit(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
    """What is not cut cannot be tried: the mate stands where the wood is."""
    pairs = (
        (op.id, glued.replace("glue up", "dry fit"))
        for op, glued in _cuts_of_glued_joints(plan, goal)
    )
    return first_of(plan, chance, pairs)


def glued_before_dry_fit(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    pairs = (
        (op.id.replace("glue up", "dry fit"), op.id)
        for _, _, op in deeds(plan)
        if op.kind == "glue up"
    )
    return first_of(plan, chance, pairs)


def whole_glued_before_its_frame(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
    names = {assembly.name for assembly in goal.assemblies}
    pairs = (
        (f"{inner} / glue up", f"{outer.name} / glue up")
        for outer in goal.assemblies
        for inner in outer.of
        if inner in names
    )
    return first_of(plan, chance, pairs)


def panel_flattened_before_glue(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    ids = {op.id for _, _, op in deeds(plan)}
    pairs = (
        (glued, op.id)
        for _, _, op in deeds(plan)
        if op.kind == "flatten" and (glued := op.id.replace("flatten", "glue up")) in ids
    )
    return first_of(plan, chance, pairs)


def measured_part_cut_before(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """A length that is taken from the piece is cut before the piece is there to measure."""
    pairs = (
        (op.id, name)
        for _, _, op in deeds(plan)
        if op.measure is not None
        for name in op.measure.sets
    )
    return first_of(plan, chance, pairs)


_TRUE = (Reason.REFERENCE, Reason.ORDER)
KINDS: tuple[Kind, ...] = (
    kind(thickness_before_face, *_TRUE),
    kind(edge_before_face, *_TRUE),
    kind(width_before_edge, *_TRUE),
    kind(cut_before_length, *_TRUE),
    kind(cut_before_width, *_TRUE),
    kind(cut_after_glue_up, Reason.ORDER, Reason.HOLD),
    kind(cut_after_dry_fit, Reason.ORDER, Reason.FIT),
    kind(glued_before_dry_fit, Reason.ORDER),
    kind(whole_glued_before_its_frame, Reason.ORDER, Reason.HOLD),
    kind(panel_flattened_before_glue, Reason.ORDER, Reason.HOLD),
    kind(measured_part_cut_before, Reason.WAIT, Reason.ORDER),
)
