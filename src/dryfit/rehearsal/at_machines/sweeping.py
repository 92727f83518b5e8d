"""What a held part loses at a machine: the cutter as it stands, swept along the passes.

A distance is measured from the surface that touches fence or stop to the near face of the cutter,
the one toward it; the far face lies the cutter's width beyond (TRADE 0.4).  A height counts from
the surface that the work rides on, so that a sled's base is taken off it (0.5).  A spacer between
stop and work moves the work away from the stop, and the cut toward the end that touches (0.7).
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from itertools import pairwise

from dryfit.geometry.frame import LENGTH, OPPOSITE, SURFACES
from dryfit.plan.operation import Work
from dryfit.plan.setting import Hold, Pass, Setting
from dryfit.rehearsal.at_machines.cutters import Toolbox
from dryfit.rehearsal.at_machines.on_end import on_end
from dryfit.rehearsal.at_machines.standing import Axes
from dryfit.rehearsal.blank import ZERO, Blank
from dryfit.rehearsal.fault import Reason, Trouble
from dryfit.rehearsal.goal import Mark, Range, Ranges

FROM_ABOVE = frozenset({"mortiser", "drill press"})
SHIM = Fraction(1, 10)
"""Wood as thin as this at an open end breaks off without a pass of its own; mm, from memory."""


def swept(
    station: str, work: Work, axes: Axes, blank: Blank, marks: Sequence[Mark], tools: Toolbox
) -> tuple[Ranges, ...] | Trouble:
    """Return the ranges that one row of work takes from a blank held at a machine.

    One range for each pass position; where no stop guides the work, one for each of its marks.
    """
    hold = work.hold
    assert hold is not None
    cutter = axes.get("cutter")
    name = cutter.value if cutter else None
    mounted = tools.cutters.get(name) if isinstance(name, str) else None
    if mounted is None or mounted.cutter.station != station:
        return Trouble(
            Reason.MACHINE,
            f"{name or 'no cutter'} is mounted in the {station}",
            "a cutter of this machine",
        )
    depth = _depth(station, axes, tools)
    if isinstance(depth, Trouble):
        return depth
    across = _rides_across(station, axes, tools)
    if hold.down is None or (across and hold.against_fence is None):
        where = "on the table" if hold.down is None else "against the fence of the sled"
        return Trouble(Reason.HOLD, f"no surface lies {where}", "a surface that lies there")
    surface = OPPOSITE[hold.down] if station in FROM_ABOVE else hold.down
    if across:
        return _across(work, hold, axes, blank, mounted.width, depth, marks)
    sideways = _at_fence(hold, axes, blank, mounted.width)
    if isinstance(sideways, Trouble):
        return sideways
    lengthways = _between_stops(station, hold, axes, blank)
    if isinstance(lengthways, Trouble):
        return lengthways
    return _boxes(blank, surface, depth, lengthways, sideways, marks)


def _across(
    work: Work,
    hold: Hold,
    axes: Axes,
    blank: Blank,
    width: Fraction,
    depth: Fraction,
    marks: Sequence[Mark],
) -> tuple[Ranges, ...] | Trouble:
    """Return what is cut where the work is pushed across its length, lying or on its end."""
    assert hold.down is not None
    if SURFACES[hold.down][0] == LENGTH:
        return on_end(work, hold, axes, blank, width, depth)
    alongs = _across_passes(work, hold, axes, blank, width)
    if isinstance(alongs, Trouble):
        return alongs
    return _boxes(blank, hold.down, depth, alongs, None, marks)


def through(axes: Axes, blank: Blank, down: str, tools: Toolbox) -> Trouble | None:
    """Return what keeps a saw blade from cutting right through the blank, or None."""
    depth = _depth("table saw", axes, tools)
    if isinstance(depth, Trouble):
        return depth
    direction = SURFACES[down][0]
    thickness = blank.sizes[direction]
    if depth <= thickness and blank.known[direction]:
        return Trouble(
            Reason.SETTING,
            f"the blade stands {float(depth):g} above the work's underside, which is "
            f"{float(thickness):g} thick",
            "a blade that comes out at the top",
        )
    return None


def _depth(station: str, axes: Axes, tools: Toolbox) -> Fraction | Trouble:
    setting = axes.get("depth" if station in FROM_ABOVE else "height")
    if setting is None or not isinstance(setting.value, Fraction):
        return Trouble(Reason.SETTING, "how deep it cuts is not set", "a depth that is set")
    if station in FROM_ABOVE:
        return setting.value
    accessory = axes.get("accessory")
    name = accessory.value if accessory else None
    if isinstance(name, str):
        if name not in tools.accessories:
            return Trouble(Reason.MACHINE, f"there is no {name}", "an accessory of the shop")
        return setting.value - tools.accessories[name].base
    return setting.value


def _rides_across(station: str, axes: Axes, tools: Toolbox) -> bool:
    """Return whether the work is pushed across its length: on a sled, or beside a mitre gauge."""
    accessory = axes.get("accessory")
    if accessory is not None:
        own = tools.accessories.get(str(accessory.value))
        return own is not None and own.longest is not None
    stop = axes.get("stop")
    # A pair of stops limits how far the work runs along the fence; one stop says where it is cut.
    return station == "router table" and stop is not None and stop.to == "near"


def _across_passes(
    work: Work, hold: Hold, axes: Axes, blank: Blank, width: Fraction
) -> tuple[Range, ...] | Trouble | None:
    if hold.at_stop is None:
        return None
    stop = axes.get("stop")
    wrong = _wrong_distance(stop, "stop", width)
    if wrong is not None:
        return wrong
    assert stop is not None
    assert isinstance(stop.value, Fraction)
    limits = cleared(stop.value, width, work.passes)
    if isinstance(limits, Trouble):
        return limits
    return (blank.measured_from(hold.at_stop, limits),)


def cleared(near: Fraction, width: Fraction, passes: Sequence[Pass]) -> Range | Trouble:
    """Return the range from the stop that the passes clear (TRADE 0.6, 0.7)."""
    placed = sorted(near - (each.spacer or ZERO) for each in passes if not each.between)
    between = sum(each.between for each in passes)
    if not placed:
        return Trouble(Reason.SETTING, "no pass is made at the stop", "a pass that the stop places")
    low, high = placed[0], placed[-1] + width
    if between and len(placed) == 1:
        # One limit is measured; what lies between it and the end is cleared freehand.
        low = min(low, ZERO)
    if not between and any(then - first > width for first, then in pairwise(placed)):
        return Trouble(
            Reason.CUT, "wood is left standing between the passes", "passes that overlap"
        )
    if len(passes) * width < high - low:
        return Trouble(
            Reason.CUT,
            f"{len(passes)} passes of {float(width):g} do not clear {float(high - low):g}",
            "as many passes as clear the whole width",
        )
    if len(placed) == 1 and ZERO < low <= SHIM:
        low = ZERO
    return low, high


def _at_fence(
    hold: Hold, axes: Axes, blank: Blank, width: Fraction
) -> tuple[int, Range] | Trouble | None:
    if hold.against_fence is None:
        return None
    fence = axes.get("fence")
    wrong = _wrong_distance(fence, "fence", width)
    if wrong is not None:
        return wrong
    assert fence is not None
    assert isinstance(fence.value, Fraction)
    limits = blank.measured_from(hold.against_fence, (fence.value, fence.value + width))
    return SURFACES[hold.against_fence][0], limits


def _between_stops(
    station: str, hold: Hold, axes: Axes, blank: Blank
) -> tuple[Range, ...] | Trouble | None:
    if hold.at_stop is None:
        # A saw and a router run out at both ends; a chisel and a drill go down at the marks.
        return None if station in FROM_ABOVE else ((ZERO, blank.sizes[LENGTH]),)
    stop = axes.get("stop")
    if stop is None or not isinstance(stop.value, Fraction) or stop.far is None:
        return Trouble(Reason.SETTING, "the stop is not set", "a stop that is set")
    if stop.far <= stop.value:
        return Trouble(
            Reason.SETTING, "the far limit is not beyond the near one", "two limits in order"
        )
    return (blank.measured_from(hold.at_stop, (stop.value, stop.far)),)


def _wrong_distance(setting: Setting | None, axis: str, width: Fraction) -> Trouble | None:
    if setting is None or not isinstance(setting.value, Fraction):
        return Trouble(Reason.SETTING, f"the {axis} is not set", f"a {axis} that is set")
    if setting.to == "near" and setting.far is not None and setting.far != setting.value + width:
        return Trouble(
            Reason.SETTING,
            f"the {axis}: near face at {float(setting.value):g} and a cutter {float(width):g} "
            f"wide do not make a far face at {float(setting.far):g}",
            "near face and cutter width that add up to the far face",
        )
    return None


def _boxes(
    blank: Blank,
    surface: str,
    depth: Fraction,
    alongs: tuple[Range, ...] | None,
    sideways: tuple[int, Range] | None,
    marks: Sequence[Mark],
) -> tuple[Ranges, ...] | Trouble:
    """Return the boxes cut: whole in a direction that nothing limits, at the marks along."""
    normal = SURFACES[surface][0]
    places = alongs if alongs is not None else tuple(mark.ranges[LENGTH] for mark in marks)
    if not places:
        return Trouble(
            Reason.CUT, "neither a stop nor a mark says where it is cut", "a stop, or a mark"
        )
    boxes: list[Ranges] = []
    for place in places:
        ranges: list[Range] = [(ZERO, size) for size in blank.sizes]
        if sideways is not None:
            ranges[sideways[0]] = sideways[1]
        ranges[LENGTH] = place
        # An end that is cut into is down or up itself, and then the cut is as deep along.
        ranges[normal] = blank.measured_from(surface, (ZERO, depth))
        inside = blank.clipped((ranges[0], ranges[1], ranges[2]))
        if inside is None:
            return Trouble(
                Reason.CUT, "the cutter passes beside the wood", "a setting that meets the wood"
            )
        boxes.append(inside)
    return tuple(boxes)
