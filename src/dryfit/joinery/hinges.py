"""Hinges let into a door and its case: how deep, how wide, where (TRADE B23)."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from dryfit.diagnostics import Span
from dryfit.geometry.box import Box
from dryfit.joinery.cut import Cut, Placed, bounded, from_side
from dryfit.kinds.roles import HINGE_RECESS
from dryfit.quantities import Display
from dryfit.quantities.units import INCH

NEAR = Fraction(6)
"""What hangs on hinges stands no further than this from what carries it, mm (a guess of ours)."""

DEEPEST = Fraction(4)
USUAL_DEEP = (Fraction(3, 2), Fraction(5, 2))
"""No recess is deeper than 4; 1.5 to 2.5 is usual (TRADE B23), mm."""

_END = Fraction(70)
_SIXTH = Fraction(1, 6)
_BESIDE = Fraction(10)
_KEPT = Fraction(3)
_TALL = Fraction(1200)
_SCREWS = tuple(Fraction(long) for long in (16, 12, 10))
LEAST_WOOD = _SCREWS[-1] + _KEPT
"""A thinner part holds no screw of a hinge, mm."""

SCREW_THICK = Fraction(3)
"""Thickness of a hinge's screws, mm: 3 x 16 is usual for leaves of 50 to 64 (common practice)."""


@dataclass(frozen=True, slots=True)
class Hinge:
    """A butt hinge: its leaf's length and width, and how thick it is when it is closed; mm."""

    length: Fraction
    width: Fraction
    closed: Fraction

    def depth(self, gap: Fraction) -> Fraction:
        """Return how deep each leaf is let in: half of what the closed hinge is over the gap."""
        return (self.closed - gap) / 2

    @property
    def let_in(self) -> Fraction:
        """Return how much of a leaf's width is let in: half of the barrel stands outside."""
        return self.width - self.closed / 2


@dataclass(frozen=True, slots=True)
class Hanging:
    """Where a door meets what carries it.

    `axis` is the way across the gap, `side` the side of the carrier at which the door is; the
    hinges stand in a row along `row`; their barrels are at `outer` (axis and side) of both.
    """

    axis: int
    side: int
    gap: Fraction
    row: int
    outer: tuple[int, int]
    region: Box


def hanging(door: Placed, carrier: Placed) -> Hanging | None:
    """Return where a door meets its carrier: beside it with a gap, or lying on it; None if not."""
    for axis in range(3):
        for side in (-1, 1):
            gap = _gap(door.box, carrier.box, axis, side)
            if not 0 <= gap <= NEAR:
                continue
            others = [each for each in range(3) if each != axis]
            low, high = list(door.box.low), list(door.box.high)
            for each in others:
                low[each] = max(door.box.low[each], carrier.box.low[each])
                high[each] = min(door.box.high[each], carrier.box.high[each])
            if any(low[each] >= high[each] for each in others):
                continue
            face = carrier.box.high[axis] if side > 0 else carrier.box.low[axis]
            low[axis] = high[axis] = face
            region = Box((low[0], low[1], low[2]), (high[0], high[1], high[2]))
            row = max(others, key=region.extent)
            (across,) = (each for each in others if each != row)
            return Hanging(axis, side, gap, row, _barrels(door, carrier, across), region)
    return None


def _barrels(door: Placed, carrier: Placed, across: int) -> tuple[int, int]:
    """Return the axis and side at which the barrels are: where the two are nearest to flush."""
    low = abs(door.box.low[across] - carrier.box.low[across])
    high = abs(door.box.high[across] - carrier.box.high[across])
    if low == high:
        return across, carrier.outward[across]
    return across, -1 if low < high else 1


def _gap(door: Box, carrier: Box, axis: int, side: int) -> Fraction:
    if side > 0:
        return door.low[axis] - carrier.high[axis]
    return carrier.low[axis] - door.high[axis]


def usual_hinge(thickness: Fraction, long: Fraction, display: Display) -> Hinge:
    """Return the usual hinge for a door so thick, whose hinge side is so long.

    Leaves 50 long, 64 over 600 (TRADE B23: 50 to 64), 2 and 2 1/2 in; 5 or 3/16 in closed, and as
    wide as leaves 3 mm of the door (common practice).
    """
    small = long <= 600
    if display.unit == "mm":
        length, closed = Fraction(50 if small else 64), Fraction(5)
        return Hinge(length, min(Fraction(18), thickness - _KEPT), closed)
    length = INCH * 2 if small else INCH * Fraction(5, 2)
    width = min(INCH * 3 / 4, thickness - INCH / 8)
    return Hinge(length, width, INCH * 3 / 16)


def usual_count(long: Fraction) -> int:
    """Return how many hinges a door takes: three over 1200 (common practice)."""
    return 3 if long > _TALL else 2


def hinge_screw(wood: Fraction) -> Fraction | None:
    """Return how long the screws of a hinge are in a part so thick under the leaf, mm.

    The longest sold up to 16 that is 3 mm shorter than the wood (H20; lengths common practice),
    None where none is.
    """
    return next((long for long in _SCREWS if long <= wood - _KEPT), None)


def middles(region: Box, row: int, count: int, length: Fraction) -> tuple[Fraction, ...] | None:
    """Return the middles: a sixth from each end, 70 at most (TRADE B23); None without room."""
    low, high = region.low[row], region.high[row]
    first = max(min(_END, (high - low) * _SIXTH), length / 2 + _BESIDE)
    if count == 1 or high - low < 2 * first + (length + _BESIDE) * (count - 1):
        return None if high - low < length + 2 * _BESIDE or count > 1 else ((low + high) / 2,)
    step = (high - low - 2 * first) / (count - 1)
    return tuple(low + first + step * turn for turn in range(count))


def recesses(
    door: Placed,
    carrier: Placed,
    hung: Hanging,
    hinge: Hinge,
    places: tuple[Fraction, ...],
    span: Span,
) -> tuple[Cut, ...]:
    """Return the recesses for both leaves of each hinge, open where the barrels are."""
    cuts: list[Cut] = []
    across, outer = hung.outer
    for placed, mate, side in ((door, carrier, -hung.side), (carrier, door, hung.side)):
        layer = from_side(placed.box, hung.axis, side, hinge.depth(hung.gap))
        face = hung.region.high[across] if outer > 0 else hung.region.low[across]
        ends = sorted((face, face - outer * hinge.let_in))
        layer = bounded(layer, across, ends[0], ends[1])
        for place in places:
            half = hinge.length / 2
            box = bounded(layer, hung.row, place - half, place + half)
            cuts.append(
                Cut(
                    placed.name,
                    box,
                    "mortise",
                    HINGE_RECESS,
                    hung.axis,
                    side,
                    None,
                    mate.part,
                    span,
                )
            )
    return tuple(cuts)
