"""What a step says it waits for: it is there, it comes earlier, and the wait is kept."""

from __future__ import annotations

from collections.abc import Iterator

from dryfit.plan.plan import Moment, Plan, Release, Step
from dryfit.rehearsal.fault import Fault, Reason
from dryfit.rehearsal.times.deeds import Deed
from dryfit.rehearsal.times.working_hours import Hours, moment_in_words, spoken


def waits(plan: Plan, deeds: tuple[Deed, ...], hours: Hours) -> Iterator[Fault]:
    """Yield the rows of `waits_for` and the releases that are not kept or not true."""
    begins = {deed.step.number: deed.begins for deed in reversed(deeds)}
    earlier: dict[int, Step] = {}
    for step in plan.steps:
        for row in step.waits_for:
            yield from _kept(step, (row.step, row.operation, row.lag), earlier, hours)
        if step.release is not None:
            yield from _released(step, step.release, earlier, begins, hours)
        earlier[step.number] = step


Row = tuple[int, str, int]


def _kept(step: Step, row: Row, earlier: dict[int, Step], hours: Hours) -> Iterator[Fault]:
    number, operation, lag = row
    before = earlier.get(number)
    if before is None or operation not in {each.id for each in before.operations}:
        yield Fault(
            Reason.ORDER,
            f"step {step.number} waits for {operation} of step {number}, which is not done yet",
            f"{operation} in an earlier step {number}",
            step.number,
            operation,
        )
        return
    over = before.ends.tenths + lag
    # Without a lag it is enough that the steps do not overlap, which their moments tell.
    if lag and step.starts.tenths < over:
        yield Fault(
            Reason.WAIT,
            f"step {step.number} does not wait {spoken(lag)} after {operation}",
            f"not before {moment_in_words(over, hours)}",
            step.number,
            operation,
        )


def _released(
    step: Step, release: Release, earlier: dict[int, Step], begins: dict[int, int], hours: Hours
) -> Iterator[Fault]:
    before = earlier.get(release.step)
    if before is None or release.operation not in {each.id for each in before.operations}:
        yield Fault(
            Reason.ORDER,
            f"step {step.number} is held up by {release.operation} of step {release.step}, "
            "which is not done yet",
            f"{release.operation} in an earlier step {release.step}",
            step.number,
            release.operation,
        )
        return
    yield from _over(step, release, before, hours)
    # Setting up may lie in the wait; the work itself may not (clamps, wet coats).
    if begins.get(step.number, step.starts.tenths) < release.opens.tenths:
        yield Fault(
            Reason.WAIT,
            f"step {step.number} is at work before the wait for {release.operation} is over",
            f"not before {moment_in_words(release.opens.tenths, hours)}: {release.reason}",
            step.number,
            release.operation,
        )


def _over(step: Step, release: Release, before: Step, hours: Hours) -> Iterator[Fault]:
    """Yield where the moments of a release do not follow from its step and its lag.

    What is put off to another day is released by that morning, not by a lag.
    """
    over = before.ends.tenths + release.lag
    put_off = release.lag == 0 and release.over.tenths == step.starts.tenths
    if release.over.tenths != over and not put_off:
        yield _moment(step, release, release.over, over, hours)
    opens = hours.opened(release.over.tenths)
    if release.opens.tenths != opens:
        yield _moment(step, release, release.opens, opens, hours)


def _moment(step: Step, release: Release, said: Moment, right: int, hours: Hours) -> Fault:
    return Fault(
        Reason.WAIT,
        f"step {step.number}: the wait for {release.operation} is over on "
        f"day {said.day}, {said.clock}",
        f"{moment_in_words(right, hours)}: {spoken(release.lag)} after step {release.step}",
        step.number,
        release.operation,
    )
