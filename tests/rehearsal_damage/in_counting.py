"""Damages of what is done, how often and with what: left out, done twice, wrongly told."""

import random
from collections.abc import Callable, Mapping
from dataclasses import replace
from fractions import Fraction

from tests.rehearsal_damage.kind import Kind, kind
from tests.rehearsal_damage.places import (
    deeds,
    joint_cuts,
    shuffled,
    with_operation,
)
from tests.rehearsal_damage.retelling import key_of, retold
from tests.rehearsal_damage.wanted import held_back, part_of

from dryfit.plan.operation import Operation
from dryfit.plan.plan import Plan
from dryfit.rehearsal.fault import Reason
from dryfit.rehearsal.goal import Goal

MILLING = frozenset({"rough length", "rip", "face", "edge", "thickness", "width", "length"})


def left_out(plan: Plan, chance: random.Random, fits: Callable[[Operation], bool]) -> Plan | None:
    """The plan without one of the operations that fit."""
    rows = [op for _, _, op in deeds(plan) if fits(op)]
    for op in shuffled(chance, rows):
        return retold(plan, with_operation(plan.steps, op.id, None))
    return None


def cut_left_out(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
    """The wood stays where the mate has to stand."""
    needed = {
        cut.operation.id
        for cut in joint_cuts(plan, goal)
        if any(_reaches(cut.mark.ranges, common) for common, _ in held_back(goal, cut.copy))
    }
    return left_out(plan, chance, lambda op: op.id in needed)


def _reaches(
    one: tuple[tuple[Fraction, Fraction], ...], other: tuple[tuple[Fraction, Fraction], ...]
) -> bool:
    return all(max(a, c) < min(b, d) for (a, b), (c, d) in zip(one, other, strict=True))


def milling_left_out(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
    def fits(op: Operation) -> bool:
        sized = op.kind in {"thickness", "width", "length"}
        # A stave that is not ripped only makes its panel wider for a while.
        return sized and all(part_of(goal, work.part) is not None for work in op.work)

    return left_out(plan, chance, fits)


def glue_up_left_out(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    return left_out(plan, chance, lambda op: op.kind == "glue up")


def dry_fit_left_out(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    return left_out(plan, chance, lambda op: op.kind == "dry fit")


def fitting_left_out(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    return left_out(plan, chance, lambda op: op.kind == "fit")


def doubled(plan: Plan, chance: random.Random, fits: Callable[[Operation], bool]) -> Plan | None:
    """The plan with one of the operations that fit done a second time right afterwards."""
    rows = [(step, op) for _, step, op in deeds(plan) if fits(op)]
    for step, op in shuffled(chance, rows):
        if op.after_tenths:
            again = replace(step, operations=(op,))
            steps = list(plan.steps)
            steps.insert(next(n for n, s in enumerate(steps) if s is step) + 1, again)
            return retold(plan, steps, moved=frozenset({key_of(again)}))
        twice = tuple(
            each for one in step.operations for each in ((one, one) if one is op else (one,))
        )
        steps = [replace(s, operations=twice) if s is step else s for s in plan.steps]
        return retold(plan, steps)
    return None


def cut_done_twice(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
    cuts = {cut.operation.id for cut in joint_cuts(plan, goal)}
    return doubled(plan, chance, lambda op: op.id in cuts)


def length_cut_twice(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    return doubled(plan, chance, lambda op: op.kind in {"rough length", "length"})


def glued_or_coated_twice(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    return doubled(plan, chance, lambda op: op.kind in {"glue up", "coat"})


def copy_dropped(
    plan: Plan, chance: random.Random, fits: Callable[[Operation], bool]
) -> Plan | None:
    """The plan with one copy left out of one work row."""
    rows = [(op, work) for _, _, op in deeds(plan) if fits(op) for work in op.work]
    for op, row in shuffled(chance, rows):
        if len(row.copies) < 2:
            continue
        gone = chance.choice(row.copies)
        copies = tuple(name for name in row.copies if name != gone)
        work = tuple(replace(w, copies=copies) if w is row else w for w in op.work)
        return retold(plan, with_operation(plan.steps, op.id, replace(op, work=work)))
    return None


def copy_not_cut(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
    cuts = {cut.operation.id for cut in joint_cuts(plan, goal)}
    return copy_dropped(plan, chance, lambda op: op.id in cuts)


def copy_not_milled(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
    def fits(op: Operation) -> bool:
        sized = op.kind in {"thickness", "width", "length"}
        # A stave that is not ripped only makes its panel wider for a while.
        return sized and all(part_of(goal, work.part) is not None for work in op.work)

    return copy_dropped(plan, chance, fits)


def copy_without_blank(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    # Out of a board that is laid out a blank comes by its cuts, whatever the row of copies says.
    return copy_dropped(plan, chance, lambda op: op.kind == "rough length" and not op.board_cuts)


def copy_left_over(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """One more copy is made than the piece has."""
    rows = [op for _, _, op in deeds(plan) if op.kind == "rough length" and op.work]
    for op in shuffled(chance, rows):
        (first, *rest) = op.work
        more = replace(first, copies=(*first.copies, f"{op.part} {99}"))
        new = replace(op, work=(more, *rest))
        return retold(plan, with_operation(plan.steps, op.id, new))
    return None


def total_wrong(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    names = ("changeovers", "changeover", "walk", "tests", "setup", "work", "attended")
    name = chance.choice((*names, "waiting", "elapsed"))
    wrong: Mapping[str, int] = {name: getattr(plan.totals, name) + chance.choice((-1, 1, 10))}
    return replace(plan, totals=replace(plan.totals, **wrong))  # type: ignore[arg-type]


def misnumbered(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """A step carries the number, or the visit, of another."""
    at = chance.randrange(1, len(plan.steps))
    rows = list(plan.steps)
    name = chance.choice(("number", "visit"))
    wrong: Mapping[str, int] = {name: getattr(rows[at], name) + 1}
    rows[at] = replace(rows[at], **wrong)  # type: ignore[arg-type]
    return replace(plan, steps=tuple(rows))


_GONE = (Reason.COUNT, Reason.ORDER)
KINDS: tuple[Kind, ...] = (
    kind(cut_left_out, Reason.FIT, Reason.CUT, Reason.COUNT),
    kind(milling_left_out, Reason.SIZE, Reason.REFERENCE, Reason.COUNT),
    kind(glue_up_left_out, *_GONE),
    kind(dry_fit_left_out, *_GONE),
    kind(fitting_left_out, Reason.COUNT),
    kind(cut_done_twice, Reason.CUT, Reason.COUNT),
    kind(length_cut_twice, Reason.CUT, Reason.COUNT),
    kind(glued_or_coated_twice, Reason.COUNT, Reason.ORDER, Reason.SURFACE),
    kind(copy_not_cut, Reason.FIT, Reason.CUT, Reason.COUNT),
    kind(copy_not_milled, Reason.SIZE, Reason.REFERENCE, Reason.COUNT),
    kind(copy_without_blank, Reason.COUNT, Reason.ORDER),
    kind(copy_left_over, Reason.COUNT),
    kind(total_wrong, Reason.SUMS),
    kind(misnumbered, Reason.SUMS),
)
