"""The piece in hand at a saw: what the machine takes, where its fence stands, what it wastes.

TRADE A2.5 (a rough edge at the fence of a table saw), A5.3 (kerfs), A6 (what is too short to rip).
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from dryfit.geometry.frame import LENGTH, WIDTH
from dryfit.plan.operation import Operation
from dryfit.plan.sawing import BoardCut
from dryfit.plan.setting import Setting
from dryfit.rehearsal.at_machines.limits import Job, beyond
from dryfit.rehearsal.at_machines.lying import HAND
from dryfit.rehearsal.at_machines.milling import parting
from dryfit.rehearsal.at_machines.standing import Axes
from dryfit.rehearsal.at_machines.straight_line import beyond_sled, on_sled
from dryfit.rehearsal.at_machines.sweeping import through
from dryfit.rehearsal.blank import Blank
from dryfit.rehearsal.fault import Reason, Trouble
from dryfit.rehearsal.sawing.boards import Piece, shown
from dryfit.rehearsal.state import State

HAND_SAW = Fraction(1)
"""The kerf of a hand saw, mm (TRADE A5.3, common practice)."""
TABLE_SAW, BAND_SAW, MITRE_SAW = "table saw", "band saw", "mitre saw"


def leaves_straight(operation: Operation, axes: Axes) -> bool:
    """Return whether a rip leaves an edge that can run along a fence: at a table saw it does."""
    guided = axes.get("fence") is not None or on_sled(axes)
    return operation.station == TABLE_SAW and guided


def wrong_at_saw(
    state: State, operation: Operation, axes: Axes, cut: BoardCut, piece: Piece
) -> Iterator[Trouble]:
    """Yield what keeps a saw from making one cut of a board as the plan says."""
    if cut.at + cut.kerf < piece.sizes[LENGTH if cut.saw == "crosscut" else WIDTH]:
        yield from _kerf(state, operation, axes, cut)
    yield from _set(operation, axes, cut)
    station = state.shop.stations.get(operation.station)
    if station is not None:
        long, wide, thick = piece.sizes
        if operation.station == MITRE_SAW:
            # A board too wide for the saw is turned over, and met from its other side.
            if wide > station.limits.get("widest", wide) and _has_bark(piece):
                yield Trouble(
                    Reason.HOLD,
                    f"cut {cut.number} is turned over at the {MITRE_SAW} with bark at its fence",
                    "a straight edge at the fence, or a saw along a line",
                )
            wide /= 2
        job = Job(operation, station, axes, (long, wide, thick), state.tools)
        for trouble in beyond(job):
            message = f"cut {cut.number}: {trouble.message}"
            yield Trouble(trouble.reason, message, trouble.needed)
    if operation.station == TABLE_SAW and cut.saw == "rip" and on_sled(axes):
        yield from beyond_sled(state, axes, piece.sizes)
    elif operation.station == TABLE_SAW and cut.saw == "rip":
        yield from parting(operation, axes, state.tools)
        blank = Blank(cut.board, piece.sizes)
        trouble_there = through(axes, blank, "F", state.tools)
        if trouble_there is not None:
            yield trouble_there
        if not piece.straight:
            yield Trouble(
                Reason.REFERENCE,
                f"cut {cut.number} is ripped with a rough edge along the fence, and is thrown back",
                "one edge made straight before",
            )


def _has_bark(piece: Piece) -> bool:
    """Return whether an edge of the piece is still as it grew."""
    board, (low, high) = piece.board, piece.across
    return (board.waney > 1 and low == 0) or (board.waney > 0 and high == board.width)


def _kerf(state: State, operation: Operation, axes: Axes, cut: BoardCut) -> Iterator[Trouble]:
    """A saw wastes its own kerf, and a band saw what it wanders besides, where wood is left."""
    own = _wasted(state, operation, axes)
    if cut.kerf < own:
        yield Trouble(
            Reason.SIZE,
            f"cut {cut.number} takes {shown(cut.kerf)}, and the saw takes {shown(own)}",
            f"a kerf of {shown(own)} at least",
        )


def _wasted(state: State, operation: Operation, axes: Axes) -> Fraction:
    if operation.station == HAND:
        return HAND_SAW
    cutter = axes.get("cutter")
    mounted = state.tools.cutters.get(str(cutter.value)) if cutter is not None else None
    if mounted is not None:
        width = mounted.width
    else:
        blades = state.shop.cutters_at(operation.station)
        width = min((each.narrowest for each in blades), default=HAND_SAW)
    if operation.station == BAND_SAW:
        width = max(width, state.shop.allowances.get("rough_kerf", width))
    return width


def _set(operation: Operation, axes: Axes, cut: BoardCut) -> Iterator[Trouble]:
    """What a fence or stop is set to is the size of what falls; a table saw needs its fence."""
    wanted = {setting.axis for setting in operation.settings}
    axis = "fence" if cut.saw == "rip" else "stop"
    if axis not in wanted:
        if cut.saw == "rip" and operation.station == TABLE_SAW and not on_sled(axes):
            message = f"cut {cut.number} is ripped at a table saw without its fence"
            yield Trouble(Reason.HOLD, message, f"the fence at {shown(cut.at)}")
        return
    stands = axes.get(axis)
    size = stands.value if isinstance(stands, Setting) else None
    if isinstance(size, Fraction) and size != cut.at:
        yield Trouble(
            Reason.SETTING,
            f"the {axis} stands at {shown(size)}, and cut {cut.number} is {shown(cut.at)}",
            f"the {axis} at {shown(cut.at)}",
        )
