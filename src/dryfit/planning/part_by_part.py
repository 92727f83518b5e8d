"""The same work part after part, against which the saving is shown (CONTRACTS, steps)."""

from __future__ import annotations

from dryfit.order import evaluate
from dryfit.order.problem import Problem
from dryfit.plan.operation import WorkList
from dryfit.plan.plan import PartByPart
from dryfit.planning.problem_of import without_visits


def part_by_part(problem: Problem, work: WorkList) -> PartByPart:
    """Return the figures of the order that finishes each part as far as the rules allow.

    Parts in the order of the notes; the same methods and the same minutes.
    """
    _, totals = evaluate(without_visits(problem), order_part_by_part(work))
    return PartByPart(
        changeovers=totals.changeovers,
        changeover=totals.changeover,
        setup=totals.setup,
        attended=totals.attended,
    )


def order_part_by_part(work: WorkList) -> tuple[str, ...]:
    """Return every operation of a part that precedence allows, then those of the next part."""
    before: dict[str, set[str]] = {operation.id: set() for operation in work.operations}
    for rule in work.rules:
        before[rule.after].add(rule.before)
    parts = tuple(dict.fromkeys(operation.part for operation in work.operations))
    of = {part: [op.id for op in work.operations if op.part == part] for part in parts}
    done: dict[str, None] = {}
    while len(done) < len(work.operations):
        for part in parts:
            while ready := next(
                (name for name in of[part] if name not in done and before[name] <= done.keys()),
                None,
            ):
                done[ready] = None
    return tuple(done)
