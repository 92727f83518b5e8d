"""Boards joined edge to edge by a tongue in a groove, dry, with room to move (TRADE B10, G2)."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from dryfit.diagnostics import Span
from dryfit.geometry.box import Box
from dryfit.joinery.cut import Cut, Placed, bounded, from_side
from dryfit.kinds.roles import TONGUE
from dryfit.quantities import Display
from dryfit.quantities.units import INCH
from dryfit.wood import Moving

GROOVE = "tongue groove"
"""The role of the groove for a tongue in the mate's edge."""


@dataclass(frozen=True, slots=True)
class TongueSizes:
    """Length and thickness of a tongue, and how much deeper than it the groove is; mm."""

    length: Fraction
    thickness: Fraction
    deeper: Fraction


def usual_tongue_length(display: Display) -> Fraction:
    """Return the usual length of a tongue: 8 mm, 5/16 in (TRADE B10: 8 to 10)."""
    return display.either(Fraction(8), INCH * 5 / 16)


def usual_tongue_thickness(wood: Fraction, display: Display) -> Fraction:
    """Return a third of the board, to the nearest step of the maker's ruler (TRADE B10)."""
    step = display.joint_step
    return (wood / 3 + step / 2) // step * step


def groove_room(display: Display) -> Fraction:
    """Return how much deeper than the tongue a groove is: 1/2 mm, 1/64 in (TRADE B10)."""
    return display.either(Fraction(1, 2), INCH / 64)


def usual_board_gap(cover: Fraction, wood: Moving, display: Display) -> Fraction:
    """Return the gap that a board is laid with, so that it can swell, mm.

    What a board of the visible width `cover` moves between the seasons, rounded up to 1/2 mm or
    1/16 in (TRADE B10: 0.5 to 1.5 mm; G2).
    """
    step = display.either(Fraction(1, 2), INCH / 16)
    return -(-wood.over_the_year(cover) // step) * step


def board_width(clear: Fraction, count: int, overlap: Fraction) -> Fraction:
    """Return the width of each of so many equal boards that fill a row, tongues included."""
    return (clear + (count - 1) * overlap) / count


def row_of(width: Fraction, count: int, overlap: Fraction) -> Fraction:
    """Return how far so many boards of a width reach."""
    return count * width - (count - 1) * overlap


def tongue_box(region: Box, thick: int, sizes: TongueSizes) -> Box:
    """Return the box of the tongue inside what two boards share, in the middle of the wood."""
    low = (region.low[thick] + region.high[thick] - sizes.thickness) / 2
    return bounded(region, thick, low, low + sizes.thickness)


def tongue_and_groove(
    guest: Placed, host: Placed, region: Box, sizes: TongueSizes, span: Span | None
) -> tuple[Cut, ...]:
    """Return a rabbet on both faces of the guest's high edge, and the groove in the host's low one.

    Both rabbets are as wide as the tongue is long.  The groove is cut from end to end.
    """
    _, wide, thick = guest.axes
    edge = from_side(guest.box, wide, 1, sizes.length)
    tongue = tongue_box(region, thick, sizes)
    beside = (
        (-1, edge.low[thick], tongue.low[thick]),
        (1, tongue.high[thick], edge.high[thick]),
    )
    rabbets = tuple(
        Cut(
            guest.name,
            bounded(edge, thick, low, high),
            "rabbet",
            TONGUE,
            thick,
            side,
            "slip",
            host.part,
            span,
        )
        for side, low, high in beside
    )
    deep = from_side(host.box, wide, -1, sizes.length + sizes.deeper)
    slot = bounded(deep, thick, tongue.low[thick], tongue.high[thick])
    return (
        *rabbets,
        Cut(host.name, slot, "long slot", GROOVE, wide, -1, "slip", guest.part, span),
    )
