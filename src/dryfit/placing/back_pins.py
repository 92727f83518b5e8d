"""Pins to buy: those of a back in its rabbets, those of rabbet joints (TRADE B8, B24)."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction
from math import ceil

from dryfit.geometry.frame import LENGTH, THICKNESS
from dryfit.placing.model import Copy, Fitting, Hardware, Joint, Part
from dryfit.quantities import Display

_PITCH = Fraction(150)
"""From one pin to the next along a rabbet, mm (common practice)."""
_PITCH_OF_BRADS = Fraction(75)
_HOLD = Fraction(20)
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
        size = _sold(3 * part.thickness, display)
        yield Hardware("panel pin", size, count, f"{part.written} into the rabbets")


def pins_for_rabbets(
    joints: Sequence[Joint], part_of: Mapping[str, Part], display: Display
) -> Iterator[Hardware]:
    """Yield the brads through the lips of rabbet joints that no screws hold (TRADE B8).

    Two in a joint, or one about every 75 mm; so long that 20 mm hold (common practice).
    """
    pairs = {frozenset({each.guest, each.host}) for each in joints if each.kind == "screws"}
    counts: dict[tuple[str, str], int] = {}
    for joint in joints:
        if joint.kind != "rabbet" or frozenset({joint.guest, joint.host}) in pairs:
            continue
        guest, host = part_of[joint.guest], part_of[joint.host]
        lip, along = _lip(joint, guest, host)
        key = _sold(lip + _HOLD, display), f"{guest.written} into the rabbets of {host.written}"
        counts[key] = counts.get(key, 0) + max(2, ceil(along / _PITCH_OF_BRADS))
    for (size, purpose), count in counts.items():
        yield Hardware("brad", size, count, purpose)


def _sold(least: Fraction, display: Display) -> str:
    """Return the shortest pin sold that is so long; they are sold by the millimetre everywhere."""
    long = next((each for each in _SOLD if each >= least), _SOLD[-1])
    return f"{display.shown(long)} long" if display.unit == "mm" else f"{long} mm long"


def _lip(joint: Joint, guest: Part, host: Part) -> tuple[Fraction, Fraction]:
    """Return how thick the lip of a rabbet joint is, and how long the row of brads through it."""
    inner = next(each.box for each in guest.copies if each.name == joint.guest)
    outer = next(each.box for each in host.copies if each.name == joint.host)
    region = joint.region
    axis = next(
        each
        for each in range(3)
        if region.extent(each) < min(inner.extent(each), outer.extent(each))
    )
    along = max(region.extent(each) for each in range(3) if each != axis)
    return outer.extent(axis) - region.extent(axis), along


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
