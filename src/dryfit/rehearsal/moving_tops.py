"""Solid tops screwed on from below: round holes in one place, slots elsewhere (TRADE B17, B22)."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from dryfit.geometry.box import Box
from dryfit.geometry.frame import WIDTH
from dryfit.rehearsal.fault import Fault, Reason
from dryfit.rehearsal.goal import WantedCopy, WantedJoint
from dryfit.rehearsal.state import State, cuts_in_piece

UP = 2
_APART = Fraction(100)
"""Screws in round holes may stand so far apart across the grain, mm (TRADE B17)."""


def held_across(state: State) -> Iterator[Fault]:
    """Yield each solid top that screws in round holes hold in two places across its grain."""
    places: dict[str, list[Fraction]] = {}
    for joint in state.goal.joints:
        guest, host = state.copies.get(joint.guest), state.copies.get(joint.host)
        if joint.kind != "slotted screws" or guest is None or host is None:
            continue
        if host.name in state.blanks and state.part_of[guest.name].stock == "solid":
            axis = guest.frame.axes[WIDTH][0]
            own = places.setdefault(guest.name, [])
            own += (_middle(hole, axis) for hole in _round_holes(state, joint, host, axis))
    for name, own in places.items():
        if own and max(own) - min(own) > _APART:
            yield Fault(
                Reason.FIT,
                f"{name}: screws in round holes hold it {float(max(own) - min(own)):g} apart "
                "across its grain",
                "slots across the grain in all rows but one",
            )


def _round_holes(state: State, joint: WantedJoint, host: WantedCopy, across: int) -> Iterator[Box]:
    """Yield the holes out of which a screw comes at the top of its rail, and cannot move across."""
    region = joint.region
    (along,) = {0, 1} - {across}
    for cut in cuts_in_piece(host, state.blanks[host.name]):
        inside = all(
            region.low[each] <= cut.low[each] and cut.high[each] <= region.high[each]
            for each in (0, 1)
        )
        if inside and cut.high[UP] == host.box.high[UP] and cut.extent(across) <= cut.extent(along):
            yield cut


def _middle(box: Box, axis: int) -> Fraction:
    return (box.low[axis] + box.high[axis]) / 2
