"""Damages of deeds that come too early, so that they are in vain, or are never done."""

import random
from collections.abc import Iterator
from dataclasses import replace

from tests.rehearsal_damage.in_counting import MILLING, copy_dropped, left_out
from tests.rehearsal_damage.in_order import first_of
from tests.rehearsal_damage.in_reading import set_otherwise
from tests.rehearsal_damage.kind import Kind, kind
from tests.rehearsal_damage.places import alone, copies_of, deeds
from tests.rehearsal_damage.retelling import key_of, retold
from tests.rehearsal_damage.wanted import members

from dryfit.plan.operation import Operation
from dryfit.plan.plan import Plan
from dryfit.plan.setting import Setting
from dryfit.rehearsal.fault import Reason
from dryfit.rehearsal.goal import Goal


def _pairs(plan: Plan, first: frozenset[str], then: str) -> Iterator[tuple[str, str]]:
    """Deeds of the kinds `first`, each with a deed of the kind `then` on a copy of its own."""
    rows = [op for _, _, op in deeds(plan)]
    for late in rows:
        for early in rows:
            if late.kind == then and early.kind in first and copies_of(early) & copies_of(late):
                yield early.id, late.id


def laid_out_before_its_length(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """Marks are drawn from an end that is sawn off."""
    return first_of(plan, chance, _pairs(plan, frozenset({"length", "width"}), "lay out"))


def sanded_before_it_is_milled(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """The planer takes off what was sanded."""
    return first_of(plan, chance, _pairs(plan, MILLING, "sand"))


def eased_before_its_cuts(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """The edges that cuts are measured from are rounded (TRADE D4)."""
    kinds = frozenset({"lap", "mortise", "tenon cheek", "groove", "housing", "hole"})
    return first_of(plan, chance, _pairs(plan, kinds, "ease edges"))


def fitted_before_its_holes(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    return first_of(plan, chance, _pairs(plan, frozenset({"hole", "length"}), "fit"))


def fitted_before_its_base(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
    """The top is fitted, and the base under it is coated or glued afterwards."""

    def pairs() -> Iterator[tuple[str, str]]:
        rows = [op for _, _, op in deeds(plan)]
        for fit in (op for op in rows if op.kind == "fit"):
            own = copies_of(fit)
            hosts = {
                name
                for joint in goal.joints
                if own & {joint.guest, joint.host}
                for name in (joint.guest, joint.host)
                if name not in own
            }
            for other in rows:
                worked = copies_of(other)
                if other.kind == "glue up":
                    worked = members(goal, other.id.partition(" / ")[0])
                if other.kind in {"glue up", "coat"} and worked & hosts and not worked & own:
                    yield other.id, fit.id

    return first_of(plan, chance, pairs())


def buttons_made_last(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """What holds the top is made when the top is on."""
    rows = [op for _, _, op in deeds(plan)]
    tops = [op.id for op in rows if op.kind == "fit" and op.part.endswith("top")]
    pairs = ((op.id, tops[-1]) for op in rows if op.kind == "make" and tops)
    return first_of(plan, chance, pairs)


def never_ripped(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """The board stays as wide as it came: two rails lie in it side by side."""
    return left_out(plan, chance, lambda op: op.kind == "rip")


def inside_not_sanded(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """Nobody gets at the inside faces once the frame is glued (TRADE D3)."""
    return left_out(plan, chance, lambda op: " / sand inside " in op.id)


def inside_of_a_copy_not_sanded(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    return copy_dropped(plan, chance, lambda op: " / sand inside " in op.id)


def copy_not_levelled(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    return copy_dropped(plan, chance, lambda op: op.kind == "level")


def other_paper_on_the_sander(plan: Plan, _goal: Goal, chance: random.Random) -> Plan | None:
    """The step is called by one grit and sets another."""

    def new(setting: Setting) -> Setting:
        return replace(setting, value="180" if setting.value == "120" else "120")

    return set_otherwise(plan, chance, lambda op: op.kind == "sand", "grit", new)


def bare_part_coated(plan: Plan, goal: Goal, chance: random.Random) -> Plan | None:
    """A coat on what the notes leave bare, done last."""
    coated = {name for row in goal.coats for name in row.copies}
    bare = [p for p in goal.parts if not p.made and coated.isdisjoint(c.name for c in p.copies)]
    coats = [(step, op) for _, step, op in deeds(plan) if op.kind == "coat"]
    if not bare or not coats:
        return None
    part, (step, op) = chance.choice(bare), coats[-1]
    row = replace(op.work[0], part=part.name, copies=tuple(c.name for c in part.copies))
    new: Operation = replace(op, id=f"{part.name} / coat 1", part=part.name, work=(row,))
    own = alone(step, new)
    return retold(plan, [*plan.steps, own], moved=frozenset({key_of(own)}))


KINDS: tuple[Kind, ...] = (
    kind(laid_out_before_its_length, Reason.ORDER),
    kind(sanded_before_it_is_milled, Reason.ORDER),
    kind(eased_before_its_cuts, Reason.ORDER),
    kind(fitted_before_its_holes, Reason.ORDER),
    kind(fitted_before_its_base, Reason.ORDER),
    kind(buttons_made_last, Reason.ORDER),
    kind(never_ripped, Reason.ORDER),
    kind(inside_not_sanded, Reason.SURFACE),
    kind(inside_of_a_copy_not_sanded, Reason.SURFACE),
    kind(copy_not_levelled, Reason.SURFACE),
    kind(other_paper_on_the_sander, Reason.SURFACE),
    kind(bare_part_coated, Reason.SURFACE),
)
