"""Dovetails: tails on one board, pins on the other, through or behind a lap (TRADE B14, B15)."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from math import ceil, floor

from dryfit.diagnostics import Span
from dryfit.geometry.box import Box
from dryfit.joinery.corner import Corner, corner_cut
from dryfit.joinery.cut import Cut, Placed
from dryfit.joinery.flare import PlacedFlare
from dryfit.kinds.roles import PIN, TAIL
from dryfit.quantities import Display
from dryfit.quantities.units import INCH

Range = tuple[Fraction, Fraction]

SOFTWOOD_SLOPE, HARDWOOD_SLOPE = Fraction(1, 6), Fraction(1, 8)
"""How far a side leans off for each mm of depth (B14: 9.5 and 7.1 degrees)."""
_HALF = Fraction(1, 2)


@dataclass(frozen=True, slots=True)
class Tails:
    """The tails of a corner, all measured where they are widest, at their ends; mm.

    `half_pin` is what stays outside of the first and the last tail, `pin` what stands between two,
    `slope` how far each side leans for each mm of the tails' length.
    """

    count: int
    tail: Fraction
    pin: Fraction
    half_pin: Fraction
    slope: Fraction


def usual_pin(display: Display) -> Fraction:
    """Return how narrow a pin is at its narrow end, and a half pin (B14: 6 mm, 1/4 in)."""
    return display.either(Fraction(6), INCH / 4)


def wanted_tail(display: Display) -> Fraction:
    """Return how wide a tail is wanted: 20 to 30 mm, about 1 in (B14)."""
    return display.either(Fraction(25), INCH)


def usual_count(width: Fraction, pin: Fraction, wanted: Fraction) -> int:
    """Return how many tails stand in a width, one at least (B14), halves down."""
    return max(1, ceil((width - pin) / (wanted + pin) - _HALF))


def tail_width(width: Fraction, count: int, pin: Fraction, half_pin: Fraction) -> Fraction:
    """Return how wide each tail is at its end (B14: 3 7/8 in, 3 tails, 1/4 in pins: 0.958 in)."""
    return (width - 2 * half_pin - (count - 1) * pin) / count


def usual_lap(thickness: Fraction, display: Display) -> Fraction:
    """Return the wood that stays before half-blind tails: a quarter, 4 mm at least (B15).

    On whole mm, or sixteenths, upwards.
    """
    step = display.joint_step
    least = display.either(Fraction(4), INCH * Fraction(3, 16))
    return max(least, step * ceil(thickness / 4 / step))


def tail_ranges(start: Fraction, tails: Tails, lean: Fraction) -> tuple[Range, ...]:
    """Return where the tails stand across, each as wide as it is at half of its length.

    `lean` is by how much a side leans over the whole length of the tails.
    """
    first, pitch = start + tails.half_pin, tails.tail + tails.pin
    inset = lean / 2
    return tuple(
        (first + turn * pitch + inset, first + turn * pitch + tails.tail - inset)
        for turn in range(tails.count)
    )


def pin_ranges(start: Fraction, end: Fraction, tails: tuple[Range, ...]) -> tuple[Range, ...]:
    """Return what lies outside and between the tails: the pins, half pins first and last."""
    edges = (start, *(side for each in tails for side in each), end)
    return tuple(zip(edges[::2], edges[1::2], strict=True))


def dovetail_sockets(
    tail_board: Placed,
    pin_board: Placed,
    region: Box,
    corner: Corner,
    tails: Tails,
    span: Span | None,
) -> tuple[Cut, ...]:
    """Return what is cut out between the tails, for the pins, and between the pins, for the tails.

    The tails widen towards their ends, so that the pins are narrow there.
    """
    axis, end = _tail_end(tail_board, corner)
    start, last = region.low[corner.across], region.high[corner.across]
    lean = tails.slope * region.extent(axis)
    solid = tail_ranges(start, tails, lean)
    return (
        *_for_pins(tail_board, pin_board, region, corner, solid, (start, last, lean), span),
        *(
            corner_cut(
                (pin_board, tail_board),
                region,
                corner,
                place,
                ("pins", PIN),
                span,
                # Narrow at the foot of the tails, which is the inner face of the pin board.
                PlacedFlare(lean / 2, lean / 2, (axis, -end)),
            )
            for place in solid
        ),
    )


def _for_pins(
    tail_board: Placed,
    pin_board: Placed,
    region: Box,
    corner: Corner,
    solid: tuple[Range, ...],
    bounds: tuple[Fraction, Fraction, Fraction],
    span: Span | None,
) -> Iterator[Cut]:
    start, last, lean = bounds
    axis, end = _tail_end(tail_board, corner)
    for low, high in pin_ranges(start, last, solid):
        flare = PlacedFlare(
            lean / 2 if low != start else Fraction(0),
            lean / 2 if high != last else Fraction(0),
            (axis, end),
        )
        job = ("tails", TAIL)
        yield corner_cut((tail_board, pin_board), region, corner, (low, high), job, span, flare)


def _tail_end(tail_board: Placed, corner: Corner) -> tuple[int, int]:
    if tail_board.axes[0] == corner.guest_axis:
        return corner.guest_axis, corner.guest_end
    return corner.host_axis, corner.host_end


def narrowest(tails: Tails, deep: Fraction) -> Fraction:
    """Return how wide a tail is at its foot, where it is narrowest."""
    return tails.tail - 2 * tails.slope * deep


def pins_from(slope: Fraction) -> int:
    """Return a slope as the trade says it: 6 of ``1 in 6``."""
    return floor(1 / slope)


def glued_area(region: Box, corner: Corner, count: int) -> Fraction:
    """Return the area of the cheeks of the tails, in mm2; their slope adds less than a 50th."""
    return 2 * count * region.extent(corner.guest_axis) * region.extent(corner.host_axis)
