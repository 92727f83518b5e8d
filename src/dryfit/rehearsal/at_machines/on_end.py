"""A board that stands on its end before a guide: sockets at a pin, each measured from an edge.

The pin is a stop.  A spacer moves the work away from it, and the cut toward the edge that touches;
a socket put over the pin moves the work on, and the cut away from that edge.
"""

from __future__ import annotations

from fractions import Fraction

from dryfit.geometry.frame import LENGTH, SURFACES, WIDTH
from dryfit.plan.operation import Work
from dryfit.plan.setting import Hold
from dryfit.rehearsal.at_machines.standing import Axes
from dryfit.rehearsal.blank import ZERO, Blank
from dryfit.rehearsal.fault import Reason, Trouble
from dryfit.rehearsal.goal import Range, Ranges


def on_end(
    work: Work, hold: Hold, axes: Axes, blank: Blank, width: Fraction, depth: Fraction
) -> tuple[Ranges, ...] | Trouble:
    """Return the sockets that the passes of one row of work cut into the end that is down."""
    assert hold.down is not None
    stop = axes.get("stop")
    if hold.at_stop is None or SURFACES[hold.at_stop][0] != WIDTH:
        return Trouble(Reason.HOLD, "no edge touches the pin", "an edge at the pin")
    if stop is None or not isinstance(stop.value, Fraction):
        return Trouble(Reason.SETTING, "the stop is not set", "a stop that is set")
    sockets: list[Ranges] = []
    for each in work.passes:
        if each.between:
            return Trouble(Reason.CUT, "a pass is freehand", "passes at the pin")
        near = stop.value - (each.spacer or ZERO) + (each.moved or ZERO)
        ranges: list[Range] = [(ZERO, size) for size in blank.sizes]
        ranges[WIDTH] = blank.measured_from(hold.at_stop, (near, near + width))
        ranges[LENGTH] = blank.measured_from(hold.down, (ZERO, depth))
        inside = blank.clipped((ranges[0], ranges[1], ranges[2]))
        if inside is None:
            return Trouble(
                Reason.CUT, "the cutter passes beside the wood", "a setting that meets the wood"
            )
        sockets.append(inside)
        # What goes over the pin has been cut before: a socket as wide, one finger nearer.
        if each.moved and not _over_pin(sockets, hold, stop.value, each.moved, blank):
            return Trouble(
                Reason.HOLD, "no socket is there to go over the pin", "the sockets in their order"
            )
    return tuple(sockets)


def _over_pin(
    sockets: list[Ranges], hold: Hold, finger: Fraction, moved: Fraction, blank: Blank
) -> bool:
    """Return whether an earlier socket lies where the pin stands once the work has moved on.

    The pin fills the way from the edge's place to one finger before it.
    """
    assert hold.at_stop is not None
    place = blank.measured_from(hold.at_stop, (moved - finger, moved))
    return any(socket[WIDTH] == place for socket in sockets[:-1])
