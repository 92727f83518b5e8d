"""When a step may begin: the cure, clamps, wet coat or evening that holds it longest.

Of several cures the one counts that is over last; the others are over by then (TRADE C2.4, C3.3).
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from dryfit.order.hours import Hours
from dryfit.plan.operation import Held, Operation, WorkList
from dryfit.plan.plan import Release, Step
from dryfit.planning.dust import WHY_DUST, makes_dust, wet_for
from dryfit.planning.moments import moment
from dryfit.planning.places import WHY_PLACES, counted
from dryfit.shop.shop import Shop

WHY_CLAMPS = "the clamps are in use until then"
WHY_EVENING = "it cannot be broken off, and does not fit into what is left of the day"


@dataclass(frozen=True, slots=True)
class _Until:
    """The clock tenths at which a wait is over, and what it is."""

    at: int
    step: int
    operation: str
    reason: str
    lag: int


def with_releases(
    steps: tuple[Step, ...], work: WorkList, hours: Hours, shop: Shop
) -> tuple[Step, ...]:
    """Return the steps, each with what it has to wait for until the latest moment, if anything."""
    done = {operation.id: step for step in steps for operation in step.operations}
    rows: list[Step] = []
    for before, step in zip((None, *steps), steps, strict=False):
        waits = [*_cures(step, done, work)]
        idle_from = before.ends.tenths if before is not None else 0
        waits += [row for row in _clamps(step, steps, shop) if row.at > idle_from]
        waits += [row for row in _no_room(step, steps, shop) if row.at > idle_from]
        waits += [row for row in _wet(step, steps, shop) if row.at > idle_from]
        last = max(waits, key=lambda row: (row.at, row.lag), default=None)
        if before is not None and _put_off(before, step, last, hours):
            last = _morning(before, step, last, shop)
        rows.append(step if last is None else replace(step, release=_release(last, hours, shop)))
    return tuple(rows)


def _release(until: _Until, hours: Hours, shop: Shop) -> Release:
    return Release(
        step=until.step,
        operation=until.operation,
        reason=until.reason,
        lag=until.lag,
        over=moment(until.at, shop),
        opens=moment(max(until.at, _open_at(until.at, hours)), shop),
    )


def _open_at(clock: int, hours: Hours) -> int:
    """Return the first moment from a clock time on at which the shop is open."""
    return hours.clock_at_start(hours.work_at(clock))


def _cures(step: Step, done: Mapping[str, Step], work: WorkList) -> Iterator[_Until]:
    own = {operation.id for operation in step.operations}
    for rule in work.rules:
        if rule.lag > 0 and rule.after in own and rule.before not in own:
            earlier = done[rule.before]
            yield _Until(
                earlier.ends.tenths + rule.lag, earlier.number, rule.before, rule.reason, rule.lag
            )


def _clamps(step: Step, steps: tuple[Step, ...], shop: Shop) -> Iterator[_Until]:
    """Yield, for each kind of clamp that is short, the glue-up that gives enough of them back."""
    capacity = {clamp.name: clamp.count for clamp in shop.clamps}
    for wanted in (held for operation in step.operations for held in operation.held):
        in_use = sorted(
            (row for row in _taken(wanted.resource, step, steps)), key=lambda row: row[0].at
        )
        left = capacity.get(wanted.resource, 0) - sum(held.count for _, held in in_use)
        for until, held in in_use:
            if left >= wanted.count:
                break
            left += held.count
            if left >= wanted.count:
                yield until


def _no_room(step: Step, steps: tuple[Step, ...], shop: Shop) -> Iterator[_Until]:
    """Yield what gives its place free for a glue-up or a coat, where places are counted."""
    kind = step.operations[0].kind
    places = counted(kind, shop)
    if places is None:
        return
    lying = [
        _Until(
            earlier.ends.tenths + operation.after_tenths,
            earlier.number,
            operation.id,
            WHY_PLACES[kind],
            operation.after_tenths,
        )
        for earlier in steps[: step.number - 1]
        for operation in earlier.operations
        if operation.kind == kind
    ]
    lying.sort(key=lambda row: row.at)
    if len(lying) >= places:
        yield lying[-places]


def _wet(step: Step, steps: tuple[Step, ...], shop: Shop) -> Iterator[_Until]:
    """Yield, for a step that makes dust, the coats that have to be dry to the touch before."""
    if not any(makes_dust(operation) for operation in step.operations):
        return
    for earlier in steps[: step.number - 1]:
        for operation in earlier.operations:
            wet = wet_for(operation, shop)
            if wet:
                at = earlier.ends.tenths + wet
                yield _Until(at, earlier.number, operation.id, WHY_DUST, wet)


def _taken(resource: str, step: Step, steps: tuple[Step, ...]) -> Iterator[tuple[_Until, Held]]:
    for earlier in steps:
        if earlier.number < step.number:
            for operation, held in _holding(earlier, resource):
                at = earlier.ends.tenths + held.lag
                yield (
                    _Until(at, earlier.number, operation.id, WHY_CLAMPS, held.lag),
                    held,
                )


def _holding(step: Step, resource: str) -> Iterator[tuple[Operation, Held]]:
    for operation in step.operations:
        for held in operation.held:
            if held.resource == resource:
                yield operation, held


def _morning(before: Step, step: Step, last: _Until | None, shop: Shop) -> _Until:
    """Return the wait for the next opening, with the wait before it that left too little time."""
    reason = WHY_EVENING
    if last is not None and last.at > before.ends.tenths:
        over = moment(last.at, shop)
        reason = (
            f"it has to wait until day {over.day}, {over.clock} ({last.reason}); from then on "
            f"{WHY_EVENING}"
        )
    return _Until(step.starts.tenths, before.number, before.operations[-1].id, reason, 0)


def _put_off(before: Step, step: Step, last: _Until | None, hours: Hours) -> bool:
    """Return whether the evening, and no cure, moves an unbroken step to another day."""
    if step.starts.day == before.ends.day or all(op.splittable for op in step.operations):
        return False
    freed = before.ends.tenths if last is None else max(before.ends.tenths, last.at)
    return _open_at(freed, hours) < step.starts.tenths
