"""Pocket screws: which part is bored, where, how long the screws are, how deep they go (TRADE B16).

A slanted hole of 15 degrees begins in the face of one part and comes out in the middle of its end
or edge; the screw in it goes on into the other part.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from fractions import Fraction
from math import ceil

from dryfit.diagnostics import Span
from dryfit.geometry.box import Box
from dryfit.geometry.frame import SURFACES
from dryfit.joinery.cut import Cut, Placed, bounded, from_side
from dryfit.joinery.feature import Feature, Range
from dryfit.joinery.form import PlacedForm
from dryfit.joinery.loose_pieces import spaced
from dryfit.kinds.roles import POCKET
from dryfit.quantities import Display
from dryfit.quantities.units import INCH

ANGLE = Fraction(15)
_TANGENT = Fraction(26795, 100000)
_SINE = Fraction(25882, 100000)
_COSINE = Fraction(966, 1000)
SEAT = Fraction(15)
"""How far before the end the screw's head sits, mm, in wood of 18 to 20; by the jig (TRADE B16)."""

_BORE = Fraction(19, 2)
_INCH_BORE = INCH * 3 / 8
_SHANK = Fraction(5, 2)
"""Half of the hole for the shank, measured across the slant, rounded up; mm."""

TIP = Fraction(3)
"""What stays of the mate before the point, mm (H18)."""

LEAST_HOLD = Fraction(8)
"""What must hold of a screw at least, mm (a guess of ours: two diameters of the thread)."""

THINNEST = Fraction(12)
THICKEST = Fraction(40)
"""Wood that jigs are made for, mm (common practice)."""

EDGE = Fraction(20)
PITCH = Fraction(150)
LEAST_EDGE = Fraction(10)
LEAST_APART = Fraction(20)
"""Screws stand 75 to 150 mm apart and 20 from the edges (TRADE B16).  In members narrower than 60,
as in a face frame, a quarter of the width from each edge, 10 at least (common practice)."""

_NARROW = Fraction(60)
WIDE_FOR_TWO = Fraction(40)
"""A narrower row takes one screw, mm: two stand 10 from the edges and 20 apart at least."""

_BY_THICKNESS = ((16, 25), (22, 32), (32, 38), (36, 50), (40, 64))
"""Screws by the wood that is bored, up to so many mm: TRADE B16 [memory]; that of 50 is a guess of
ours between its rows."""

_INCHES = {25: Fraction(1), 32: Fraction(5, 4), 38: Fraction(3, 2), 50: Fraction(2)}
_LONGEST_INCHES = Fraction(5, 2)


@dataclass(frozen=True, slots=True)
class Boring:
    """How a joint is bored: the part `bored` lies at `side` of the contact face, `mate` beyond.

    `axis` is the normal of the contact face, `row` the axis along which the screws stand; `deep`
    that of the thickness of the bored part.
    """

    bored: Placed
    mate: Placed
    axis: int
    side: int
    row: int
    deep: int

    @property
    def thickness(self) -> Fraction:
        """Return the thickness of the part that is bored, mm."""
        return self.bored.box.extent(self.deep)


def boring(guest: Placed, host: Placed, facing: tuple[int, int]) -> Boring | None:
    """Return which of two parts is bored; `facing` is the host's face.  None for face on face.

    It is the one that ends there, else the one that stands there on its edge, else the guest.
    """
    axis, side = facing
    ranks = [placed.axes.index(axis) for placed in (guest, host)]
    if min(ranks) == 2:
        return None
    turned = ranks[1] < ranks[0]
    bored, mate = (host, guest) if turned else (guest, host)
    deep = bored.axes[2]
    (row,) = {0, 1, 2} - {axis, deep}
    return Boring(bored, mate, axis, -side if turned else side, row, deep)


def usual_count(row: Fraction) -> int:
    """Return how many screws stand in a row: two, or more so that none is over 150 from the next.

    One where two would stand too near to the edges.
    """
    if row < WIDE_FOR_TWO:
        return 1
    return max(2, 1 + ceil((row - 2 * EDGE) / PITCH))


def edge_distance(row: Fraction) -> Fraction:
    """Return how far the first screw stands from the edge in a row; mm."""
    return EDGE if row >= _NARROW else row / 4


def places(region: Box, row: int, count: int) -> tuple[Fraction, ...]:
    """Return the middles of the screws along a contact face."""
    return spaced(region.low[row], region.high[row], count, edge_distance(region.extent(row)))


