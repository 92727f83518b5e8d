"""Strips that are resawn into leaves: how they stand at the saw, how thick leaves come out (A8)."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

from dryfit.geometry.frame import THICKNESS, WIDTH
from dryfit.plan.operation import Operation, Work
from dryfit.plan.setting import Setting
from dryfit.rehearsal.at_machines.lying import lying
from dryfit.rehearsal.at_machines.standing import Axes
from dryfit.rehearsal.blank import ZERO, Blank
from dryfit.rehearsal.fault import Reason, Trouble
from dryfit.rehearsal.sawing.boards import shown
from dryfit.rehearsal.sawing.warp import warp_lost
from dryfit.rehearsal.state import Place, State

TRUED = Fraction(2)
"""What truing a rough strip takes at least before it is resawn, mm (TRADE A8.1)."""
HAND_SAW = Fraction(13, 10)
"""The kerf of a hand saw that resaws, mm (TRADE A8.1, as a band saw's)."""


def resaw(state: State, operation: Operation, work: Work, place: Place) -> None:
    """Saw the strips of some copies into their leaves."""
    strips: dict[str, list[str]] = {}
    for name in work.copies:
        blank = state.blanks.get(name)
        if blank is None:
            trouble = Trouble(Reason.ORDER, "there is no strip of it yet", "its strip, before")
            state.tell(place, trouble, name)
        elif blank.sawn is None:
            # Nobody knows which leaves come out of one strip that no board is laid out for.
            strips[name] = [name]
        elif blank.sawn.uncut:
            strips.setdefault(blank.sawn.name, []).append(name)
        else:
            message = "it is no strip of several leaves, or is sawn into them already"
            state.tell(place, Trouble(Reason.COUNT, message, "strips sawn once"), name)
    for strip, names in strips.items():
        blank = state.blanks[names[0]]
        troubles = (*lying(operation, work, blank), *_unready(state, operation, work, blank))
        for trouble in troubles:
            state.tell(place, trouble, strip)
        leaf = _leaf(state, operation, blank)
        if isinstance(leaf, Trouble):
            state.tell(place, leaf, strip)
            continue
        for name in names:
            _apart(state.blanks[name], leaf)


def _unready(state: State, operation: Operation, work: Work, blank: Blank) -> Iterator[Trouble]:
    """A strip is as high at the saw as it is wide, and gauged from a true face (TRADE A8.3)."""
    station = state.shop.stations.get(operation.station)
    most = station.limits.get("depth") if station is not None else None
    if most is not None and blank.sizes[WIDTH] > most:
        yield Trouble(
            Reason.MACHINE,
            f"it stands {shown(blank.sizes[WIDTH])} high on its edge, more than the saw takes",
            f"a strip {shown(most)} wide at most, or a hand saw",
        )
    missing = {"F": "face", "E": "edge"}.items() if work.hold is None else ()
    for surface, word in missing:
        if surface not in blank.true:
            yield Trouble(
                Reason.REFERENCE,
                f"no {word} of it is true, from which its leaves are gauged",
                f"one {word} made true before",
            )


def _leaf(state: State, operation: Operation, blank: Blank) -> Fraction | Trouble:
    """Return how thick a leaf of a strip comes off the saw, or what the strip lacks for it."""
    axes = state.standing.at(operation.station)
    leaves, kerf = 2 if blank.sawn is None else blank.sawn.leaves, _kerf(state, axes)
    trued = blank.sizes[THICKNESS] if "B" in blank.true else _trued(blank)
    most = (trued - (leaves - 1) * kerf) / leaves
    stands = axes.get("fence") if any(s.axis == "fence" for s in operation.settings) else None
    size = stands.value if isinstance(stands, Setting) else None
    leaf = size if isinstance(size, Fraction) else most
    if leaf <= most:
        return leaf
    whose = "it" if blank.sawn is None else f"board {blank.sawn.board.label}"
    thick = blank.sizes[THICKNESS] if blank.sawn is None else blank.sawn.board.thickness
    return Trouble(
        Reason.WOOD,
        f"{whose} is {shown(thick)} thick, {shown(trued)} trued: that is "
        f"{leaves} leaves of {shown(most)}, and {shown(leaf)} is sawn",
        f"a strip {shown(leaves * leaf + (leaves - 1) * kerf)} thick when it is trued",
    )


def _trued(blank: Blank) -> Fraction:
    """Return what truing leaves of the thickness of a strip of which not both faces are true."""
    if blank.sawn is None:
        return blank.sizes[THICKNESS] - TRUED
    board = blank.sawn.board
    warp = warp_lost(board, blank.sizes)
    return blank.sizes[THICKNESS] - (max(warp, TRUED) if board.rough else warp)


def _kerf(state: State, axes: Axes) -> Fraction:
    cutter = axes.get("cutter")
    mounted = state.tools.cutters.get(str(cutter.value)) if cutter is not None else None
    return mounted.width if mounted is not None else HAND_SAW


def _apart(blank: Blank, leaf: Fraction) -> None:
    """Make a blank one leaf: it cups, so that no face of it is true, and the board's warp is gone.

    The edge that it stood on stays straight.
    """
    if blank.sawn is not None:
        flat = replace(blank.sawn.board, cup=ZERO, bow=ZERO, twist=ZERO)
        blank.sawn = replace(blank.sawn, board=flat, uncut=False)
    blank.strip = False
    blank.resize(THICKNESS, leaf)
    blank.true -= {"F", "B"}
    blank.flat = None
