"""Why each step stands where it stands, from the problem that the order answers.

Worked out only for what is printed.  A price is that of one move, all other steps in their order:
the engine decodes the order that comes of it.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from dryfit.operations import visit_words
from dryfit.order import Entry, Laid, Move, Precedence, Problem, Schedule, laid, room
from dryfit.order import schedule_of as laid_schedule
from dryfit.plan.favour import WORTH
from dryfit.plan.operation import Operation, WorkList
from dryfit.plan.plan import Plan, Step
from dryfit.plan.reasons import Bar, Elsewhere, OneVisit, Shared, StepReasons
from dryfit.planning.problem_of import problem_of
from dryfit.shop.shop import Shop

WALK = "walk"


@dataclass(frozen=True, slots=True)
class Reasoned:
    """A plan beside the problem that it answers, its steps as the blocks of the order."""

    plan: Plan
    work: WorkList
    problem: Problem
    row: Laid
    schedule: Schedule
    step_of: Mapping[str, int]

    @property
    def worth(self) -> int:
        """Minutes of waiting that the plan takes for a minute of setting up."""
        return WORTH[self.plan.favour]


def reasoned(plan: Plan, work: WorkList, shop: Shop) -> Reasoned:
    """Return what the reasons of a plan's steps are read from."""
    problem = problem_of(work, shop)
    row = laid(problem, tuple(tuple(op.id for op in step.operations) for step in plan.steps))
    step_of = {op.id: step.number for step in plan.steps for op in step.operations}
    return Reasoned(plan, work, problem, row, laid_schedule(row), step_of)


def reasons_of(step: Step, known: Reasoned) -> StepReasons:
    """Return why a step stands where it stands, and what it costs to move it alone."""
    at = step.number - 1
    found = room(known.row, at)
    earlier = min(found.earlier, key=lambda move: move.price(known.worth), default=None)
    later = min(found.later, key=lambda move: move.price(known.worth), default=None)
    return StepReasons(
        step=step.number,
        before=_shared_before(step, known.plan),
        after=_shared_after(step, known.plan),
        held=_bar(found.after, known, earlier=True),
        until=_bar(found.until, known, earlier=False),
        visit=_one_visit(step, known),
        fills=_fills(step, known, found.later),
        ties_before=tuple(sorted(move.before + 1 for move in found.earlier if _same(move))),
        ties_after=tuple(sorted(move.before for move in found.later if _same(move))),
        earlier=None if earlier is None else _elsewhere(earlier, at, known),
        later=None if later is None else _elsewhere(later, at, known),
    )


def _same(move: Move) -> bool:
    return move.setup == move.waiting == move.elapsed == 0


def _needed(step: Step) -> set[str]:
    return {setting.axis for operation in step.operations for setting in operation.settings}


def _shared_before(step: Step, plan: Plan) -> Shared | None:
    """Return what the step finds set as it needs it, from the last step at its station."""
    earlier = [each for each in plan.steps[: step.number - 1] if each.station == step.station]
    return _kept(step, step, earlier[-1]) if earlier else None


def _shared_after(step: Step, plan: Plan) -> Shared | None:
    """Return what the next step at its station needs as this one leaves it."""
    later = [each for each in plan.steps[step.number :] if each.station == step.station]
    return _kept(later[0], step, later[0]) if later else None


def _kept(second: Step, step: Step, other: Step) -> Shared | None:
    """Return the axes that the `second` of two steps needs and does not change."""
    needed = _needed(step) & _needed(other)
    axes = tuple(
        axis for axis, _ in second.settings if axis in needed and axis not in second.changed
    )
    return Shared(other.number, axes) if axes else None


def _bar(rules: Iterable[Precedence], known: Reasoned, *, earlier: bool) -> Bar | None:
    """Return the step that these precedences lead from, or to, with all its reasons."""
    rows = tuple(rules)
    if not rows:
        return None
    operation = rows[0].before if earlier else rows[0].after
    reasons = dict.fromkeys(_reason(rule, known) for rule in rows)
    return Bar(known.step_of[operation], operation, tuple(reasons))


def _reason(rule: Precedence, known: Reasoned) -> str:
    """Return the reason of a rule; where a whole visit has to wait, that of the cut that does."""
    rules = [each for each in known.work.rules if each.before == rule.before]
    if any(each.after == rule.after for each in rules):
        return rule.reason
    group = _group(rule.after, known)
    names = {operation.id for operation in group}
    own = next((each for each in rules if each.after in names), None)
    if own is None:
        return visit_words(group)
    return f"{own.reason} (so for {own.after}, in one visit with it)"


def _group(name: str, known: Reasoned) -> tuple[Operation, ...]:
    operations = {operation.id: operation for operation in known.work.operations}
    group = operations[name].together
    return tuple(each for each in operations.values() if group and each.together == group)


def _one_visit(step: Step, known: Reasoned) -> OneVisit | None:
    """Return the other steps with cuts that belong into one visit with those of this one."""
    for operation in step.operations:
        group = _group(operation.id, known)
        numbers = {known.step_of[each.id] for each in group} - {step.number}
        if numbers:
            return OneVisit(tuple(sorted(numbers)), visit_words(group))
    return None


def _fills(step: Step, known: Reasoned, later: Iterable[Move]) -> int | None:
    """Return the later step whose wait this one fills: done right after it, it costs time."""
    lost = {move.before: move.setup + move.waiting for move in later}
    for other in known.plan.steps[step.number :]:
        wait = other.release
        if wait is None or wait.step >= step.number or wait.opens != other.starts:
            continue
        if lost.get(other.number, 0) > 0:
            return other.number
    return None


def _elsewhere(move: Move, at: int, known: Reasoned) -> Elsewhere:
    return Elsewhere(
        step=move.before + 1 if move.before < at else move.before,
        side="before" if move.before < at else "after",
        setup=move.setup,
        waiting=move.waiting,
        elapsed=move.elapsed,
        changes=_set_oftener(known, move),
    )


def _set_oftener(known: Reasoned, move: Move) -> tuple[str, ...]:
    """Return the axes that the moved order changes oftener than the plan, and its further walks."""
    after = _changes(laid_schedule(known.row, move).entries)
    more = after - _changes(known.schedule.entries)
    axes = dict.fromkeys(axis for _, axis in more if axis != WALK)
    return (*axes, *[WALK] * more["", WALK])


def _changes(entries: Iterable[Entry]) -> Counter[tuple[str, str]]:
    found: Counter[tuple[str, str]] = Counter()
    for entry in entries:
        found.update((entry.station, axis) for axis in entry.changed)
        found.update({("", WALK): int(entry.walk > 0)})
        found.update({("", "test cuts"): int(entry.trial > 0)})
    return found
