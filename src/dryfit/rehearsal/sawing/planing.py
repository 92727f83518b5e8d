"""Blanks from boards at jointer and planer: warp, snipe, and leaves that are still one strip."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from dryfit.geometry.frame import LENGTH, THICKNESS
from dryfit.plan.operation import Operation
from dryfit.plan.setting import Setting
from dryfit.rehearsal.at_machines.milling import STRIP
from dryfit.rehearsal.at_machines.standing import Axes
from dryfit.rehearsal.blank import ZERO, Blank
from dryfit.rehearsal.fault import Reason, Trouble
from dryfit.rehearsal.resting import LEFT, wanted_rest
from dryfit.rehearsal.sawing.boards import owner_of, shown
from dryfit.rehearsal.sawing.freeing import blade_kerf
from dryfit.rehearsal.sawing.warp import faced, too_warped
from dryfit.rehearsal.state import State
from dryfit.shop.resting import in_words

PLANER = "planer"
FACING = frozenset({"face", "rough thickness", "thickness"})
"""Kinds of deeds that show how thick a blank can be."""
LAST_PASS = (Fraction(1), Fraction(2))
"""mm that are left for the last pass at least, and at most: else a rest serves nothing (A3.7)."""


def planed(state: State, operation: Operation, axes: Axes, blank: Blank) -> Iterator[Trouble]:
    """Yield what a blank from a board cannot give when a face or its thickness is worked."""
    yield from _unrested(state, operation, axes, blank)
    kind, sawn = operation.kind.removeprefix(STRIP), blank.sawn
    if kind != operation.kind and sawn is not None and not sawn.uncut:
        message = f"{sawn.name} is no strip of several leaves, or is sawn into them already"
        yield Trouble(Reason.ORDER, message, "strips trued before they are resawn")
        return
    if kind not in FACING:
        return
    if kind == operation.kind and (blank.strip or (sawn is not None and sawn.uncut)):
        name = "it" if sawn is None else sawn.name
        yield Trouble(
            Reason.ORDER,
            f"{name} is planed before it is resawn into leaves",
            "leaves sawn apart before they are planed",
        )
        return
    if sawn is None:
        return
    faced(state, blank)
    if kind == "face":
        return
    stands = axes.get("thickness") if operation.station == PLANER else None
    size = stands.value if isinstance(stands, Setting) else None
    yield from too_warped(state, blank, size if isinstance(size, Fraction) else None)
    if operation.station == PLANER and not operation.between_strips:
        yield from _sniped(state, blank)


def _unrested(state: State, operation: Operation, axes: Axes, blank: Blank) -> Iterator[Trouble]:
    """Wood that has to rest is not planed to its thickness in one go (A3.7)."""
    part, sawn = state.part_named(blank.part), blank.sawn
    leaves = sawn is not None and sawn.leaves > 1
    if operation.kind != "thickness" or leaves or part is None:
        return
    stands = axes.get("thickness") if operation.station == PLANER else None
    size = stands.value if isinstance(stands, Setting) else None
    if operation.station != PLANER and not part.staves:
        final = state.final(part.copies[0].name)
        size = None if final is None else final[THICKNESS]
    if not isinstance(size, Fraction):
        return
    thick = blank.sizes[THICKNESS]
    if blank.close:
        least, most = LAST_PASS
        if blank.known[THICKNESS] and not least <= thick - size <= most:
            yield Trouble(
                Reason.WAIT,
                f"{shown(thick - size)} come off when it has come to rest",
                f"{shown(least)} to {shown(most)} left for the last pass",
            )
        return
    rest = wanted_rest(part, None if sawn is None else sawn.board, thick, size, state.shop)
    if rest and (blank.flat is None or blank.flat >= size + LEFT):
        yield Trouble(
            Reason.WAIT,
            f"it is planed from {shown(thick)} to {shown(size)} in one go, and moves afterwards",
            f"{in_words(rest)} on stickers, {shown(LEFT)} before it has its thickness",
        )


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
