"""The operations of a plan in their order, each with where it stands and whom it is about."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from dryfit.plan.operation import Operation
from dryfit.plan.plan import Plan
from dryfit.rehearsal.fault import Fault, Reason
from dryfit.rehearsal.goal import Goal


@dataclass(frozen=True, slots=True)
class Deed:
    """An operation where it stands in the plan, and all copies that it is done to.

    `at` counts the operations of the plan; `subject` and `what` are the first words of its id.
    """

    at: int
    step: int
    operation: Operation
    subject: str
    what: str
    copies: frozenset[str]


def deeds_of(plan: Plan) -> tuple[Deed, ...]:
    """Return the deeds of a plan from first to last."""
    found: list[Deed] = []
    for step in plan.steps:
        for operation in step.operations:
            subject, _, rest = operation.id.partition(" / ")
            copies = frozenset(name for work in operation.work for name in work.copies)
            what = rest.partition(" / ")[0]
            found.append(Deed(len(found), step.number, operation, subject, what, copies))
    return tuple(found)


def fault_of(deed: Deed, reason: Reason, message: str, needed: str) -> Fault:
    """Return a fault of a deed, told of its subject."""
    return Fault(reason, f"{deed.subject}: {message}", needed, deed.step, deed.operation.id)


def glued_at(deeds: Sequence[Deed], goal: Goal) -> dict[str, int]:
    """Return where each assembly is glued."""
    names = {assembly.name for assembly in goal.assemblies}
    return {
        deed.subject: deed.at
        for deed in deeds
        if deed.operation.kind == "glue up" and deed.subject in names
    }
