"""Damages of lips: left out, glued on late, trimmed early, or of strips that do not cover."""

import random
from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

from tests.rehearsal_damage.in_counting import left_out
from tests.rehearsal_damage.in_order import first_of
from tests.rehearsal_damage.in_time import earlier
from tests.rehearsal_damage.kind import Kind, kind
from tests.rehearsal_damage.places import copies_of, deeds, shuffled, stood_otherwise
from tests.rehearsal_damage.retelling import retold

from dryfit.plan.operation import Operation
from dryfit.plan.plan import Plan
from dryfit.rehearsal.fault import Reason
from dryfit.rehearsal.goal import Goal

ON = ("lip", "band")
SHORT = Fraction(40)
"""More than a strip is longer than what it covers, mm."""


def _what(op: Operation) -> str:
    return op.id.split(" / ")[1]


def lip_left_out(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """The part stays as narrow as its core."""
    return left_out(plan, chance, lambda op: _what(op) in ON)


def trim_left_out(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """The strip stands proud where the mate has to lie."""
    return left_out(plan, chance, lambda op: op.kind == "trim lip")


def lip_after_a_cut(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """What is measured from an edge is cut before that edge is there."""

    def pairs() -> Iterator[tuple[str, str]]:
        rows = [op for _, _, op in deeds(plan)]
        for lip in rows:
            for cut in rows:
                own = copies_of(lip) & copies_of(cut)
                if _what(lip) in ON and own and any(work.features for work in cut.work):
                    yield lip.id, cut.id

    return first_of(plan, chance, pairs())


def trim_before_the_lip(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """There is nothing to trim yet."""

    def pairs() -> Iterator[tuple[str, str]]:
        rows = [op for _, _, op in deeds(plan)]
        for lip in rows:
            for trim in rows:
                if _what(lip) in ON and trim.kind == "trim lip" and lip.part == trim.part:
                    yield lip.id, trim.id

    return first_of(plan, chance, pairs())


def trim_while_swollen(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """The trim begins before the glue may be levelled."""
    for _, step, op in shuffled(chance, deeds(plan)):
        for later, _, trim in deeds(plan):
            own = copies_of(op) & copies_of(trim)
            if op.glue_up is None or trim.kind != "trim lip" or not own:
                continue
            lag = next(each.tenths for each in op.glue_up.lags if each.until == "level")
            told = earlier(plan, later, step.ends.tenths + lag, op.id)
            if told is not None and told.steps[later].starts.tenths >= step.ends.tenths:
                return told
    return None


def strip_too_short(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
    """A strip is cut off at a stop that stands too near."""
    strips = {strip.name for strip in goal.strips}
    rows = [(at, step, op) for at, step, op in deeds(plan) if op.kind == "length"]
    for at, step, op in shuffled(chance, rows):
        setting = dict(step.settings).get("stop")
        at_stop = all(work.hold is not None and work.hold.at_stop for work in op.work)
        if not copies_of(op) & strips or not at_stop or setting is None or setting.far is None:
            continue
        value = setting.value
        assert isinstance(value, Fraction)
        new = replace(setting, value=value - SHORT, far=setting.far - SHORT)
        return retold(plan, stood_otherwise(plan, at, "stop", new))
    return None


HAVE_LIPS = ("lipped_case",)
"""Few pieces have any: the others need not be planned to find that out."""
KINDS: tuple[Kind, ...] = tuple(
    replace(each, pieces=HAVE_LIPS)
    for each in (
        kind(lip_left_out, Reason.COUNT, Reason.ORDER, Reason.SIZE),
        kind(trim_left_out, Reason.ORDER, Reason.SIZE),
        kind(lip_after_a_cut, Reason.ORDER),
        kind(trim_before_the_lip, Reason.ORDER),
        kind(trim_while_swollen, Reason.WAIT),
        kind(strip_too_short, Reason.SIZE, Reason.SETTING),
    )
)
