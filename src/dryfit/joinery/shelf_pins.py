"""Shelf pins: rows of holes in two uprights, on whose pins a loose shelf lies (TRADE B19)."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from fractions import Fraction

from dryfit.diagnostics import Span
from dryfit.geometry.box import Box
from dryfit.joinery.cut import Cut, Placed, bounded, from_side
from dryfit.kinds.roles import PIN_HOLE
from dryfit.quantities import Display
from dryfit.quantities.units import INCH

BEHIND = Fraction(6)
"""What stays of an upright behind a hole, mm (TRADE B19)."""

LEAST_DEEP = Fraction(8)
"""A hole less deep does not hold a pin (common practice)."""

LEAST_PLAY = Fraction(1, 2)
MOST_PLAY = Fraction(3)
"""Between a shelf's end and the upright: 1 is usual; with more a pin holds too little of it."""

UNDER = Fraction(10)
"""How far under a shelf a row stands at least, from its front or back edge (common practice)."""

NEIGHBOURS = 2
"""Holes above and below the one that a shelf is planned on (common practice)."""


@dataclass(frozen=True, slots=True)
class PinSizes:
    """Diameter and depth of the holes, from one to the next, and from the upright's edges; mm."""

    diameter: Fraction
    depth: Fraction
    pitch: Fraction
    set_back: Fraction


def usual_pins(display: Display) -> PinSizes:
    """Return the usual pins: 5, 10 deep, 32 apart, 37 from the edges; or 1/4, 3/8, 1, 1 1/2 in.

    The inch ones by the file's unit: 5 mm and 1/4 in are two sizes (maker's rule M27).
    """
    if display.unit == "mm":
        return PinSizes(Fraction(5), Fraction(10), Fraction(32), Fraction(37))
    return PinSizes(INCH / 4, INCH * 3 / 8, INCH, INCH * 3 / 2)


def usual_play(display: Display) -> Fraction:
    """Return how far the end of a shelf stands from its upright: 1 mm, 1/32 in (B19, C5.5)."""
    return display.either(Fraction(1), INCH / 32)


def row_lines(upright: Box, shelf: Box, across: int, sizes: PinSizes) -> tuple[Fraction, Fraction]:
    """Return where the front and the back row stand: as far from both edges of the upright.

    Where the shelf ends before them they stand under it, `UNDER` from its edge.
    """
    low = max(upright.low[across] + sizes.set_back, shelf.low[across] + UNDER)
    high = min(upright.high[across] - sizes.set_back, shelf.high[across] - UNDER)
    return low, high


def heights(
    undersides: Iterable[Fraction], span: tuple[Fraction, Fraction], sizes: PinSizes
) -> tuple[Fraction, ...]:
    """Return the middles of one row's holes, `sizes.pitch` apart, from the lowest shelf's pin up.

    Two holes below the lowest shelf and two above the highest, all well inside `span`.
    """
    own = sorted(underside - sizes.diameter / 2 for underside in undersides)
    first, last = own[0], own[-1]
    above = -(-(last - first) // sizes.pitch)
    places = (first + sizes.pitch * turn for turn in range(-NEIGHBOURS, above + NEIGHBOURS + 1))
    edge = 2 * sizes.diameter
    return tuple(at for at in places if span[0] + edge <= at <= span[1] - edge)


def nearest(underside: Fraction, middles: Iterable[Fraction], sizes: PinSizes) -> Fraction:
    """Return where a shelf's underside lies on the hole that is nearest to its planned place."""
    tops = [middle + sizes.diameter / 2 for middle in middles]
    return min(tops, key=lambda top: (abs(top - underside), top))


def pin_holes(
    upright: Placed,
    face: tuple[int, int],
    rows: tuple[int, Iterable[Fraction]],
    middles: tuple[int, Iterable[Fraction]],
    sizes: PinSizes,
    span: Span,
) -> Iterator[Cut]:
    """Yield the holes of an upright in the face (axis, side); rows and middles with their axis."""
    axis, side = face
    layer = from_side(upright.box, axis, side, sizes.depth)
    half = sizes.diameter / 2
    (across, lines), (along, places) = rows, (middles[0], tuple(middles[1]))
    for line in lines:
        for place in places:
            box = bounded(layer, across, line - half, line + half)
            box = bounded(box, along, place - half, place + half)
            yield Cut(upright.name, box, "hole", PIN_HOLE, axis, side, None, None, span)
