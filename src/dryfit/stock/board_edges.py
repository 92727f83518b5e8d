"""What of a board is no use along its edges and in bad places, as areas of a layout."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from dryfit.cutting import Area
from dryfit.piece.declared import Have
from dryfit.shop.shop import Shop
from dryfit.stock.boards import sizes
from dryfit.stock.laid_out import Reach, StockBoard
from dryfit.stock.saws import ROUGH_EDGE, down, up

STEP = Fraction(25)
"""A tapering slab is laid out in steps that are so much narrower, in mm, as far as four do."""
MOST_STEPS = 4


def rough_edge(line: Have) -> Fraction:
    """Return what is left out of the width because the far edge is not straight (TRADE A2.6)."""
    return ROUGH_EDGE if line.rough or line.hit_and_miss or line.waney else Fraction(0)


def usable_face(line: Have, shop: Shop) -> tuple[Fraction, Fraction]:
    """Return how long and wide a board is between its trimmed ends and without its rough edge, mm.

    A sheet keeps its factory edges.  Bad places are left out of account.
    """
    long, wide, _ = sizes(line)
    ends = Fraction(0) if line.kind == "sheet" else 2 * shop.allowances["end_trim"]
    return long - ends, wide - rough_edge(line)


WANEY = "waney edge"
"""Why nothing is made of the near edge of a slab under bark."""
TAPER = "narrower here"
"""Why nothing is made of what a slab lacks at its narrow end."""


@dataclass(frozen=True, slots=True)
class BadPlace:
    """Wood of a board, in mm, that nothing is made of, or that is not there; and why."""

    along: Reach
    across: Reach
    why: str


def bad_areas(board: StockBoard) -> Iterator[Area]:
    """Yield what nothing is made of as areas of the layout, rounded up."""
    long, wide, _ = board.sizes
    limit = Area(0, down(long), 0, down(wide - rough_edge(board.line)))
    for place in bad_places(board):
        area = Area(
            down(place.along[0]),
            min(limit.end, up(place.along[1])),
            down(place.across[0]),
            min(limit.high, up(place.across[1])),
        )
        if area.length > 0 and area.width > 0:
            yield area


def bad_places(board: StockBoard) -> tuple[BadPlace, ...]:
    """Return what nothing is made of: what the line says, a waney edge, what a taper lacks.

    Of two waney edges the one at the far side is left out of the width as every rough edge is.  A
    slab that is narrower at one end lacks it at its far edge.
    """
    return tuple(_places(board))


def _places(board: StockBoard) -> Iterator[BadPlace]:
    line, none = board.line, Fraction(0)
    long, wide, _ = board.sizes
    for avoid in line.avoid:
        along, across = avoid.along or (none, long), avoid.across or (none, wide)
        along, across = _within(along, long), _within(across, wide)
        if along[0] < along[1] and across[0] < across[1]:
            yield BadPlace(along, across, avoid.why)
    if line.waney > 1:
        yield BadPlace((none, long), (none, min(ROUGH_EDGE, wide)), WANEY)
    here, there = line.sizes[1], line.other_width
    if here is None or there is None or here == there:
        return
    steps = min(MOST_STEPS, max(1, -(-abs(here - there) // STEP)))
    for step in range(steps):
        start, end = (long * each / steps for each in (step, step + 1))
        narrow = min(here + (there - here) * each / steps for each in (step, step + 1))
        low = max(none, narrow - rough_edge(line))
        yield BadPlace((start, end), (low, wide), TAPER)


def _within(reach: Reach, size: Fraction) -> Reach:
    return max(Fraction(0), reach[0]), min(size, reach[1])
