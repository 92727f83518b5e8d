"""A member of a glued frame at a machine: what touches has to be outside on the whole frame."""

from __future__ import annotations

from collections.abc import Iterator

from dryfit.geometry.box import spanning
from dryfit.geometry.frame import LENGTH, SURFACES, THICKNESS, WIDTH
from dryfit.plan.setting import Hold
from dryfit.rehearsal.at_machines.sweeping import FROM_ABOVE
from dryfit.rehearsal.blank import Sizes
from dryfit.rehearsal.fault import Reason, Trouble
from dryfit.rehearsal.goal import WantedCopy
from dryfit.rehearsal.state import State


def takes_frames(station: str) -> bool:
    """Return whether a machine cuts from above what lies flat: no other takes a glued frame."""
    return station in FROM_ABOVE


def lying_in_frame(state: State, copy: WantedCopy, hold: Hold) -> Iterator[Trouble]:
    """Yield each surface that cannot touch, because other members of the frame stand before it."""
    home = state.glued[copy.name]
    box = spanning(tuple(state.copies[name].box for name in state.members[home]))
    for surface in (hold.down, hold.against_fence, hold.at_stop):
        if surface is None:
            continue
        direction, far = SURFACES[surface]
        axis, sign = copy.frame.axes[direction]
        high = bool(far) == (sign > 0)
        own = copy.box.high[axis] if high else copy.box.low[axis]
        if own != (box.high[axis] if high else box.low[axis]):
            message = f"its {surface} is not outside on {home}, in which it is glued"
            yield Trouble(Reason.HOLD, message, "what touches outside on the whole frame")


def frame_sizes(state: State, copy: WantedCopy) -> Sizes:
    """Return the frame's extents along, across and deep, as its member lies."""
    box = spanning(tuple(state.copies[n].box for n in state.members[state.glued[copy.name]]))
    long, wide, deep = (box.extent(copy.frame.axes[each][0]) for each in (LENGTH, WIDTH, THICKNESS))
    return long, wide, deep
