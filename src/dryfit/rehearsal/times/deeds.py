"""The plan as it is played: each operation with its hours and the copies that it has in hand."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from dryfit.plan.operation import Operation
from dryfit.plan.plan import Plan, Step
from dryfit.rehearsal.goal import Goal
from dryfit.rehearsal.times.working_hours import Hours


@dataclass(frozen=True, slots=True)
class Deed:
    """An operation in its step: `begins` and `ends` are the clock tenths of its work alone.

    `touched` are the copies and staves that it is done with, those of assemblies one by one.
    """

    step: Step
    operation: Operation
    begins: int
    ends: int
    touched: frozenset[str]

    @property
    def kind(self) -> str:
        """Return the kind of the operation."""
        return self.operation.kind

    @property
    def subject(self) -> str:
        """Return what the operation's id names first."""
        return self.operation.id.partition(" / ")[0]


def played(plan: Plan, goal: Goal, hours: Hours) -> tuple[Deed, ...]:
    """Return all operations in the order of the plan.

    The work of a step ends with the step; what came before it ends where its own work begins.
    """
    return tuple(deed for step in plan.steps for deed in _of_step(step, goal, hours))


def _of_step(step: Step, goal: Goal, hours: Hours) -> Iterator[Deed]:
    left = sum(operation.tenths for operation in step.operations)
    end = hours.worked(step.ends.tenths)
    for operation in step.operations:
        begins = hours.begins(end - left)
        left -= operation.tenths
        ends = _ends(end - left, begins, hours) if left else step.ends.tenths
        yield Deed(step, operation, begins, ends, touched_by(operation, goal))


def _ends(worked: int, begins: int, hours: Hours) -> int:
    """Return the clock time at which work is over: in the evening, not next morning."""
    return max(begins, hours.begins(worked - 1) + 1)


def touched_by(operation: Operation, goal: Goal) -> frozenset[str]:
    """Return the copies and staves that an operation has in hand.

    Where it names none, they are those that its subject stands for, or else its part.
    """
    copies = [name for row in operation.work for name in row.copies]
    if operation.glue_up is not None:
        copies += operation.glue_up.parts
    if not copies:
        subject = operation.id.partition(" / ")[0]
        copies = [subject if _is_known(subject, goal) else operation.part]
    return frozenset(copy for name in copies for copy in standing_for(name, goal))


def _is_known(name: str, goal: Goal) -> bool:
    return standing_for(name, goal) != {name} or any(
        name == copy.name for part in goal.parts for copy in part.copies
    )


def standing_for(name: str, goal: Goal) -> frozenset[str]:
    """Return the copies of an assembly, a stage or a part; a copy or stave stands for itself."""
    inside = [each for each in goal.assemblies if name in {each.name, each.stage}]
    found = {copy for each in inside for inner in each.of for copy in standing_for(inner, goal)}
    found |= {copy.name for part in goal.parts if part.name == name for copy in part.copies}
    return frozenset(found or {name})
