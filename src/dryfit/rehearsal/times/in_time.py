"""Time and resources: the plan is played in its order with one pair of hands, by the shop's clock.

Whether glue is hard, a coat dry, a clamp free and the day long enough follows from the moments of
the steps, the shop and the notes; the plan's own waits are only checked against that.
"""

from __future__ import annotations

from dryfit.plan.plan import Plan
from dryfit.rehearsal.fault import Fault
from dryfit.rehearsal.goal import Goal
from dryfit.rehearsal.times.clamping import clamping
from dryfit.rehearsal.times.coats_dry import coats_dry
from dryfit.rehearsal.times.cures import cures
from dryfit.rehearsal.times.deeds import played
from dryfit.rehearsal.times.dust import dust
from dryfit.rehearsal.times.hands import hands
from dryfit.rehearsal.times.keys import keys
from dryfit.rehearsal.times.measurements import measurements
from dryfit.rehearsal.times.moments import moments
from dryfit.rehearsal.times.places import places
from dryfit.rehearsal.times.rests import rests
from dryfit.rehearsal.times.setting_up import setting_up
from dryfit.rehearsal.times.totals import meanwhile, numbers, totals
from dryfit.rehearsal.times.waits import waits
from dryfit.rehearsal.times.working_hours import hours_of
from dryfit.shop.shop import Shop


def times(plan: Plan, goal: Goal, shop: Shop) -> tuple[Fault, ...]:
    """Return all that is wrong with the times of a plan, in the order of its steps.

    Faults of the whole, such as totals, stand last.  ValueError when the shop is never open.
    """
    hours = hours_of(shop)
    deeds = played(plan, goal, hours)
    found = (
        *cures(deeds, goal, hours, shop),
        *keys(deeds, goal),
        *rests(deeds, plan, goal, shop),
        *coats_dry(deeds, goal, hours, shop),
        *measurements(deeds, goal),
        *dust(deeds, goal, hours, shop),
        *clamping(deeds, goal, hours, shop),
        *places(deeds, goal, hours, shop),
        *hands(deeds, goal),
        *waits(plan, deeds, hours),
        *moments(plan, deeds, hours),
        *setting_up(plan, shop),
        *numbers(plan),
        *meanwhile(plan, deeds, goal, shop),
        *totals(plan, hours),
    )
    return tuple(sorted(found, key=lambda fault: (fault.step is None, fault.step or 0)))
