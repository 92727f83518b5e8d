"""How the sockets of dovetails widen: a box at half depth, and what its sides lean off it.

At half of its depth a socket is as wide as its box.  Towards one face of the box it is narrower,
towards the other wider, and what one board loses there the other keeps: boxes fill a joint as the
sloping wood does.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from dryfit.geometry.frame import SURFACES, WIDTH, Frame
from dryfit.joinery.form import Side


@dataclass(frozen=True, slots=True)
class Flare:
    """A socket's slope in a part's own frame.

    `toward` is the surface at which it is narrow; `low` and `high` are how far its sides nearer to
    E and to E2 stand in from the box there, and out at the other face; mm.
    """

    low: Fraction
    high: Fraction
    toward: str


@dataclass(frozen=True, slots=True)
class PlacedFlare:
    """A socket's slope in the piece: as `Flare`, with sides by the axis across and a face."""

    low: Fraction
    high: Fraction
    toward: Side

    def seen_from(self, frame: Frame) -> Flare:
        """Return the slope as the part with that frame has it."""
        turned = frame.axes[WIDTH][1] < 0
        low, high = (self.high, self.low) if turned else (self.low, self.high)
        return Flare(low, high, frame.surface_facing(*self.toward))


Range = tuple[Fraction, Fraction]
Ranges = tuple[Range, Range, Range]


def halves(ranges: Ranges, flare: Flare) -> tuple[Ranges, Ranges]:
    """Return a socket's narrow half and its wide half, each as wide as it is at its own middle.

    Together they take as much as the sloping socket does, and hold what they hold as it does.
    """
    direction, far = SURFACES[flare.toward]
    start, end = ranges[direction]
    middle = (start + end) / 2
    near, deep = ((middle, end), (start, middle)) if far else ((start, middle), (middle, end))
    low, high = ranges[WIDTH]
    narrow = (low + flare.low / 2, high - flare.high / 2)
    wide = (low - flare.low / 2, high + flare.high / 2)
    return _with(ranges, direction, near, narrow), _with(ranges, direction, deep, wide)


def _with(ranges: Ranges, direction: int, along: Range, across: Range) -> Ranges:
    changed = list(ranges)
    changed[direction], changed[WIDTH] = along, across
    return changed[0], changed[1], changed[2]
