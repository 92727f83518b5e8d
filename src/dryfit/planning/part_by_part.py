"""The same work part after part, against which the saving is shown (CONTRACTS, steps)."""

from __future__ import annotations

from collections import Counter

from dryfit.order import Schedule, evaluate
from dryfit.order.problem import Problem
from dryfit.plan.operation import WorkList
from dryfit.plan.plan import PartByPart
from dryfit.planning.moments import moment
from dryfit.planning.problem_of import without_visits
from dryfit.shop.shop import Shop


def part_by_part(problem: Problem, work: WorkList, shop: Shop) -> PartByPart:
    """Return the figures of the order that finishes each part as far as the rules allow.

    Parts in the order of the notes; the same methods and the same minutes.
    """
    schedule, totals = evaluate(without_visits(problem), order_part_by_part(work))
    return PartByPart(
        changeovers=totals.changeovers,
        changeover=totals.changeover,
        setup=totals.setup,
        attended=totals.attended,
        walk=totals.walk,
        tests=totals.trial,
        waiting=totals.waiting,
        ends=moment(schedule.entries[-1].end, shop) if schedule.entries else None,
        done=moment(totals.elapsed, shop),
        by_axis=_by_axis(schedule, shop),
    )


def _by_axis(schedule: Schedule, shop: Shop) -> tuple[tuple[str, str, int], ...]:
    counts = Counter((entry.station, axis) for entry in schedule.entries for axis in entry.changed)
    return tuple(
        (name, axis.name, counts[name, axis.name])
        for name, station in shop.stations.items()
        for axis in station.axes
        if counts[name, axis.name]
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
