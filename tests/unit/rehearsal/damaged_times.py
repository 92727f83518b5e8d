"""Real small plans, and the one thing at a time that a test makes wrong in them."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from functools import cache
from pathlib import Path
from typing import Any

from tests.pieces.planning import planned
from tests.pieces.reading import text_of, without_boards

from dryfit.plan.operation import Lag, Operation
from dryfit.plan.plan import Moment, Plan, Step
from dryfit.rehearsal.fault import Fault
from dryfit.rehearsal.goal import Goal
from dryfit.rehearsal.times import times
from dryfit.rehearsal.times.working_hours import hours_of
from dryfit.rehearsing import goal_of
from dryfit.shop.shop import Shop

Value = Any
"""What a field of any of the dataclasses holds."""
MINUTE = 10
HOUR = 60 * MINUTE
DAY = 24 * HOUR
SHOPS = {path.stem: path for path in sorted((Path(__file__).parents[2] / "shops").glob("*.toml"))}


@dataclass(frozen=True, slots=True)
class Built:
    """A plan with what it is judged by."""

    plan: Plan
    goal: Goal
    shop: Shop

    def faults(self) -> tuple[Fault, ...]:
        """What the rehearsal finds wrong with its times."""
        return times(self.plan, self.goal, self.shop)

    def reasons(self) -> set[str]:
        """The names of the reasons, once each."""
        return {fault.reason.name for fault in self.faults()}

    def with_step(self, which: int, /, **changes: Value) -> "Built":
        """The same with fields of one step changed."""
        steps = tuple(replace(s, **changes) if s.number == which else s for s in self.plan.steps)
        return replace(self, plan=replace(self.plan, steps=steps))

    def with_operation(self, name: str, /, **changes: Value) -> "Built":
        """The same with fields of one operation changed."""
        step = self.plan.step_of(name)
        rows = tuple(replace(op, **changes) if op.id == name else op for op in step.operations)
        return self.with_step(step.number, operations=rows)

    def with_minutes(self, number: int, **changes: int) -> "Built":
        """The same with minutes of one step changed."""
        return self.with_step(number, minutes=replace(self.step(number).minutes, **changes))

    def moved(self, number: int, start: int, end: int) -> "Built":
        """The same with the beginning and end of a step moved by tenths of a minute."""
        step = self.step(number)
        return self.with_step(
            number,
            starts=self.moment(step.starts.tenths + start),
            ends=self.moment(step.ends.tenths + end),
        )

    def moment(self, tenths: int) -> Moment:
        """A moment with the day and clock that belong to it."""
        day, of_day = divmod(self.shop.opens + tenths, DAY)
        return Moment(tenths, day + 1, f"{of_day // HOUR:02}:{of_day % HOUR // MINUTE:02}")

    def step(self, number: int) -> Step:
        """The step of that number."""
        return next(step for step in self.plan.steps if step.number == number)

    def operation(self, name: str) -> Operation:
        """The operation of that id."""
        return next(op for op in self.plan.step_of(name).operations if op.id == name)

    def summed(self) -> "Built":
        """The same with totals that follow from the steps as they are now."""
        found, steps = self.plan.totals, self.plan.steps
        walk, changeover, tests, work = (
            sum(getattr(step.minutes, name) for step in steps)
            for name in ("walk", "changeover", "tests", "work")
        )
        setup = walk + changeover + tests
        worked = hours_of(self.shop).worked(max(step.ends.tenths for step in steps))
        totals = replace(
            found,
            walk=walk,
            changeover=changeover,
            tests=tests,
            setup=setup,
            work=work,
            attended=setup + work,
            waiting=worked - setup - work,
            elapsed=max(step.ends.tenths + step.minutes.after for step in steps),
            part_by_part=replace(found.part_by_part, attended=found.part_by_part.setup + work),
        )
        return replace(self, plan=replace(self.plan, totals=totals))

    def with_glue(self, **changes: Value) -> "Built":
        """The same with the shop's usual glue changed, which the plan then still contradicts."""
        name = self.shop.default_glue
        glues = {**self.shop.glues, name: replace(self.shop.glues[name], **changes)}
        return replace(self, shop=replace(self.shop, glues=glues))

    def with_lag(self, until: str, lag: int) -> "Built":
        """The same in a shop whose usual glue needs another lag, and the plan prints it."""
        glue = self.shop.glues[self.shop.default_glue]
        built = self.with_glue(lags={**glue.lags, until: lag})
        for step in self.plan.steps:
            for operation in step.operations:
                said = operation.glue_up
                if said is not None:
                    lags = tuple(
                        Lag(each.until, lag if each.until == until else each.tenths)
                        for each in said.lags
                    )
                    built = built.with_operation(operation.id, glue_up=replace(said, lags=lags))
        return built

    def with_product(self, name: str, **changes: Value) -> "Built":
        """The same in a shop where a finish has other properties."""
        finishes = {**self.shop.finishes, name: replace(self.shop.finishes[name], **changes)}
        return replace(self, shop=replace(self.shop, finishes=finishes))

    def with_clamps(self, change: Callable[[int], int]) -> "Built":
        """The same in a shop with another number of each clamp."""
        clamps = tuple(replace(each, count=change(each.count)) for each in self.shop.clamps)
        return replace(self, shop=replace(self.shop, clamps=clamps))


@cache
def built(name: str, shop: str | None = None) -> Built:
    """The plan of an example or test piece, in the shipped shop or one of tests/shops.

    No boards are laid out, so that what is tested here does not hang on how they are cut.
    """
    path = SHOPS[shop] if shop else None
    return built_from(without_boards(text_of(name)), path)


@cache
def built_from(text: str, shop: Path | None = None) -> Built:
    """The plan of notes, in the shipped shop or one of a file."""
    checked, plan, findings = planned(text, shop)
    assert plan is not None, findings
    assert checked.model is not None
    assert checked.shop is not None
    return Built(plan, goal_of(checked.model), checked.shop)
