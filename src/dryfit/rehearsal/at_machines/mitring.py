"""Ends sawn at 45 degrees: which half of the corner goes, by how the part lies (TRADE B0, B12).

At the mitre saw the side at the fence stays long, at the table saw with its blade tilted the side
that lies down: so the machines are taken to be turned (common practice), and the work is laid.
"""

from __future__ import annotations

from fractions import Fraction

from dryfit.geometry.frame import LENGTH, OPPOSITE, SURFACES
from dryfit.plan.operation import Work
from dryfit.rehearsal.at_machines.cutters import Toolbox
from dryfit.rehearsal.at_machines.standing import Axes
from dryfit.rehearsal.at_machines.sweeping import through
from dryfit.rehearsal.blank import Blank, Slant
from dryfit.rehearsal.fault import Reason, Trouble
from dryfit.rehearsal.goal import Mark, Range, Ranges

HALF = 45
"""Degrees at which the cut is as long as it is deep; two of them make a square corner."""
TURNED = {"mitre saw": "angle", "table saw": "tilt"}


def sawn(
    station: str, work: Work, axes: Axes, blank: Blank, marks: tuple[Mark, ...], tools: Toolbox
) -> tuple[Slant, ...] | Trouble:
    """Return the corners that one row of work saws off a blank, held at a machine or to marks."""
    slanted = tuple(mark for mark in marks if mark.toward is not None)
    hold = work.hold
    if hold is None:
        drawn = tuple(Slant(m.ranges, m.surface, m.toward) for m in slanted if m.toward is not None)
        return drawn or Trouble(Reason.CUT, "no slanting line is marked on it", "its marks")
    wrong = _wrong_angle(station, axes)
    if wrong is not None:
        return wrong
    if hold.down is None or hold.against_fence is None:
        where = "on the table" if hold.down is None else "against the fence"
        return Trouble(Reason.HOLD, f"no surface lies {where}", "a surface that lies there")
    long_side = hold.against_fence if station == "mitre saw" else hold.down
    if SURFACES[long_side][0] == LENGTH:
        return Trouble(Reason.HOLD, "nothing says which side stays long", "how it lies")
    if station == "table saw":
        low = through(axes, blank, hold.down, tools)
        if low is not None:
            return low
    toward = OPPOSITE[long_side]
    if hold.at_stop is None:
        return tuple(Slant(mark.ranges, mark.surface, toward) for mark in slanted)
    return _at_the_stop(hold.at_stop, axes, blank, toward)


def _wrong_angle(station: str, axes: Axes) -> Trouble | None:
    axis = TURNED.get(station)
    setting = axes.get(axis) if axis is not None else None
    if setting is None or setting.value != HALF or setting.unit != "deg":
        return Trouble(
            Reason.SETTING, "its cutter is not turned to 45 degrees", "two angles that make 90"
        )
    return None


def _at_the_stop(
    at_stop: str, axes: Axes, blank: Blank, toward: str
) -> tuple[Slant, ...] | Trouble:
    stop = axes.get("stop")
    if stop is None or not isinstance(stop.value, Fraction):
        return Trouble(Reason.SETTING, "the stop is not set", "a stop that is set")
    if stop.value != blank.sizes[LENGTH]:
        return Trouble(
            Reason.SIZE,
            f"its long point is sawn {float(stop.value):g} from {at_stop}, and it is "
            f"{float(blank.sizes[LENGTH]):g} long",
            "a stop that leaves the full length from point to point",
        )
    direction = SURFACES[toward][0]
    run = blank.sizes[direction]
    ranges: list[Range] = [(Fraction(0), size) for size in blank.sizes]
    ranges[LENGTH] = blank.measured_from(at_stop, (stop.value - run, stop.value))
    box: Ranges = ranges[0], ranges[1], ranges[2]
    return (Slant(box, OPPOSITE[at_stop], toward),)
