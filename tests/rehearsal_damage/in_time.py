"""Damages of moments, clamps and air: too early, two at once, outside the hours."""

import random
from collections.abc import Iterator, Sequence
from dataclasses import replace

from tests.rehearsal_damage.hours import DAY, OPEN, WEEK, in_one_day, moment, worked
from tests.rehearsal_damage.kind import Kind, kind
from tests.rehearsal_damage.places import copies_of, deeds, shuffled
from tests.rehearsal_damage.retelling import setup_of, totals_of, with_meanwhile
from tests.rehearsal_damage.wanted import members

from dryfit.plan.operation import Operation
from dryfit.plan.plan import Plan, Step
from dryfit.rehearsal.fault import Reason
from dryfit.rehearsal.goal import Goal

LAG_FOR = {
    "level": "level",
    "sand": "level",
    "flatten": "machine",
    "coat": "finish",
    "glue up": "next stage",
}
"""What a deed on a glued thing has to wait for (TRADE C2.4); other deeds: out of clamps."""


def at_moments(plan: Plan, steps: Sequence[Step]) -> Plan:
    """The plan with these steps and the totals that follow."""
    return replace(plan, steps=with_meanwhile(steps), totals=totals_of(plan.totals, steps))


def earlier(plan: Plan, at: int, before: int, waited_for: str) -> Plan | None:
    """The plan with one step begun at once after the step before, if that is before a moment.

    It says no more that it waits; all other steps stay where they are.
    """
    step = plan.steps[at]
    free = plan.steps[at - 1].ends.tenths if at else 0
    total = setup_of(step) + step.minutes.work
    starts = in_one_day(free, total)
    if starts + total >= min(before, step.starts.tenths) or total > OPEN:
        return None
    rows = list(plan.steps)
    rows[at] = replace(
        step,
        starts=moment(starts),
        ends=moment(starts + total),
        release=None,
        waits_for=tuple(
            replace(wait, lag=0) if wait.operation == waited_for else wait
            for wait in step.waits_for
        ),
    )
    return at_moments(plan, rows)


def _touches(operation: Operation, goal: Goal, glued: str) -> bool:
    """Whether an operation is done with a glued thing or a part of it."""
    inside = members(goal, glued) | {glued}
    names = {*copies_of(operation), operation.id.partition(" / ")[0]}
    return bool(inside & {copy for name in names for copy in (name, *members(goal, name))})


