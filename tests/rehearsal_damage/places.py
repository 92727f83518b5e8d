"""Where in a plan a damage could be done: steps, operations and work rows that fit."""

import random
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from typing import TypeVar

from tests.rehearsal_damage.retelling import Key, key_of
from tests.rehearsal_damage.wanted import CUTS, copy_of, mark_of, part_of

from dryfit.plan.operation import Operation, Work
from dryfit.plan.plan import Plan, Step
from dryfit.plan.setting import Setting
from dryfit.rehearsal.goal import Goal, Mark, WantedCopy, WantedPart

Thing = TypeVar("Thing")


@dataclass(frozen=True, slots=True)
class Cut:
    """One mark of one copy that a work row cuts."""

    at: int
    step: Step
    operation: Operation
    work: Work
    part: WantedPart
    copy: WantedCopy
    mark: Mark

    @property
    def settings(self) -> dict[str, Setting]:
        """What the operation wants of its machine."""
        return {setting.axis: setting for setting in self.operation.settings}


def shuffled(chance: random.Random, things: Iterable[Thing]) -> list[Thing]:
    """The things in an order by chance."""
    row = list(things)
    chance.shuffle(row)
    return row


def deeds(plan: Plan) -> Iterator[tuple[int, Step, Operation]]:
    """Every operation with its step and the place of that among the steps."""
    for at, step in enumerate(plan.steps):
        for operation in step.operations:
            yield at, step, operation


def joint_cuts(plan: Plan, goal: Goal) -> Iterator[Cut]:
    """The first copy of every mark with a mate that is cut as a box, row by row."""
    for at, step, operation in deeds(plan):
        for work in operation.work:
            part = part_of(goal, work.part)
            for name in work.features:
                mark = mark_of(part, name) if part is not None else None
                found = copy_of(goal, work.copies[0]) if work.copies else None
                if mark is None or found is None or part is None:
                    continue
                cut = Cut(at, step, operation, work, part, found[1], mark)
                if mark.kind in CUTS and mark.after is None and _has_mate(cut, goal):
                    yield cut


def _has_mate(cut: Cut, goal: Goal) -> bool:
    """Whether another copy would stand in the wood that goes."""
    box = cut.copy.frame.to_piece(cut.copy.box, cut.mark.ranges)
    for joint in goal.joints:
        if cut.copy.name in {joint.guest, joint.host}:
            mate = joint.host if joint.guest == cut.copy.name else joint.guest
            found = copy_of(goal, mate)
            if found is not None and box.overlap(found[1].box) is not None:
                return True
    return False


def copies_of(operation: Operation) -> frozenset[str]:
    """All copies that an operation works on."""
    return frozenset(name for work in operation.work for name in work.copies)


def place_of(plan: Plan, operation: str) -> int | None:
    """The index of the step that does an operation, or None."""
    for at, _, each in deeds(plan):
        if each.id == operation:
            return at
    return None


def with_operation(steps: Sequence[Step], old: str, new: Operation | None) -> list[Step]:
    """The steps with an operation replaced, or left out; a step without any goes."""
    rows: list[Step] = []
    for step in steps:
        own = tuple(
            new if op.id == old else op for op in step.operations if op.id != old or new is not None
        )
        kept = tuple(op for op in own if op is not None)
        if kept:
            rows.append(step if kept == step.operations else replace(step, operations=kept))
    return rows


def alone(step: Step, operation: Operation) -> Step:
    """A step that does one operation of a step."""
    return replace(step, operations=(operation,))


def moved_to(
    plan: Plan, operation: str, beside: str, *, after: bool
) -> tuple[list[Step], frozenset[Key]] | None:
    """The steps with one operation as a step of its own before or after that of another one."""
    found = [(step, op) for _, step, op in deeds(plan) if op.id == operation]
    if len(found) != 1:
        return None
    own = alone(*found[0])
    rows = with_operation(plan.steps, operation, None)
    at = next((n for n, s in enumerate(rows) if beside in key_of(s)), None)
    if at is None:
        return None
    rows.insert(at + after, own)
    return rows, frozenset({key_of(own)})


def reset(step: Step, axis: str, old: Setting, new: Setting) -> Step:
    """A step whose operations that want the old setting want the new one."""

    def changed(setting: Setting) -> Setting:
        if setting.axis != axis or setting.token() != old.token():
            return setting
        return replace(new, origin=setting.origin, at_least=setting.at_least)

    return replace(
        step,
        operations=tuple(
            replace(op, settings=tuple(map(changed, op.settings))) for op in step.operations
        ),
    )


def run_of(plan: Plan, at: int, axis: str) -> list[int]:
    """The steps at one station over which an axis is not changed, with the one at `at`."""
    station = plan.steps[at].station
    here = [n for n, step in enumerate(plan.steps) if step.station == station]
    start = max((n for n in here if n <= at and axis in plan.steps[n].changed), default=here[0])
    end = min(
        (n for n in here if n > at and axis in plan.steps[n].changed), default=len(plan.steps)
    )
    return [n for n in here if start <= n < end]


def stood_otherwise(plan: Plan, at: int, axis: str, new: Setting) -> list[Step]:
    """The steps with an axis at another value from where it was set until it is set anew."""
    old = dict(plan.steps[at].settings)[axis]
    assert old is not None
    rows = list(plan.steps)
    for index in run_of(plan, at, axis):
        rows[index] = reset(rows[index], axis, old, new)
    return rows