def pocket_mouths(bore: Boring, region: Box, count: int) -> tuple[tuple[Box, ...], Fraction]:
    """Return the strip of the contact face that each pocket needs, and how far it reaches; mm."""
    half = _INCH_BORE / 2
    strips = tuple(
        bounded(region, bore.row, middle - half, middle + half)
        for middle in places(region, bore.row, count)
    )
    return strips, _reach(bore, _INCH_BORE)


def _reach(bore: Boring, wide: Fraction) -> Fraction:
    """Return how far from the end a bore so wide begins, rounded up to whole mm."""
    return Fraction(ceil(bore.thickness / 2 / _TANGENT + wide / 2 / _SINE))


def crowded(row: Fraction, count: int) -> bool:
    """Return whether so many screws stand too near to one another, or to the edges."""
    if count == 1:
        return row < 2 * LEAST_EDGE
    edge = edge_distance(row)
    return edge < LEAST_EDGE or (row - 2 * edge) / (count - 1) < LEAST_APART


def sold(display: Display) -> tuple[Fraction, ...]:
    """Return the lengths in which pocket screws are sold, shortest first; mm (TRADE B16)."""
    return tuple(_in_units(length, display) for _, length in _BY_THICKNESS)


def usual_length(thickness: Fraction, mate: Fraction, display: Display) -> Fraction | None:
    """Return the screw for wood so thick: the next shorter one where its point would come out.

    None when none holds; `mate` is how deep the other part is along the screw; mm.
    """
    usual = next(length for most, length in _BY_THICKNESS if thickness <= most)
    wanted = _in_units(usual, display)
    fitting = [each for each in sold(display) if each <= wanted and stays_inside(each, mate)]
    return fitting[-1] if fitting and holds(fitting[-1]) else None


def _in_units(length: int, display: Display) -> Fraction:
    if display.unit == "mm":
        return Fraction(length)
    return INCH * _INCHES.get(length, _LONGEST_INCHES)


def penetration(length: Fraction) -> Fraction:
    """Return how far a screw goes into the mate, square to the joint; mm (TRADE B16)."""
    return _COSINE * length - SEAT


def drift(length: Fraction) -> Fraction:
    """Return how far a screw slants away from the middle on its way into the mate; mm."""
    return penetration(length) * _TANGENT


def stays_inside(length: Fraction, mate: Fraction) -> bool:
    """Return whether the point stays 3 mm inside a mate that is so deep."""
    return penetration(length) <= mate - TIP


def holds(length: Fraction) -> bool:
    """Return whether enough of a screw is in the mate."""
    return penetration(length) >= LEAST_HOLD


def pocket_holes(
    bore: Boring, face: int, middles: Iterable[Fraction], screw: Fraction, span: Span, *, inch: bool
) -> Iterator[Cut]:
    """Yield the pockets of a joint, bored from the face at side `face` of the thickness.

    The box is what the slanted bore reaches, rounded up to whole mm along the part.
    """
    wide = _INCH_BORE if inch else _BORE
    half = bore.thickness / 2
    layer = from_side(bore.bored.box, bore.deep, face, min(half + _SHANK, bore.thickness))
    end = from_side(layer, bore.axis, -bore.side, _reach(bore, wide))
    sizes = (("angle", ANGLE), ("diameter", wide), ("screw", screw))
    form = PlacedForm("pocket", sizes, (bore.axis, -bore.side))
    for middle in middles:
        box = bounded(end, bore.row, middle - wide / 2, middle + wide / 2)
        yield Cut(
            bore.bored.name,
            box,
            "hole",
            POCKET,
            bore.deep,
            face,
            None,
            bore.mate.part,
            span,
            form=form,
        )


def mouth_of(
    feature: Feature, sizes: tuple[Fraction, Fraction, Fraction]
) -> tuple[Range, Range, Range] | None:
    """Return what of a pocket shows on the surface, as ranges in a part of these sizes.

    None for any other feature.
    """
    form = feature.form
    if feature.role != POCKET or form is None or form.toward is None:
        return None
    ranges = list(feature.ranges(sizes))
    direction, far = SURFACES[form.toward]
    low, high = ranges[direction]
    long = min(dict(form.sizes)["diameter"] / _SINE, high - low)
    ranges[direction] = (low, low + long) if far else (high - long, high)
    return ranges[0], ranges[1], ranges[2]
