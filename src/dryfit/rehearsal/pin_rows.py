"""Shelf pins: where uprights may be bored for them, and whether a shelf finds its holes (B19)."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from dryfit.geometry.box import Box
from dryfit.rehearsal.fault import Reason, Trouble
from dryfit.rehearsal.goal import WantedCopy, WantedJoint

UP = 2
_DEEPEST = Fraction(15)
"""A hole for a pin goes in so far at most, mm (TRADE B19: 10 to 12)."""

_PINS_AT_AN_END = 2


def for_pins(joint: WantedJoint, host: WantedCopy) -> Iterator[Box]:
    """Yield where an upright may be bored for the pins of a shelf, along which that lies."""
    if joint.kind != "shelf pins":
        return
    axis = joint.normal()
    low, high = list(joint.region.low), list(joint.region.high)
    low[axis], high[axis] = low[axis] - _DEEPEST, high[axis] + _DEEPEST
    whole = Box((low[0], low[1], low[2]), (high[0], high[1], high[2]))
    inside = whole.overlap(host.box)
    if inside is not None:
        yield inside


def without_pins(joint: WantedJoint, host: WantedCopy, cuts: Sequence[Box]) -> Iterator[Trouble]:
    """Yield that a shelf finds no two holes at one height in an upright that carries it."""
    if joint.kind == "shelf pins" and not pin_levels(joint, host, cuts):
        yield Trouble(
            Reason.FIT, f"it finds no two pins at one height in {host.name}", "two rows of holes"
        )


def pin_levels(joint: WantedJoint, host: WantedCopy, cuts: Sequence[Box]) -> list[Fraction]:
    """Return the tops of the holes at the heights at which an upright has two, lowest first."""
    zones = tuple(for_pins(joint, host))
    levels: dict[tuple[Fraction, Fraction], int] = {}
    for cut in cuts:
        if any(zone.contains(cut) for zone in zones):
            level = cut.low[UP], cut.high[UP]
            levels[level] = levels.get(level, 0) + 1
    return sorted(high for (_, high), count in levels.items() if count >= _PINS_AT_AN_END)
