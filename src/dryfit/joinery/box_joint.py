"""Box joints: fingers of one width that fill a corner between them (TRADE B13, H12)."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from math import floor

from dryfit.diagnostics import Span
from dryfit.geometry.box import Box
from dryfit.joinery.corner import Corner, corner_cut
from dryfit.joinery.cut import Cut, Placed
from dryfit.kinds.roles import FINGER

LEAST = 3
MOST = 60
"""Fingers and sockets of a corner: with fewer nothing holds, more nobody cuts."""
_USUAL = Fraction(2, 3)


def fingers_in(width: Fraction, finger: Fraction) -> int | None:
    """Return how many fingers of both boards a width is made of, or None if none fill it."""
    count = width / finger
    return count.numerator if count.denominator == 1 else None


def nearest_widths(width: Fraction, finger: Fraction) -> tuple[Fraction, Fraction]:
    """Return the widths next to one, below and above, that whole fingers fill."""
    below = finger * floor(width / finger)
    return below, below + finger


def nearest_counts(width: Fraction, finger: Fraction) -> tuple[int, int]:
    """Return the odd numbers of fingers next to the one that a width would take, fewer and more.

    An odd number begins and ends alike, so that the corner looks the same from both edges (B13).
    """
    odd = max(LEAST, 2 * floor((width / finger - 1) / 2) + 1)
    return odd, odd + 2


def usual_finger(
    width: Fraction, thickness: Fraction, cutters: Sequence[Fraction]
) -> Fraction | None:
    """Return the finger that a cutter of the shop makes, or None where none fills the width.

    An odd number before an even one, then nearest to 2/3 of the thickness: fingers are as wide as
    the board is thick or somewhat narrower (common practice).
    """
    fitting = [
        (count % 2 == 0, abs(cutter - thickness * _USUAL), cutter)
        for cutter in cutters
        if (count := fingers_in(width, cutter)) is not None and LEAST <= count <= MOST
    ]
    fitting = [row for row in fitting if thickness / 3 <= row[2] <= thickness * Fraction(3, 2)]
    return min(fitting)[2] if fitting else None


def finger_sockets(
    guest: Placed, host: Placed, region: Box, corner: Corner, finger: Fraction, span: Span | None
) -> tuple[Cut, ...]:
    """Return the sockets of both boards: the guest begins with a finger, the host with a socket."""
    count = fingers_in(region.extent(corner.across), finger)
    assert count is not None
    start = region.low[corner.across]
    cuts = []
    for turn in range(count):
        pair = (host, guest) if turn % 2 == 0 else (guest, host)
        place = (start + turn * finger, start + (turn + 1) * finger)
        cuts.append(corner_cut(pair, region, corner, place, ("fingers", FINGER), span))
    return tuple(cuts)


def glued_area(region: Box, corner: Corner, count: int) -> Fraction:
    """Return the area of the cheeks between fingers, long grain on long grain, in mm2."""
    cheek = region.extent(corner.guest_axis) * region.extent(corner.host_axis)
    return (count - 1) * cheek
