"""Numbers and totals that follow from the steps (CONTRACTS, steps)."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from dryfit.plan.plan import Plan, Step, Totals
from dryfit.rehearsal.fault import Fault, Reason
from dryfit.rehearsal.goal import Goal
from dryfit.rehearsal.times.deeds import Deed
from dryfit.rehearsal.times.glue_lags import OUT_OF_CLAMPS, lags_after
from dryfit.rehearsal.times.working_hours import Hours, spoken
from dryfit.shop.shop import Shop

ALONE = frozenset({"glue up", "coat"})
"""A step of its own, so that its wait counts from its own end (DEVELOPERS, Data contracts)."""
A_TENTH = Fraction(1, 10)


def numbers(plan: Plan) -> Iterator[Fault]:
    """Yield steps and visits that are not counted one by one, and glue-ups with other work."""
    visit, station = 0, None
    for number, step in enumerate(plan.steps, start=1):
        visit += step.station != station
        station = step.station
        if (step.number, step.visit) != (number, visit):
            yield _fault(
                f"step {step.number} of visit {step.visit} stands where step {number} of visit "
                f"{visit} is",
                f"step {number}, visit {visit}",
                step,
            )
        if len(step.operations) != 1 and ALONE & {each.kind for each in step.operations}:
            yield _fault(
                f"step {step.number} has {len(step.operations)} operations",
                "a glue-up or a coat alone in its step, so that its wait counts from its end",
                step,
            )


def meanwhile(plan: Plan, deeds: tuple[Deed, ...], goal: Goal, shop: Shop) -> Iterator[Fault]:
    """Yield glue-ups that name other steps for the wait than those that begin in it."""
    for deed in deeds:
        if deed.kind != "glue up":
            continue
        off = deed.ends + lags_after(deed.operation, goal, shop)[OUT_OF_CLAMPS]
        begun = tuple(
            step.number
            for step in plan.steps
            if step.number > deed.step.number and step.starts.tenths < off
        )
        if deed.step.meanwhile != begun:
            yield _fault(
                f"{deed.operation.id}: steps {_listed(deed.step.meanwhile)} lie in its cure",
                f"steps {_listed(begun)}",
                deed.step,
            )


def totals(plan: Plan, hours: Hours) -> Iterator[Fault]:
    """Yield totals that are not what the steps add up to."""
    for name, said, right in (*_sums(plan, hours), *_shares(plan.totals)):
        if said != right:
            yield _fault(f"the total of {name} is {spoken(said)}", f"{spoken(right)}, by the steps")
    said_count, count = plan.totals.changeovers, sum(len(step.changed) for step in plan.steps)
    if said_count != count:
        yield _fault(f"{said_count} changes of settings are counted", f"{count}, by the steps")
    yield from _best_possible(plan.totals)


Sum = tuple[str, int, int]


def _sums(plan: Plan, hours: Hours) -> tuple[Sum, ...]:
    found, minutes = plan.totals, [step.minutes for step in plan.steps]
    walk = sum(each.walk for each in minutes)
    changeover = sum(each.changeover for each in minutes)
    tests = sum(each.tests for each in minutes)
    work = sum(each.work for each in minutes)
    setup = walk + changeover + tests
    last = max((step.ends.tenths for step in plan.steps), default=0)
    dry = max((step.ends.tenths + step.minutes.after for step in plan.steps), default=0)
    return (
        ("walks", found.walk, walk),
        ("changes of settings", found.changeover, changeover),
        ("test cuts", found.tests, tests),
        ("setting up", found.setup, setup),
        ("work", found.work, work),
        ("work and setting up", found.attended, setup + work),
        ("waiting", found.waiting, hours.between(0, last) - setup - work),
        ("the whole time", found.elapsed, dry),
    )


def _shares(found: Totals) -> tuple[Sum, ...]:
    """Return what must hold inside the figures for part by part: the same work, and sums."""
    other = found.part_by_part
    counted = sum(count for _, _, count in other.by_axis)
    work = ("work, part by part", other.attended - other.setup, found.work)
    return (work, ("changes, part by part", counted, other.changeovers)) if counted else (work,)


def _best_possible(found: Totals) -> Iterator[Fault]:
    over = found.changeover - found.fewest
    known = found.changeover if found.fewest_found is None else found.fewest_found
    if over < 0 or found.proven != (over == 0) or not found.fewest <= known <= found.changeover:
        yield _fault(
            f"{spoken(found.changeover)} of changes are called "
            f"{'proved' if found.proven else 'not proved'} against at least "
            f"{spoken(found.fewest)}",
            "a bound no higher than the changes, and proved just where both are the same",
        )
    exact = Fraction(100 * over, found.fewest or 1)
    if abs(found.gap_percent - exact) > A_TENTH / 2:
        yield _fault(
            f"the changes are called {float(found.gap_percent):g} % above the best possible",
            f"at most {float(exact):.1f} %",
        )


def _listed(numbers: tuple[int, ...]) -> str:
    return ", ".join(str(number) for number in numbers) or "none"


def _fault(message: str, needed: str, step: Step | None = None) -> Fault:
    return Fault(Reason.SUMS, message, needed, step.number if step is not None else None)
