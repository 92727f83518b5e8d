"""How long a glue-up has to be left alone, by the shop's glue and the notes alone (TRADE C2).

The five waits are different ones (TRADE J8): out of clamps, next stage, level, machine, finish.  A
cure in the notes says how long the clamps stay on; the maker's own number wins over the label's
(C2.1), also for the next stage, which by C2.4 may follow as soon as the clamps are off.  Nothing
may be done with a joint while it is still in clamps, so no wait is shorter than that (H86).
"""

from __future__ import annotations

from collections.abc import Mapping

from dryfit.plan.operation import GlueUp, Operation
from dryfit.rehearsal.goal import Goal, WantedAssembly
from dryfit.shop.glues import glue_named
from dryfit.shop.shop import Glue, Shop

OUT_OF_CLAMPS = "out of clamps"
NEXT_STAGE = "next stage"
LEVEL = "level"
MACHINE = "machine"
FINISH = "finish"

LAG_BEFORE: Mapping[str, str] = {
    "glue up": NEXT_STAGE,
    "dry fit": NEXT_STAGE,
    "key slot": NEXT_STAGE,
    "keys": NEXT_STAGE,
    "trim": NEXT_STAGE,
    "level": LEVEL,
    "horns": LEVEL,
    "trim lip": LEVEL,
    "band": NEXT_STAGE,
    "feet": LEVEL,
    "sand": LEVEL,
    "ease edges": LEVEL,
    "coat": FINISH,
    "lay out": OUT_OF_CLAMPS,
    "make": OUT_OF_CLAMPS,
    "measure": OUT_OF_CLAMPS,
    "fit": OUT_OF_CLAMPS,
}
"""What a kind of work waits for; whatever takes wood away by an edge waits for `machine`."""


def lag_before(kind: str) -> str:
    """Return the wait that a kind of operation on glued members needs."""
    return LAG_BEFORE.get(kind, MACHINE)


def assembly_of(operation: Operation, goal: Goal) -> WantedAssembly | None:
    """Return the assembly that a glue-up makes, or None for a panel of staves."""
    stage = operation.id.partition(" / ")[0]
    return next((each for each in goal.assemblies if each.name == stage), None)


def glue_for(operation: Operation, goal: Goal, shop: Shop) -> Glue:
    """Return the glue that has to be used: the one of the notes, else the shop's.

    Where the notes name none that the shop knows, the plan may take another than the usual one
    with reason: because the usual one sets too fast (TRADE C2.2), or does not last outdoors.
    """
    assembly = assembly_of(operation, goal)
    if assembly is not None and assembly.glue is not None:
        named = glue_named(shop, assembly.glue)
        if named is not None:
            return named
    usual = shop.glues[shop.default_glue]
    taken = shop.glues.get(operation.glue_up.glue) if operation.glue_up is not None else None
    return taken if taken is not None and _with_reason(taken, usual, operation.glue_up) else usual


def _with_reason(taken: Glue, usual: Glue, glue_up: GlueUp | None) -> bool:
    too_fast = glue_up is not None and glue_up.closing_tenths > usual.close_within
    slower = too_fast and taken.close_within > usual.close_within
    return slower or (taken.outdoors and not usual.outdoors)


def lags_after(operation: Operation, goal: Goal, shop: Shop) -> dict[str, int]:
    """Return the five waits after a glue-up in tenths of a minute."""
    glue, assembly = glue_for(operation, goal, shop), assembly_of(operation, goal)
    waits = dict(glue.lags)
    if assembly is not None and assembly.cure is not None:
        waits |= {OUT_OF_CLAMPS: assembly.cure, NEXT_STAGE: assembly.cure}
    return {until: max(lag, waits[OUT_OF_CLAMPS]) for until, lag in waits.items()}
