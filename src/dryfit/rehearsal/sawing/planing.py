"""Blanks from boards at jointer and planer: warp, snipe, and leaves that are still one strip."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from dryfit.geometry.frame import LENGTH
from dryfit.plan.operation import Operation
from dryfit.plan.setting import Setting
from dryfit.rehearsal.at_machines.milling import STRIP
from dryfit.rehearsal.at_machines.standing import Axes
from dryfit.rehearsal.blank import ZERO, Blank
from dryfit.rehearsal.fault import Reason, Trouble
from dryfit.rehearsal.sawing.boards import owner_of, shown
from dryfit.rehearsal.sawing.freeing import blade_kerf
from dryfit.rehearsal.sawing.warp import faced, too_warped
from dryfit.rehearsal.state import State

PLANER = "planer"
FACING = frozenset({"face", "rough thickness", "thickness"})
"""Kinds of deeds that show how thick a blank can be."""


def planed(state: State, operation: Operation, axes: Axes, blank: Blank) -> Iterator[Trouble]:
    """Yield what a blank from a board cannot give when a face or its thickness is worked."""
    if blank.sawn is None:
        return
    kind, name = operation.kind.removeprefix(STRIP), blank.sawn.name
    if kind != operation.kind and not blank.sawn.uncut:
        message = f"{name} is no strip of several leaves, or is sawn into them already"
        yield Trouble(Reason.ORDER, message, "strips trued before they are resawn")
        return
    if kind not in FACING:
        return
    if kind == operation.kind and blank.sawn.uncut:
        yield Trouble(
            Reason.ORDER,
            f"{name} is planed before it is resawn into {blank.sawn.leaves} leaves",
            "leaves sawn apart before they are planed",
        )
        return
    faced(state, blank)
    if kind == "face":
        return
    stands = axes.get("thickness") if operation.station == PLANER else None
    size = stands.value if isinstance(stands, Setting) else None
    yield from too_warped(state, blank, size if isinstance(size, Fraction) else None)
    if operation.station == PLANER and not operation.between_strips:
        yield from _sniped(state, blank)


def _sniped(state: State, blank: Blank) -> Iterator[Trouble]:
    """A planer bites deeper at both ends of a blank: nothing is made of those (TRADE A5.2)."""
    snipe, sawn = state.shop.allowances.get("snipe", ZERO), blank.sawn
    if sawn is None or not snipe:
        return
    longs = [final[LENGTH] for each in sawn.pieces if (final := state.final(owner_of(each)))]
    each = -(-len(longs) // sawn.leaves)
    needed = sum(sorted(longs, reverse=True)[:each], ZERO) + 2 * snipe
    needed += max(0, each - 1) * blade_kerf(state)
    if longs and blank.sizes[LENGTH] < needed:
        yield Trouble(
            Reason.SIZE,
            f"{sawn.name} is {shown(blank.sizes[LENGTH])} long, and the planer snipes "
            f"{shown(snipe)} at each end",
            f"a blank at least {shown(needed)} long",
        )
