"""Board ends: a tongue over the whole width of a plank, with tenons that can slide (TRADE G5, B18).

The plank moves across its grain and the board end does not: the middle tenon is held, and the
mortises and peg holes of the others are longer than what stands in them.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from dryfit.diagnostics import Span
from dryfit.geometry.box import Box
from dryfit.joinery.cut import Cut, Placed, bounded, from_side
from dryfit.joinery.mortise_tenon import TenonSizes, tenon_box, tenon_boxes
from dryfit.joinery.panel import edge_movement
from dryfit.joinery.tongue_groove import GROOVE
from dryfit.quantities import Display
from dryfit.quantities.units import INCH
from dryfit.wood import Moving


def usual_board_end_tongue(display: Display) -> Fraction:
    """Return the usual length of the tongue between the tenons: 10 mm, 3/8 in (from memory)."""
    return display.either(Fraction(10), INCH * 3 / 8)


def plays(middles: Sequence[Fraction], fixed: Fraction, wood: Moving) -> tuple[Fraction, ...]:
    """Return how far each tenon may slide to either side, by how far it stands from what is fixed.

    A strip of wood of that width moves by so much between the seasons, rounded up to 1/2 mm
    (TRADE G2, G5).
    """
    return tuple(
        edge_movement(2 * abs(middle - fixed), wood) if middle != fixed else Fraction(0)
        for middle in middles
    )


def tongue_box(rail: Placed, region: Box, end: int, sizes: TenonSizes) -> Box:
    """Return the box of the tongue: over the whole width, from the shoulder on."""
    length, wide, _ = rail.axes
    tenon = tenon_box(rail, region, sizes)
    whole = bounded(tenon, wide, rail.box.low[wide], rail.box.high[wide])
    stub = from_side(region, length, -end, sizes.tongue)
    return bounded(whole, length, stub.low[length], stub.high[length])


def tongue_groove(
    rail: Placed, host: Placed, region: Box, end: int, sizes: TenonSizes, span: Span | None
) -> tuple[Cut, ...]:
    """Return the groove along the host that takes the tongue, from end to end and a gap deeper."""
    if not sizes.tongue:
        return ()
    axis, run = rail.axes[0], host.axes[0]
    tongue = tongue_box(rail, region, end, sizes)
    low, high = tongue.low[axis], tongue.high[axis]
    deep = (low - sizes.gap, high) if end < 0 else (low, high + sizes.gap)
    box = bounded(bounded(tongue, axis, *deep), run, host.box.low[run], host.box.high[run])
    return (Cut(host.name, box, "long slot", GROOVE, axis, -end, "slip", rail.part, span),)


def sliding_room(rail: Placed, region: Box, sizes: TenonSizes) -> Iterator[Box]:
    """Yield, to both sides of each tenon that slides, the room that its mortise leaves it."""
    wide = rail.axes[1]
    for tenon, play in zip(tenon_boxes(rail, region, sizes), sizes.plays, strict=False):
        if play:
            yield bounded(tenon, wide, tenon.low[wide] - play, tenon.low[wide])
            yield bounded(tenon, wide, tenon.high[wide], tenon.high[wide] + play)
