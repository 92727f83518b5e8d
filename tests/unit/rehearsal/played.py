"""Small pieces, their plans, and plans in which one thing is otherwise."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from pathlib import Path

from tests.pieces.planning import planned

from dryfit.plan.operation import Operation
from dryfit.plan.plan import Plan
from dryfit.rehearsal.fault import Fault, Reason
from dryfit.rehearsal.goal import Goal
from dryfit.rehearsal.rehearse import rehearse
from dryfit.rehearsing import goal_of
from dryfit.shop import Shop


@dataclass(frozen=True, slots=True)
class Played:
    """A plan, what it is for, and its shop."""

    plan: Plan
    goal: Goal
    shop: Shop

    def faults(self) -> tuple[Fault, ...]:
        """What the rehearsal finds."""
        return rehearse(self.plan, self.goal, self.shop)

    def reasons(self) -> set[Reason]:
        """Why the plan is refused."""
        return {fault.reason for fault in self.faults()}

    def said(self) -> str:
        """All that the rehearsal says, a line each."""
        return "\n".join(f"{fault.message}; needed: {fault.needed}" for fault in self.faults())

    def with_operations(self, change: Callable[[Operation], Operation | None]) -> "Played":
        """The plan with each operation changed, or left out for None."""
        steps = []
        for step in self.plan.steps:
            rows = tuple(new for op in step.operations if (new := change(op)) is not None)
            if rows:
                steps.append(replace(step, operations=rows))
        return replace(self, plan=replace(self.plan, steps=tuple(steps)))

    def without(self, *words: str) -> "Played":
        """The plan without the operations whose id has one of the words."""
        return self.with_operations(lambda op: None if any(word in op.id for word in words) else op)

    def idle(self, word: str) -> "Played":
        """The plan in which the operations with the word in their id do nothing."""
        return self.with_operations(lambda op: replace(op, work=()) if word in op.id else op)


def played(text: str, shop: Path | None = None) -> Played:
    """The notes planned in the shipped shop, or in that of a file."""
    found, plan, findings = planned(text, shop)
    assert plan is not None, [finding.message for finding in findings]
    assert found.model is not None
    assert found.shop is not None
    return Played(plan, goal_of(found.model), found.shop)
