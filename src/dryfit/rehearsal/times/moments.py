"""One pair of hands: steps one after the other, as long as their minutes, in working hours."""

from __future__ import annotations

from collections.abc import Iterator

from dryfit.plan.plan import Moment, Plan, Step
from dryfit.rehearsal.fault import Fault, Reason
from dryfit.rehearsal.times.deeds import Deed
from dryfit.rehearsal.times.working_hours import Hours, moment_in_words, spoken

UNBROKEN = frozenset({"glue up", "coat", "measure"})
"""Glue and finish set while they are left lying, a figure is lost; the rest runs on next morning
(TRADE C2.5, F5)."""


def moments(plan: Plan, deeds: tuple[Deed, ...], hours: Hours) -> Iterator[Fault]:
    """Yield steps whose moments agree neither with one another nor with their minutes."""
    free = 0
    for step in plan.steps:
        for moment in _all_moments(step):
            yield from _agrees(step, moment, hours)
        for moment in (step.starts, step.ends):
            if not hours.is_open(moment.tenths):
                yield _fault(
                    step,
                    f"begins or ends on day {moment.day}, {moment.clock}, when the shop is shut",
                    "beginning and end while the shop is open",
                )
        if step.starts.tenths < free:
            yield _fault(
                step,
                f"begins on day {step.starts.day}, {step.starts.clock}, "
                "before the step before has ended",
                f"not before {moment_in_words(free, hours)}",
            )
        yield from _long_enough(step, free, hours)
        free = max(free, step.ends.tenths)
    for deed in deeds:
        if deed.kind in UNBROKEN and deed.ends - deed.begins != deed.operation.tenths:
            yield _fault(
                deed.step,
                f"{deed.operation.id} is broken off by the end of the day",
                f"{spoken(deed.operation.tenths)} without a break in one day",
                deed.operation.id,
            )


def _all_moments(step: Step) -> tuple[Moment, ...]:
    released = () if step.release is None else (step.release.over, step.release.opens)
    return (step.starts, step.ends, *released)


def _agrees(step: Step, moment: Moment, hours: Hours) -> Iterator[Fault]:
    right = hours.day_and_clock(moment.tenths)
    if (moment.day, moment.clock) != right:
        yield _fault(
            step,
            f"prints day {moment.day}, {moment.clock} for {spoken(moment.tenths)} "
            "after the start of day 1",
            f"day {right[0]}, {right[1]}",
        )


def _long_enough(step: Step, free: int, hours: Hours) -> Iterator[Fault]:
    """Yield a step that is shorter or longer than its minutes.

    Where the maker waits for glue, the machine is set up before the step begins (DEVELOPERS,
    Decisions); then set-up and work have to fit between the step before and the end.
    """
    minutes = step.minutes
    whole = minutes.walk + minutes.changeover + minutes.tests + minutes.work
    long = hours.between(step.starts.tenths, step.ends.tenths)
    room = hours.between(free, step.ends.tenths)
    if long < minutes.work or room < whole or long > whole:
        yield _fault(
            step,
            f"lasts {spoken(max(0, long))} of working time",
            f"{spoken(whole)}, of which {spoken(minutes.work)} are work",
        )


def _fault(step: Step, message: str, needed: str, operation: str | None = None) -> Fault:
    words = message if operation else f"step {step.number} {message}"
    return Fault(Reason.HOURS, words, needed, step.number, operation)
