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


@dataclass(frozen=True, slots=True)
class Kind:
    """A damage that is wrong by construction; it returns None where a plan has no place for it.

    `poorer` takes something from the shop instead: then the plan stays as it is.
    """

    name: str
    damage: Damage
    reasons: frozenset[Reason]
    poorer: ShopDamage | None = None


def unhurt(plan: Plan, _goal: Goal, _chance: random.Random) -> Plan:
    """The plan as it is, for kinds that damage the shop."""
    return plan


def kind(damage: Damage, *reasons: Reason) -> Kind:
    """A kind that has the name of its function."""
    name = getattr(damage, "__name__", "damage").replace("_", " ")
    return Kind(name, damage, frozenset(reasons))
