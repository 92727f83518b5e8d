"""Plays the cuts: each copy is held, the axes stand as they stand, and wood goes."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from dryfit.geometry.box import Box
from dryfit.geometry.frame import LENGTH, SURFACES
from dryfit.plan.operation import Operation, Work
from dryfit.plan.setting import Hold
from dryfit.rehearsal.at_machines.boring import misbored
from dryfit.rehearsal.at_machines.holding import mirrored, untrue
from dryfit.rehearsal.at_machines.in_frames import frame_sizes, lying_in_frame, takes_frames
from dryfit.rehearsal.at_machines.keying import KEY_SLOT, missed
from dryfit.rehearsal.at_machines.limits import Job, beyond
from dryfit.rehearsal.at_machines.lying import HAND
from dryfit.rehearsal.at_machines.mitring import sawn
from dryfit.rehearsal.at_machines.offcuts import fallen, trapped
from dryfit.rehearsal.at_machines.shaping import (
    BAND_SAW,
    SHAPES,
    SPOILING,
    aslant,
    shaped,
    strips_off,
    taken_off,
)
from dryfit.rehearsal.at_machines.sweeping import FROM_ABOVE, swept
from dryfit.rehearsal.blank import ZERO, Arch, Blank, Slant, box_of, left_of
from dryfit.rehearsal.fault import Reason, Trouble
from dryfit.rehearsal.goal import Mark, Ranges, WantedCopy
from dryfit.rehearsal.leaning import misled, upright
from dryfit.rehearsal.state import UNKNOWN, CutAt, Place, State, sizes_of

SAW = "table saw"


def cut(state: State, operation: Operation, work: Work, place: Place) -> None:
    """Cut one row of work on each of its copies."""
    for name in work.copies:
        for trouble in _cut(state, operation, work, name, place):
            state.tell(place, trouble, name)


def _cut(
    state: State, operation: Operation, work: Work, name: str, place: Place
) -> Iterator[Trouble]:
    copy = state.copies.get(name)
    if copy is None:
        yield UNKNOWN
        return
    marks = state.marks(name, work.features)
    yield from _carried(work, marks)
    in_frame = name in state.glued and work.hold is not None and takes_frames(operation.station)
    yield from _at_hand(state, name, marks, by_hand=work.hold is None or in_frame)
    if in_frame and work.hold is not None:
        yield from lying_in_frame(state, copy, work.hold)
    blank = state.blanks.get(name)
    if blank is None:
        yield Trouble(Reason.ORDER, "it has not been cut from a board yet", "its blank, before")
        return
    if name not in state.laid_out and _needs_marks(operation, work, copy, marks):
        yield Trouble(
            Reason.ORDER, "it is cut to marks that nobody has drawn", "its marks laid out before"
        )
    yield from _unsaid(operation, work)
    yield from misled(state, work, copy, marks)
    strips_off(operation.kind, blank)
    taken = _taken(state, operation, work, blank, marks)
    if isinstance(taken, Trouble):
        yield taken
        return
    if work.hold is not None:
        yield from _held(state, (operation, work.hold), copy, blank, marks)
    state.cut |= {(name, mark.id) for mark in marks}
    shapes = tuple(each for each in taken if isinstance(each, Slant | Arch))
    boxes = tuple(each for each in taken if not isinstance(each, Slant | Arch))
    boxes = upright(state, copy, work, boxes, marks)
    yield from _wood_gone(state, copy, blank, (*boxes, *(shape.ranges for shape in shapes)))
    yield from taken_off(blank, shapes, flat=operation.kind not in SPOILING)
    if operation.station == BAND_SAW:
        state.rough |= {(name, mark.id) for mark in marks}
    for ranges in boxes:
        blank.take(ranges, place.step)
        if operation.kind != KEY_SLOT:
            _take_glued(state, copy, ranges, place)
        if work.hold is not None and work.hold.down is not None:
            _remember(state, (operation, work.hold.down), copy, ranges, place)
    if operation.station == SAW and work.hold is not None:
        waste = fallen(blank, marks, sizes_of(copy)[LENGTH])
        yield from _sawn_off(state, work.hold, blank, waste, place)


def _carried(work: Work, marks: tuple[Mark, ...]) -> Iterator[Trouble]:
    missing = sorted(set(work.features) - {mark.id for mark in marks})
    if missing:
        yield Trouble(
            Reason.CUT, f"it carries no {' and no '.join(missing)}", "a cut that this copy has"
        )


def _sawn_off(
    state: State, hold: Hold, blank: Blank, waste: tuple[Ranges, ...], place: Place
) -> Iterator[Trouble]:
    """Let fall what two cuts have freed, and yield where that is dangerous."""
    fence = state.standing.at(SAW).get("fence")
    if waste and fence is not None and isinstance(fence.value, Fraction):
        yield from trapped(hold, blank, waste, fence.value)
    for ranges in waste:
        blank.take(ranges, place.step)


def _held(
    state: State,
    held: tuple[Operation, Hold],
    copy: WantedCopy,
    blank: Blank,
    marks: tuple[Mark, ...],
) -> Iterator[Trouble]:
    """Yield what is wrong with how a copy is held at a machine, and with what that can take."""
    operation, hold = held
    yield from untrue(hold, blank)
    yield from aslant(operation.kind, hold, blank)
    axes = state.standing.at(operation.station)
    yield from misbored(operation.station, axes, marks, state.shop)
    station = state.shop.stations.get(operation.station)
    if station is not None:
        sizes = frame_sizes(state, copy) if copy.name in state.glued else blank.sizes
        yield from beyond(Job(operation, station, axes, sizes, state.tools))
    if mirrored(operation.station, axes, hold, copy.frame.handedness()):
        yield Trouble(
            Reason.HOLD,
            "it cannot lie so: only its mirror image could",
            "a hold for this hand, or the stop on the other side",
        )


def _unsaid(operation: Operation, work: Work) -> Iterator[Trouble]:
    """Yield where a row of work at a machine does not say how a copy lies, or how often it goes."""
    if work.hold is None and operation.station != HAND and operation.kind != KEY_SLOT:
        yield Trouble(Reason.HOLD, "nothing says how it lies", "a hold at the machine")
    elif work.hold is not None and not work.passes:
        yield Trouble(Reason.CUT, "no pass is made", "one pass at least")


def _take_glued(state: State, copy: WantedCopy, ranges: Ranges, place: Place) -> None:
    """Take the wood of what is glued into the copy, as the other half of a lap, with its own."""
    glued_in = state.glued.get(copy.name)
    box = copy.frame.to_piece(copy.box, ranges)
    for name, assembly in state.glued.items():
        other, blank = state.copies.get(name), state.blanks.get(name)
        if assembly != glued_in or name == copy.name or other is None or blank is None:
            continue
        common = box.overlap(other.box)
        if common is not None:
            blank.take(_in_part(other, common), place.step)


def _needs_marks(
    operation: Operation, work: Work, copy: WantedCopy, marks: tuple[Mark, ...]
) -> bool:
    """Return whether lines guide the work: by hand, or under a chisel or drill without a stop.

    A plane or router with a fence needs none where it runs from end to end.
    """
    if operation.kind == KEY_SLOT:
        # The glued corner itself stands in the cradle, or has its lines drawn then.
        return False
    if work.hold is None:
        whole = (ZERO, sizes_of(copy)[LENGTH])
        return any(mark.ranges[LENGTH] != whole for mark in marks)
    return work.hold.at_stop is None and operation.station in {*FROM_ABOVE, BAND_SAW}


def _remember(
    state: State, held: tuple[Operation, str], copy: WantedCopy, ranges: Ranges, place: Place
) -> None:
    """Keep by which setting a joint was cut, for joints whose cuts have to agree.

    `held` are the operation and the surface on which the copy lies.
    """
    operation, down = held
    height = state.standing.at(operation.station).get("height")
    if height is None or not isinstance(height.value, Fraction):
        return
    if SURFACES[down][0] == LENGTH:
        # How deep a slot goes into an end agrees with no other cut: its mate runs past it.
        return
    box = copy.frame.to_piece(copy.box, ranges)
    turn = state.standing.turned[operation.station, "height"]
    for zone in state.zones[copy.name]:
        if zone.joint is not None and zone.box.contains(box):
            state.set_for.append(
                CutAt(
                    zone.joint,
                    copy.name,
                    operation.station,
                    height.value,
                    copy.frame.axes[SURFACES[down][0]][0],
                    turn,
                    place.step,
                    place.operation,
                )
            )


def _at_hand(
    state: State, name: str, marks: tuple[Mark, ...], *, by_hand: bool
) -> Iterator[Trouble]:
    """Yield what is wrong where a copy is glued into something, or not yet where it has to be."""
    home = state.glued.get(name)
    wanted = [mark for mark in marks if mark.after is not None]
    if home is not None and (len(wanted) < len(marks) or not by_hand):
        yield Trouble(
            Reason.ORDER, f"it is glued into {home} when it is cut", "the cut before the glue-up"
        )
    for mark in wanted:
        if mark.after not in state.stages_glued(name):
            yield Trouble(
                Reason.ORDER,
                f"{mark.id} is cut before the glue-up of {mark.after}",
                f"{mark.after} glued, as the notes want it",
            )


def _taken(
    state: State,
    operation: Operation,
    work: Work,
    blank: Blank,
    marks: tuple[Mark, ...],
) -> tuple[Ranges | Slant | Arch, ...] | Trouble:
    if operation.kind in SHAPES:
        axes = state.standing.at(operation.station)
        return shaped(operation, work, axes, blank, marks, state.tools)
    if operation.kind == "mitre":
        axes = state.standing.at(operation.station)
        return sawn(operation.station, work, axes, blank, marks, state.tools)
    if work.hold is not None:
        axes = state.standing.at(operation.station)
        return swept(operation.station, work, axes, blank, marks, state.tools)
    if operation.kind == KEY_SLOT and operation.station != HAND:
        wrong = missed(state.standing.at(operation.station), blank, marks, state.tools)
        if wrong is not None:
            return wrong
    drawn = tuple(blank.clipped(mark.ranges) for mark in marks)
    inside = tuple(ranges for ranges in drawn if ranges is not None)
    if not inside:
        return Trouble(Reason.CUT, "nothing is marked on it", "marks to cut to")
    return inside


def _wood_gone(
    state: State, copy: WantedCopy, blank: Blank, taken: tuple[Ranges, ...]
) -> Iterator[Trouble]:
    zones = [zone for zone in state.zones[copy.name] if zone.box.overlap(copy.box)]
    gone = [box_of(ranges) for ranges in blank.cuts]
    along, across, deep = sizes_of(copy)
    whole = Box((ZERO, ZERO, ZERO), (along, across, deep))
    for ranges in taken:
        box = box_of(ranges)
        fresh = left_of(box, gone)
        if not fresh:
            yield Trouble(
                Reason.CUT, "nothing is left where it is cut", "wood where the cutter passes"
            )
        # What still stands over at the far end and edge is waste.
        inside = box.overlap(whole)
        in_piece = copy.frame.to_piece(copy.box, ranges)
        free = [box_of(_in_part(copy, zone.box)) for zone in zones if zone.lets(in_piece)]
        wanted = left_of(inside, free) if inside else ()
        if wanted:
            piece = wanted[0]
            where = " x ".join(
                f"{float(piece.low[axis]):g} to {float(piece.high[axis]):g}" for axis in range(3)
            )
            yield Trouble(
                Reason.CUT,
                f"wood goes that is wanted: {where} (along, across, deep)",
                "a cut that stays inside its joint or its declared shape",
            )


def _in_part(copy: WantedCopy, box: Box) -> Ranges:
    along, across, deep = copy.frame.to_part(copy.box, box)
    return along, across, deep
