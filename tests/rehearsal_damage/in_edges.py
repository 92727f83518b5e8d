"""Damages of bridles, tongues, board ends and rabbets (TRADE B2, B8, B10, B3)."""

import random
from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

from tests.rehearsal_damage.in_counting import left_out
from tests.rehearsal_damage.in_reading import set_otherwise
from tests.rehearsal_damage.in_settings import ONE, a_millimetre_off, at_depth, restood
from tests.rehearsal_damage.kind import Kind, kind
from tests.rehearsal_damage.places import (
    Cut,
    deeds,
    joint_cuts,
    shuffled,
    stood_otherwise,
    with_operation,
)
from tests.rehearsal_damage.retelling import retold

from dryfit.plan.operation import Operation
from dryfit.plan.plan import Plan
from dryfit.plan.setting import Setting
from dryfit.rehearsal.fault import Reason
from dryfit.rehearsal.goal import Goal


def _is_open_mortise(operation: Operation) -> bool:
    return any(name.startswith("open mortise") for row in operation.work for name in row.features)


def _stem(operation: Operation) -> str:
    head, _, last = operation.id.rpartition(" / ")
    return head if last.isdigit() else operation.id


def _families(plan: Plan) -> dict[str, list[Operation]]:
    """The passes of each open mortise."""
    found: dict[str, list[Operation]] = {}
    for _, _, op in deeds(plan):
        if _is_open_mortise(op):
            found.setdefault(_stem(op), []).append(op)
    return found


def open_mortise_left_out(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """The tenon of a bridle finds no slot in the end of its mate (TRADE B2)."""
    for own in shuffled(chance, _families(plan).values()):
        steps = list(plan.steps)
        for op in own:
            steps = with_operation(steps, op.id, None)
        return retold(plan, steps)
    return None


def pass_of_an_open_mortise_left_out(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """Wood is left standing in the slot: each pass stands where no other does."""
    for own in shuffled(chance, _families(plan).values()):
        if len(own) > 1:
            return retold(plan, with_operation(plan.steps, chance.choice(own).id, None))
    return None


def on_its_end_at_the_bare_fence(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """A stick stands on its end at the rip fence, and no jig holds it (TRADE B0: tenon jig)."""

    def fits(op: Operation) -> bool:
        downs = {row.hold.down for row in op.work if row.hold is not None}
        return op.station == "table saw" and bool(downs & {"R", "R2"})

    def new(setting: Setting) -> Setting:
        return replace(setting, value="rip fence")

    return set_otherwise(plan, chance, fits, "accessory", new)


def tongue_on_one_face_only(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """The wood on the face stays: the tongue is too thick for its groove (TRADE B10)."""
    face = chance.choice(("on F", "on B"))
    steps = list(plan.steps)
    found = False
    for _, _, op in deeds(plan):
        kept = tuple(row for row in op.work if not any(_is_tongue(n, face) for n in row.features))
        if len(kept) < len(op.work):
            found = True
            steps = with_operation(steps, op.id, replace(op, work=kept) if kept else None)
    return retold(plan, steps) if found else None


def _is_tongue(name: str, face: str) -> bool:
    return name.startswith("tongue for ") and name.endswith(face)


def mortise_without_room_to_slide(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
    """An outer mortise of a board end is as long as its tenon: the plank splits (TRADE G8)."""
    slides = {
        joint.host: joint.pegs.slide
        for joint in goal.joints
        if joint.pegs is not None and joint.sliding_room
    }
    for cut in shuffled(chance, joint_cuts(plan, goal)):
        slide, stop = slides.get(cut.copy.name, Fraction(0)), cut.settings.get("stop")
        if not slide or stop is None or cut.mark.kind != "mortise" or not _slides(cut, goal):
            continue
        assert isinstance(stop.value, Fraction)
        assert stop.far is not None
        new = replace(stop, value=stop.value + slide, far=stop.far - slide)
        return retold(plan, stood_otherwise(plan, cut.at, "stop", new))
    return None


def _slides(cut: Cut, goal: Goal) -> bool:
    box = cut.copy.frame.to_piece(cut.copy.box, cut.mark.ranges)
    return any(
        box.overlap(room) is not None
        for joint in goal.joints
        if joint.host == cut.copy.name
        for room in joint.sliding_room
    )


def peg_slots_left_out(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    return left_out(plan, chance, lambda op: op.id.endswith("/ peg slots"))


def rabbet_a_millimetre_shallow(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
    """Its mate stands out, and the back does not lie in its case (TRADE B8)."""

    def by(cut: Cut) -> Iterator[Fraction]:
        if cut.mark.kind == "rabbet":
            yield -ONE

    return at_depth(plan, goal, chance, by)


def rabbet_a_millimetre_wrong(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
    """Too narrow for its mate, or wider than that is thick."""

    def news(cut: Cut, old: Setting) -> Iterator[Setting]:
        if cut.mark.kind == "rabbet":
            yield from a_millimetre_off(cut, old)

    for axis in chance.sample(("stop", "fence"), 2):
        told = restood(plan, goal, chance, axis, news)
        if told is not None:
            return told
    return None


_OPEN = (Reason.FIT, Reason.CUT, Reason.COUNT)
KINDS: tuple[Kind, ...] = (
    kind(open_mortise_left_out, *_OPEN),
    kind(pass_of_an_open_mortise_left_out, *_OPEN),
    kind(on_its_end_at_the_bare_fence, Reason.MACHINE, Reason.HOLD),
    kind(tongue_on_one_face_only, *_OPEN),
    kind(mortise_without_room_to_slide, Reason.FIT, Reason.CUT),
    kind(peg_slots_left_out, *_OPEN),
    kind(rabbet_a_millimetre_shallow, Reason.FIT, Reason.CUT),
    kind(rabbet_a_millimetre_wrong, Reason.FIT, Reason.CUT),
)