def cure_skipped(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
    """The next deed with a glued thing begins before its glue is hard enough for that deed."""

    def places() -> Iterator[tuple[int, int, str]]:
        for at, step, op in deeds(plan):
            if op.glue_up is None:
                continue
            lags = {lag.until: lag.tenths for lag in op.glue_up.lags}
            subject = op.id.partition(" / ")[0]
            for later, _, other in deeds(plan):
                if later > at and _touches(other, goal, subject):
                    need = lags[LAG_FOR.get(other.kind, "out of clamps")]
                    yield later, step.ends.tenths + need, op.id

    for later, ready, glued in shuffled(chance, places()):
        told = earlier(plan, later, ready, glued)
        if told is not None:
            return told
    return None


def rest_skipped(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """Wood of which much is planed off is planed true without its day on stickers."""
    for at, step, op in shuffled(chance, deeds(plan)):
        for later, _, other in deeds(plan):
            same = op.kind == "rough thickness" and copies_of(op) & copies_of(other)
            if later > at and same and other.kind == "thickness":
                told = earlier(plan, later, step.ends.tenths + op.after_tenths, op.id)
                if told is not None:
                    return told
    return None


def fresh_leaves(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """Leaves that are resawn are planed before they have lain on stickers."""
    for _, step, op in shuffled(chance, deeds(plan)):
        for later, _, other in deeds(plan) if op.kind == "resaw" else ():
            if other.kind == "face" and copies_of(op) & copies_of(other):
                told = earlier(plan, later, step.ends.tenths + op.after_tenths, op.id)
                if told is not None:
                    return told
    return None


def coated_too_early(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """A coat begins before the one under it is dry."""
    for at, step, op in shuffled(chance, deeds(plan)):
        for later, _, other in deeds(plan):
            again = other.kind == op.kind == "coat" and copies_of(other) & copies_of(op)
            if later > at and again and other.id.partition(" / ")[0] == op.id.partition(" / ")[0]:
                ready = step.ends.tenths + op.after_tenths
                told = earlier(plan, later, ready, op.id)
                if told is not None:
                    return told
    return None


def fitted_too_early(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """A part is fitted while its own last coat is wet."""
    for at, step, op in shuffled(chance, deeds(plan)):
        for later, _, other in deeds(plan):
            same = op.kind == "coat" and other.kind == "fit" and copies_of(op) & copies_of(other)
            if later > at and same:
                told = earlier(plan, later, step.ends.tenths + op.after_tenths, op.id)
                if told is not None:
                    return told
    return None


def outside_the_hours(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """A step is done at night or on a day off; what follows is done a fortnight later."""
    at = chance.randrange(len(plan.steps))
    free = plan.steps[at - 1].ends.tenths if at else 0
    step = plan.steps[at]
    week = (free // WEEK + 1) * WEEK
    starts = week + chance.choice((OPEN + 600, 5 * DAY + 600, 6 * DAY + 1200))
    rows = list(plan.steps)
    rows[at] = replace(
        step,
        starts=moment(starts),
        ends=moment(starts + min(setup_of(step) + step.minutes.work, 4000)),
    )
    for later in range(at + 1, len(rows)):
        rows[later] = _weeks_later(rows[later], 2)
        if rows[later].starts.tenths < rows[at].ends.tenths:
            return None
    return at_moments(plan, rows)


def _weeks_later(step: Step, weeks: int) -> Step:
    return replace(
        step,
        starts=moment(step.starts.tenths + weeks * WEEK),
        ends=moment(step.ends.tenths + weeks * WEEK),
    )


def two_steps_at_once(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """A step begins before the one before has ended, and there is one maker."""
    for at in shuffled(chance, range(1, len(plan.steps))):
        before, step = plan.steps[at - 1], plan.steps[at]
        total = setup_of(step) + step.minutes.work
        if any(wait.lag for wait in step.waits_for) or any(
            op.after_tenths for op in before.operations
        ):
            continue  # Too early for a wait as well: that is another damage.
        back = min(before.minutes.work, total, 50)
        starts = before.ends.tenths - back
        if back < 10 or starts % DAY + total > OPEN or starts // DAY != before.starts.day - 1:
            continue
        rows = list(plan.steps)
        rows[at] = replace(step, starts=moment(starts), ends=moment(starts + total))
        return at_moments(plan, rows)
    return None


def too_little_time(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """A step ends before its minutes are over."""
    for at in shuffled(chance, range(len(plan.steps))):
        step = plan.steps[at]
        less = step.minutes.work - 10
        if less < 10 or step.starts.day != step.ends.day:
            continue
        rows = list(plan.steps)
        rows[at] = replace(step, ends=moment(step.ends.tenths - less))
        return at_moments(plan, rows)
    return None


def glued_over_night(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """A glue-up or a coat begins just before the evening and ends in the morning."""
    for at, step, op in shuffled(chance, deeds(plan)):
        if op.kind not in {"glue up", "coat"} or step.minutes.work < 20:
            continue
        free = plan.steps[at - 1].ends.tenths if at else 0
        evening = (free // WEEK + 1) * WEEK + OPEN
        starts = evening - setup_of(step) - 10
        rows = list(plan.steps)
        ends = worked(starts, setup_of(step) + step.minutes.work)
        rows[at] = replace(step, starts=moment(starts), ends=moment(ends))
        rows[at + 1 :] = [_weeks_later(each, 3) for each in rows[at + 1 :]]
        return at_moments(plan, rows)
    return None


KINDS: tuple[Kind, ...] = (
    kind(cure_skipped, Reason.WAIT),
    kind(rest_skipped, Reason.WAIT),
    kind(fresh_leaves, Reason.WAIT),
    kind(coated_too_early, Reason.WAIT),
    kind(fitted_too_early, Reason.WAIT),
    kind(outside_the_hours, Reason.HOURS),
    kind(two_steps_at_once, Reason.HOURS),
    kind(too_little_time, Reason.HOURS),
    kind(glued_over_night, Reason.HOURS),
)
