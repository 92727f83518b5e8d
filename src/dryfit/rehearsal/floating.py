"""Tenons that float at one end: nothing but the tenon may stand before the host (TRADE B21.3)."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from dryfit.geometry.box import Box
from dryfit.geometry.frame import LENGTH
from dryfit.rehearsal.blank import left_of
from dryfit.rehearsal.fault import Reason, Trouble
from dryfit.rehearsal.goal import WantedCopy, WantedJoint


def shut(
    joint: WantedJoint, guest: WantedCopy, cuts: Sequence[Box]
) -> Iterator[tuple[str, Trouble]]:
    """Yield that a shoulder touches a host from which it has to stand off; `cuts` are the guest's.

    The tenon itself goes on through the room before the host.
    """
    if not joint.floats:
        return
    axis = guest.frame.axes[LENGTH][0]
    low, high = list(guest.box.low), list(guest.box.high)
    at_low = joint.region.low[axis] == guest.box.low[axis]
    mouth = joint.region.high[axis] if at_low else joint.region.low[axis]
    start = mouth if at_low else mouth - joint.floats
    low[axis], high[axis] = start, start + joint.floats
    room = Box((low[0], low[1], low[2]), (high[0], high[1], high[2]))
    low, high = list(joint.region.low), list(joint.region.high)
    low[axis], high[axis] = room.low[axis], room.high[axis]
    tenon = replace(room, low=(low[0], low[1], low[2]), high=(high[0], high[1], high[2]))
    if left_of(room, (*cuts, tenon)):
        yield (
            joint.guest,
            Trouble(
                Reason.FIT,
                f"its shoulder touches {joint.host}, where it has to float",
                f"a shoulder {float(joint.floats):g} before {joint.host}",
            ),
        )
