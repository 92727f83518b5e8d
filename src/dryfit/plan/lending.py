"""Steps that take more people than the shop has: when somebody has to lend a hand, and how long."""

from __future__ import annotations

from dataclasses import dataclass

from dryfit.plan.plan import Moment, Plan, Step


@dataclass(frozen=True, slots=True)
class Lending:
    """Steps in a row for which somebody is needed: the first and the last, and their deeds.

    `people` is how many it takes in all; `tenths` the minutes of work from `starts` on, in tenths.
    """

    first: int
    last: int
    deeds: tuple[str, ...]
    people: int
    starts: Moment
    tenths: int

    @property
    def steps(self) -> str:
        """Return the steps as a sentence names them: ``step 4``, ``steps 4 to 6``."""
        if self.first == self.last:
            return f"step {self.first}"
        between = "and" if self.last == self.first + 1 else "to"
        return f"steps {self.first} {between} {self.last}"


def lent_hands(plan: Plan) -> tuple[Lending, ...]:
    """Return when the shop has too few hands, in order."""
    rows: list[Lending] = []
    for step in plan.steps:
        for operation in step.operations:
            if operation.hands > plan.workers:
                one = Lending(
                    step.number,
                    step.number,
                    (operation.id,),
                    operation.hands,
                    step.starts,
                    operation.tenths,
                )
                if rows and _goes_on(rows[-1], step):
                    rows[-1] = _joined(rows[-1], one)
                else:
                    rows.append(one)
    return tuple(rows)


def _goes_on(row: Lending, step: Step) -> bool:
    """Return whether a step follows on the same day, so that one call will do."""
    return step.number <= row.last + 1 and step.starts.day == row.starts.day


def _joined(row: Lending, more: Lending) -> Lending:
    return Lending(
        row.first,
        more.last,
        row.deeds + more.deeds,
        max(row.people, more.people),
        row.starts,
        row.tenths + more.tenths,
    )
