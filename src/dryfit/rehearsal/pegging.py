"""Pegs: each goes through host and tenon, and draws the shoulder up where asked (TRADE B3)."""

from __future__ import annotations

from collections.abc import Iterator

from dryfit.geometry.box import Box
from dryfit.geometry.frame import LENGTH, WIDTH
from dryfit.rehearsal.fault import Fault, Reason
from dryfit.rehearsal.goal import WantedCopy, WantedJoint
from dryfit.rehearsal.state import State, cuts_in_piece
from dryfit.rehearsal.zones import takes_a_peg

_OUTERMOST = 2


def unpegged(state: State) -> Iterator[Fault]:
    """Yield each joint whose holes for pegs are missing in host or tenon, or do not meet."""
    for joint in state.goal.joints:
        guest, host = state.copies.get(joint.guest), state.copies.get(joint.host)
        if joint.pegs is None or guest is None or host is None:
            continue
        if guest.name not in state.blanks or host.name not in state.blanks:
            continue
        through_host = _holes(state, joint, guest, host)
        meeting = [_drawn(hole, joint, guest) for hole in _holes(state, joint, guest, guest)]
        axes = [guest.frame.axes[direction][0] for direction in (0, 1)]
        met = [hole for hole in through_host if _among(hole, meeting, axes)]
        if len(met) < joint.pegs.count or len(through_host) > joint.pegs.count:
            yield Fault(
                Reason.FIT,
                f"{joint.guest}: {len(met)} holes for pegs go through it and {joint.host}",
                f"{joint.pegs.count} holes that meet",
            )
        elif _pinned_fast(joint, guest, _holes(state, joint, guest, guest)):
            yield Fault(
                Reason.FIT,
                f"{joint.guest}: the outermost pegs hold its tenons fast in {joint.host}",
                "holes in the outer tenons that are longer across the grain",
            )


def _pinned_fast(joint: WantedJoint, guest: WantedCopy, holes: list[Box]) -> bool:
    """Return whether a tenon that has to slide is pegged through a hole that is too short."""
    if joint.pegs is None or joint.pegs.slide == 0 or len(holes) < _OUTERMOST:
        return False
    axis = guest.frame.axes[WIDTH][0]
    row = sorted(holes, key=lambda hole: hole.low[axis])
    least = joint.pegs.diameter + 2 * joint.pegs.slide
    return any(hole.extent(axis) < least for hole in (row[0], row[-1]))


def _holes(state: State, joint: WantedJoint, guest: WantedCopy, copy: WantedCopy) -> list[Box]:
    return [
        cut
        for cut in cuts_in_piece(copy, state.blanks[copy.name])
        if takes_a_peg(joint, guest, cut) and cut.overlap(joint.region) is not None
    ]


def _drawn(hole: Box, joint: WantedJoint, guest: WantedCopy) -> Box:
    """Return where a hole of the tenon lies once the peg has pulled it in line."""
    axis = guest.frame.axes[LENGTH][0]
    drawn = joint.pegs.drawn if joint.pegs is not None else 0
    middle = guest.box.low[axis] + guest.box.high[axis]
    inwards = 1 if joint.region.low[axis] + joint.region.high[axis] < middle else -1
    low, high = list(hole.low), list(hole.high)
    low[axis] -= inwards * drawn
    high[axis] -= inwards * drawn
    return Box((low[0], low[1], low[2]), (high[0], high[1], high[2]))


def _among(hole: Box, others: list[Box], axes: list[int]) -> bool:
    return any(
        all(hole.low[axis] + hole.high[axis] == other.low[axis] + other.high[axis] for axis in axes)
        for other in others
    )
