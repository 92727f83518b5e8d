"""Damaged plans of all pieces, and what the rehearsal says of each."""

import random
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cache

from tests.pieces.planning import planned
from tests.pieces.reading import FILES, text_of
from tests.rehearsal_damage import KINDS, Kind

from dryfit.plan.plan import Plan
from dryfit.rehearsal.fault import Fault
from dryfit.rehearsal.goal import Goal
from dryfit.rehearsal.rehearse import rehearse
from dryfit.rehearsing import goal_of
from dryfit.shop import Shop


@dataclass(frozen=True, slots=True)
class Verdict:
    """One damaged plan with the faults found in it."""

    kind: Kind
    piece: str
    faults: tuple[Fault, ...]

    @property
    def caught(self) -> bool:
        """Whether anything is found."""
        return bool(self.faults)

    @property
    def rightly(self) -> bool:
        """Whether one of the reasons is among those that the kind has."""
        return any(fault.reason in self.kind.reasons for fault in self.faults)


@cache
def sound(name: str) -> tuple[Plan, Goal, Shop]:
    """The plan of an example or test piece, what it is for, and the shipped shop."""
    found, plan, _ = planned(text_of(name))
    assert plan is not None, name
    assert found.model is not None
    assert found.shop is not None
    return plan, goal_of(found.model), found.shop


@cache
def faults_of_the_sound(name: str) -> tuple[Fault, ...]:
    """What the rehearsal minds of a plan as it is made: nothing, if all is well."""
    return rehearse(*sound(name))


def chance_for(words: str) -> random.Random:
    """The same chance for the same words."""
    return random.Random(words)  # noqa: S311 - damage, no secret


def damaged(kind: Kind, count: int) -> Iterator[tuple[str, Plan, Goal, Shop]]:
    """So many plans that are damaged in this way, over the pieces in turn.

    Where fewer pieces have a place for it, those that have one are damaged several times.
    """
    pieces = sorted(kind.pieces or FILES)
    chance_for(kind.name).shuffle(pieces)
    made = turn = 0
    while made < count and pieces:
        name = pieces[turn % len(pieces)]
        chance = chance_for(f"{kind.name}, {name}, {turn}")
        plan, goal, shop = sound(name)
        new = kind.damage(plan, goal, chance)
        poorer = kind.poorer(plan, goal, shop, chance) if kind.poorer is not None else shop
        drawn = kind.redrawn(plan, goal, chance) if kind.redrawn is not None else goal
        if new is None or poorer is None or drawn is None:
            pieces.remove(name)
            continue
        made, turn = made + 1, turn + 1
        yield name, new, drawn, poorer


@cache
def judged(kind: Kind, count: int) -> tuple[Verdict, ...]:
    """What the rehearsal says of so many plans that are damaged in this way."""
    return tuple(
        Verdict(kind, name, rehearse(plan, goal, shop))
        for name, plan, goal, shop in damaged(kind, count)
    )


def table(count: int) -> str:
    """How many of each kind are caught, how many with the right reason, and what else is said."""
    everything = [verdict for kind in KINDS for verdict in judged(kind, count)]
    rows = (_row(kind.name, judged(kind, count)) for kind in KINDS)
    head = f"{'damage':34} plans caught  right"
    return "\n".join((head, *rows, _row("all", everything)))


def _row(name: str, verdicts: Sequence[Verdict]) -> str:
    caught = sum(verdict.caught for verdict in verdicts)
    right = sum(verdict.rightly for verdict in verdicts)
    return f"{name:34} {len(verdicts):5} {caught:6} {right:6}"
