"""Slots across a glued corner, sawn in a cradle: as deep, as wide and as far in as they are marked.

The corner points down at the blade, so that a slot runs along either side of it by the diagonal of
a square of its depth; a face of the frame slides along the fence (TRADE B12.1).
"""

from __future__ import annotations

from fractions import Fraction

from dryfit.rehearsal.at_machines.cutters import Toolbox
from dryfit.rehearsal.at_machines.limits import DIAGONAL
from dryfit.rehearsal.at_machines.standing import Axes
from dryfit.rehearsal.blank import Blank
from dryfit.rehearsal.fault import Reason, Trouble
from dryfit.rehearsal.goal import Mark
from dryfit.rehearsal.zones import HAIR

KEY_SLOT = "key slot"


def missed(axes: Axes, blank: Blank, marks: tuple[Mark, ...], tools: Toolbox) -> Trouble | None:
    """Return how the cutter, as it stands, misses one of the slots that are marked, or None."""
    cutter, accessory = axes.get("cutter"), axes.get("accessory")
    mounted = tools.cutters.get(str(cutter.value)) if cutter is not None else None
    cradle = tools.accessories.get(str(accessory.value)) if accessory is not None else None
    height, fence = _figure(axes, "height"), _figure(axes, "fence")
    tilt = axes.get("tilt")
    if tilt is not None and tilt.value != 0:
        return Trouble(Reason.SETTING, "the blade is tilted for a slot", "an upright blade")
    if mounted is None or cradle is None or height is None or fence is None:
        return Trouble(
            Reason.SETTING, "its slot is not set", "blade, cradle, height and fence that are set"
        )
    reach = (height - cradle.base) * DIAGONAL
    for mark in marks:
        ways = _through(mark, blank, reach, mounted.width)
        if not ways:
            return Trouble(
                Reason.SETTING,
                f"a slot {float(height - cradle.base):g} deep and {float(mounted.width):g} wide is "
                f"sawn where {mark.id} is wanted",
                "height and blade of the slot",
            )
        low, high = mark.ranges[ways[0]]
        if fence not in {low, blank.sizes[ways[0]] - high}:
            return Trouble(
                Reason.SETTING,
                f"the fence stands at {float(fence):g}, and {mark.id} lies {float(low):g} from "
                "the face",
                "the distance of the slot from one of the faces",
            )
    return None


def _through(mark: Mark, blank: Blank, reach: Fraction, width: Fraction) -> list[int]:
    """Return along which way a slot so deep and so wide has the thickness of its key."""
    sizes = [high - low for low, high in mark.ranges]
    return [
        way
        for way in range(3)
        if abs(sizes[way] - width) <= HAIR
        # In thin wood the slot comes out on the inside of its member, where the mate goes on.
        and all(sizes[each] == min(reach, blank.sizes[each]) for each in range(3) if each != way)
    ]


def _figure(axes: Axes, axis: str) -> Fraction | None:
    setting = axes.get(axis)
    return setting.value if setting is not None and isinstance(setting.value, Fraction) else None
