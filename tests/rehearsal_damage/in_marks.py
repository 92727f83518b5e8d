"""Damages of marks: cuts that are made to what is drawn, and it is drawn wrongly.

Recesses, pockets and pegs are cut by hand to their marks; no setting of a machine could be wrong.
"""

import random
from collections.abc import Callable, Iterator
from dataclasses import replace
from fractions import Fraction

from tests.rehearsal_damage.kind import Kind, drawn
from tests.rehearsal_damage.places import shuffled
from tests.rehearsal_damage.wanted import copy_of, sizes

from dryfit.geometry.frame import SURFACES, THICKNESS
from dryfit.plan.plan import Plan
from dryfit.rehearsal.fault import Reason
from dryfit.rehearsal.goal import Goal, Mark, Range, WantedCopy, WantedPart

HAND = "Z"
"""A hand that no plan gives."""


def _changed(goal: Goal, part: WantedPart, new: Callable[[Mark], Mark]) -> Goal | None:
    marks = tuple(map(new, part.marks))
    if marks == part.marks:
        return None
    own = replace(part, marks=marks)
    return replace(goal, parts=tuple(own if each is part else each for each in goal.parts))


def _of_some_part(goal: Goal, chance: random.Random, new: Callable[[Mark], Mark]) -> Goal | None:
    for part in shuffled(chance, goal.parts):
        told = _changed(goal, part, new)
        if told is not None:
            return told
    return None


def _with(mark: Mark, direction: int, limits: Range) -> Mark:
    row = list(mark.ranges)
    row[direction] = limits
    return replace(mark, ranges=(row[0], row[1], row[2]))


def hinge_recess_deeper_in_one(_plan: Plan, goal: Goal, chance: random.Random) -> Goal | None:
    """The door binds: both leaves are let in equally, by half of what the gap leaves (B23)."""

    def deeper(mark: Mark) -> Mark:
        if not mark.id.startswith("hinge recess"):
            return mark
        direction, far = SURFACES[mark.surface]
        low, high = mark.ranges[direction]
        return _with(mark, direction, (low - 1, high) if far else (low, high + 1))

    return _of_some_part(goal, chance, deeper)


def hinge_recess_lower_in_one(_plan: Plan, goal: Goal, chance: random.Random) -> Goal | None:
    def moved(mark: Mark) -> Mark:
        low, high = mark.ranges[0]
        return _with(mark, 0, (low + 2, high + 2)) if mark.id.startswith("hinge recess") else mark

    return _of_some_part(goal, chance, moved)


def pin_rows_from_the_other_end(_plan: Plan, goal: Goal, chance: random.Random) -> Goal | None:
    """One upright is bored with the template at its other end: the shelf lies askew (TRADE B19)."""
    for joint in shuffled(chance, (j for j in goal.joints if j.kind == "shelf pins")):
        found = copy_of(goal, joint.host)
        if found is None:
            continue
        part, copy = found
        length = sizes(copy)[0]
        own = {m.ranges[0] for m in part.marks if _is_pin(m)}
        turned = {(length - high, length - low) for low, high in own}
        if own & turned:
            continue  # Some holes would be as high as before.
        return replace(
            goal, parts=tuple(_bored(p, copy, length) if p is part else p for p in goal.parts)
        )
    return None


def _is_pin(mark: Mark) -> bool:
    return mark.id.startswith("pin hole")


def _bored(part: WantedPart, copy: WantedCopy, length: Fraction) -> WantedPart:
    """The part with that copy as a hand of its own, whose holes are measured from the other end."""
    own = replace(copy, hand=HAND)
    marks: list[Mark] = []
    for mark in part.marks:
        if copy.hand not in mark.hands:
            marks.append(mark)
        elif _is_pin(mark):
            low, high = mark.ranges[0]
            turned = _with(mark, 0, (length - high, length - low))
            marks += (mark, replace(turned, hands=(HAND,)))
        else:
            marks.append(replace(mark, hands=(*mark.hands, HAND)))
    copies = tuple(own if each is copy else each for each in part.copies)
    return replace(part, copies=copies, marks=tuple(marks))


