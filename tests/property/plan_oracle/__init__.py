"""An oracle for plans: replays them from the JSON of `steps` and `parts` and the shop file alone.

It knows the contract and the trade's rules, and nothing of operations, joinery or planning.
"""

from tests.property.plan_oracle.levels import levelling
from tests.property.plan_oracle.lipped import lipped
from tests.property.plan_oracle.reading import Json
from tests.property.plan_oracle.replay import Replay
from tests.property.plan_oracle.resting import resting
from tests.property.plan_oracle.sequence import sequence
from tests.property.plan_oracle.sloping import sloping
from tests.property.plan_oracle.splayed import splayed
from tests.property.plan_oracle.standing import changes, milling, origins
from tests.property.plan_oracle.times import (
    clamps,
    cures,
    dust,
    moments,
    places,
    totals,
)


def faults(steps: Json, parts: Json, shop: Json) -> list[str]:
    """Everything that is wrong with a plan, as sentences; an empty list for a sound one."""
    return [
        *changes(steps, shop),
        *milling(steps, parts, shop),
        *origins(steps),
        *sequence(steps, parts),
        *resting(steps, parts, shop),
        *levelling(steps, parts),
        *lipped(steps, parts),
        *moments(steps, shop),
        *cures(steps, parts),
        *dust(steps, shop),
        *clamps(steps, shop),
        *places(steps, shop),
        *totals(steps, shop),
        *splayed(steps, parts),
        *sloping(parts),
        *Replay(steps, parts).run(),
    ]
