"""Strips that are resawn into leaves: how thick each comes out (TRADE A8.1)."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

from dryfit.geometry.frame import THICKNESS, WIDTH
from dryfit.plan.operation import Operation
from dryfit.plan.setting import Setting
from dryfit.rehearsal.at_machines.standing import Axes
from dryfit.rehearsal.blank import ZERO, Blank
from dryfit.rehearsal.fault import Reason, Trouble
from dryfit.rehearsal.sawing.boards import shown
from dryfit.rehearsal.sawing.cuts import sawn_with
from dryfit.rehearsal.sawing.warp import warp_lost
from dryfit.rehearsal.state import Place, State

TRUED = Fraction(2)
"""What truing a rough strip takes at least before it is resawn, mm (TRADE A8.1)."""
HAND_SAW = Fraction(13, 10)
"""The kerf of a hand saw that resaws, mm (TRADE A8.1, as a band saw's)."""


def resaw(state: State, operation: Operation, place: Place) -> None:
    """Saw the strips of a part into their leaves; without boards nothing is known of them yet."""
    strips: dict[str, list[str]] = {}
    for name in sorted(sawn_with(state, operation)):
        if name not in state.boards.names:
            continue
        blank = state.blanks.get(name)
        if blank is None or blank.sawn is None:
            trouble = Trouble(Reason.ORDER, "there is no strip of it yet", "its strip, before")
            state.tell(place, trouble, name)
        elif blank.sawn.uncut:
            strips.setdefault(blank.sawn.name, []).append(name)
    for strip, names in strips.items():
        blank = state.blanks[names[0]]
        for trouble in _too_high(state, operation, blank):
            state.tell(place, trouble, strip)
        leaf = _leaf(state, operation, blank)
        if isinstance(leaf, Trouble):
            state.tell(place, leaf, strip)
            continue
        for name in names:
            _apart(state.blanks[name], leaf)


def _too_high(state: State, operation: Operation, blank: Blank) -> Iterator[Trouble]:
    """A strip stands on its edge, and is as high at the saw as it is wide (TRADE A8.3)."""
    station = state.shop.stations.get(operation.station)
    most = station.limits.get("depth") if station is not None else None
    if most is not None and blank.sizes[WIDTH] > most:
        yield Trouble(
            Reason.MACHINE,
            f"it stands {shown(blank.sizes[WIDTH])} high on its edge, more than the saw takes",
            f"a strip {shown(most)} wide at most, or a hand saw",
        )


def _leaf(state: State, operation: Operation, blank: Blank) -> Fraction | Trouble:
    """Return how thick a leaf of a strip comes off the saw, or what the strip lacks for it."""
    assert blank.sawn is not None
    axes = state.standing.at(operation.station)
    leaves, kerf, board = blank.sawn.leaves, _kerf(state, axes), blank.sawn.board
    warp = warp_lost(board, blank.sizes)
    trued = blank.sizes[THICKNESS] - (max(warp, TRUED) if board.rough else warp)
    most = (trued - (leaves - 1) * kerf) / leaves
    stands = axes.get("fence") if any(s.axis == "fence" for s in operation.settings) else None
    size = stands.value if isinstance(stands, Setting) else None
    leaf = size if isinstance(size, Fraction) else most
    if leaf > most:
        return Trouble(
            Reason.WOOD,
            f"board {board.label} is {shown(board.thickness)} thick, {shown(trued)} trued: that is "
            f"{leaves} leaves of {shown(most)}, and {shown(leaf)} is sawn",
            f"a strip {shown(leaves * leaf + (leaves - 1) * kerf)} thick when it is trued",
        )
    return leaf


def _kerf(state: State, axes: Axes) -> Fraction:
    cutter = axes.get("cutter")
    mounted = state.tools.cutters.get(str(cutter.value)) if cutter is not None else None
    return mounted.width if mounted is not None else HAND_SAW


def _apart(blank: Blank, leaf: Fraction) -> None:
    """Make a blank one leaf: one of its faces is as the saw left it, and its warp is gone."""
    assert blank.sawn is not None
    flat = replace(blank.sawn.board, cup=ZERO, bow=ZERO, twist=ZERO)
    blank.sawn = replace(blank.sawn, board=flat, uncut=False)
    blank.resize(THICKNESS, leaf)
    blank.true -= {"B"}
    blank.flat = None