def pocket_bored_too_long(_plan: Plan, goal: Goal, chance: random.Random) -> Goal | None:
    """The bore begins a centimetre farther back than its slant asks (TRADE B16)."""

    def longer(mark: Mark) -> Mark:
        if not mark.id.startswith("pocket hole"):
            return mark
        low, high = mark.ranges[0]
        return _with(mark, 0, (low, high + 10) if low == 0 else (low - 10, high))

    return _of_some_part(goal, chance, longer)


def pocket_bored_out_at_the_face(_plan: Plan, goal: Goal, chance: random.Random) -> Goal | None:
    """The collar is set for thicker stock: the drill comes out at the good face."""

    def through(mark: Mark, part: WantedPart) -> Mark:
        if not mark.id.startswith("pocket hole"):
            return mark
        return _with(mark, THICKNESS, (Fraction(0), sizes(part.copies[0])[THICKNESS]))

    return _each(goal, chance, through)


def _each(
    goal: Goal, chance: random.Random, new: Callable[[Mark, WantedPart], Mark]
) -> Goal | None:
    for part in shuffled(chance, goal.parts):
        marks = tuple(new(mark, part) for mark in part.marks)
        if marks != part.marks:
            own = replace(part, marks=marks)
            return replace(goal, parts=tuple(own if each is part else each for each in goal.parts))
    return None


def _rounded(mark: Mark) -> Mark:
    """A slot as a round hole in its middle."""
    normal = SURFACES[mark.surface][0]
    flat = [each for each in range(3) if each != normal]
    long = max(flat, key=lambda each: mark.ranges[each][1] - mark.ranges[each][0])
    (short,) = set(flat) - {long}
    wide = mark.ranges[short][1] - mark.ranges[short][0]
    middle = sum(mark.ranges[long], Fraction(0)) / 2
    return _with(mark, long, (middle - wide / 2, middle + wide / 2))


def peg_slots_drawn_round(_plan: Plan, goal: Goal, chance: random.Random) -> Goal | None:
    """The outer pegs hold the plank where it has to slide (TRADE G8)."""

    def new(mark: Mark) -> Mark:
        return _rounded(mark) if mark.id.startswith("peg slot") else mark

    return _of_some_part(goal, chance, new)


def screw_slots_drawn_round(_plan: Plan, goal: Goal, _chance: random.Random) -> Goal | None:
    """Screws on both sides hold a solid top across its grain (TRADE B17, B22)."""

    def new(mark: Mark) -> Mark:
        return _rounded(mark) if mark.id.startswith("screw slot") else mark

    whole = goal
    for part in tuple(_far_apart(goal)):
        whole = replace(
            whole,
            parts=tuple(
                replace(p, marks=tuple(map(new, p.marks))) if p.name == part else p
                for p in whole.parts
            ),
        )
    return whole if whole != goal else None


def _far_apart(goal: Goal) -> Iterator[str]:
    """The rails of screws that stand more than 100 mm apart across the grain of what they hold."""
    rows: dict[str, list[tuple[Fraction, str]]] = {}
    for joint in goal.joints:
        guest, host = copy_of(goal, joint.guest), copy_of(goal, joint.host)
        if joint.kind == "slotted screws" and guest is not None and host is not None:
            across = guest[1].frame.axes[1][0]
            middle = (joint.region.low[across] + joint.region.high[across]) / 2
            rows.setdefault(joint.guest, []).append((middle, host[0].name))
    for own in rows.values():
        if max(own)[0] - min(own)[0] > 100:
            yield from dict.fromkeys(name for _, name in own)


KINDS: tuple[Kind, ...] = (
    drawn(hinge_recess_deeper_in_one, Reason.FIT),
    drawn(hinge_recess_lower_in_one, Reason.FIT),
    drawn(pin_rows_from_the_other_end, Reason.FIT),
    drawn(pocket_bored_too_long, Reason.CUT),
    drawn(pocket_bored_out_at_the_face, Reason.FIT, Reason.CUT),
    drawn(peg_slots_drawn_round, Reason.FIT),
    drawn(screw_slots_drawn_round, Reason.FIT),
)
