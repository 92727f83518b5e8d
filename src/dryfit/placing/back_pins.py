"""The pins that hold a back in its rabbets, to buy (TRADE B24, common practice)."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction
from math import ceil

from dryfit.geometry.frame import LENGTH, THICKNESS
from dryfit.placing.model import Copy, Fitting, Hardware, Joint, Part
from dryfit.quantities import Display

_PITCH = Fraction(150)
"""From one pin to the next along a rabbet, mm (common practice)."""
_SOLD = tuple(Fraction(length) for length in (15, 20, 25, 30, 40))
"""Lengths of thin pins in the shops, mm (common practice)."""


def pins_for_backs(
    joints: Sequence[Joint],
    fittings: Sequence[Fitting],
    part_of: Mapping[str, Part],
    display: Display,
) -> Iterator[Hardware]:
    """Yield the pins of each part that is pinned into rabbets, three times as long as it is thick.

    A sheet takes one about every 150 mm all round, solid wood one at the middle of each end.
    """
    pinned = {name for fitting in fittings if fitting.kind == "pins" for name in fitting.joints}
    counts: dict[str, int] = {}
    for joint in joints:
        if joint.id in pinned:
            part = part_of[joint.guest]
            counts[part.name] = counts.get(part.name, 0) + _pins(joint, part)
    by_name = {part.name: part for part in part_of.values()}
    for name, count in counts.items():
        part = by_name[name]
        long = next((each for each in _SOLD if each >= 3 * part.thickness), _SOLD[-1])
        size = f"{display.shown(long)} long" if display.unit == "mm" else f"{long} mm long"
        yield Hardware("panel pin", size, count, f"{part.written} into the rabbets")


def _pins(joint: Joint, part: Part) -> int:
    copy = next(each for each in part.copies if each.name == joint.guest)
    along = _along(joint, copy)
    if part.stock == "sheet":
        return max(2, ceil(joint.region.extent(along) / _PITCH))
    return 0 if along == copy.frame.axes[LENGTH][0] else 1


def _along(joint: Joint, copy: Copy) -> int:
    """Return the axis along which a rabbet runs beside the panel."""
    flat = [axis for axis, _ in copy.frame.axes[:THICKNESS]]
    return max(flat, key=joint.region.extent)
