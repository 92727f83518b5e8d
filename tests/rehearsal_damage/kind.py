"""A kind of damage: what it does to a plan, and the reasons of which one must be given."""

import random
from collections.abc import Callable
from dataclasses import dataclass

from dryfit.plan.plan import Plan
from dryfit.rehearsal.fault import Reason
from dryfit.rehearsal.goal import Goal
from dryfit.shop import Shop

Damage = Callable[[Plan, Goal, random.Random], Plan | None]
ShopDamage = Callable[[Plan, Goal, Shop, random.Random], Shop | None]
Redrawn = Callable[[Plan, Goal, random.Random], Goal | None]


@dataclass(frozen=True, slots=True)
class Kind:
    """A damage that is wrong by construction; it returns None where a plan has no place for it.

    `poorer` takes something from the shop instead, `redrawn` changes the marks to which the parts
    are cut, as a planner that places its cuts wrongly would: then the plan stays as it is.
    """

    name: str
    damage: Damage
    reasons: frozenset[Reason]
    poorer: ShopDamage | None = None
    redrawn: Redrawn | None = None
    pieces: tuple[str, ...] = ()
    """The only pieces that have a place for it; none where any may."""


def unhurt(plan: Plan, _goal: Goal, _chance: random.Random) -> Plan:
    """The plan as it is, for kinds that damage the shop or the marks."""
    return plan


def kind(damage: Damage, *reasons: Reason) -> Kind:
    """A kind that has the name of its function."""
    return Kind(_named(damage), damage, frozenset(reasons))


def drawn(redrawn: Redrawn, *reasons: Reason) -> Kind:
    """A kind that draws marks otherwise, and has the name of its function."""
    return Kind(_named(redrawn), unhurt, frozenset(reasons), redrawn=redrawn)


def _named(damage: object) -> str:
    return str(getattr(damage, "__name__", "damage")).replace("_", " ")
