"""Virtual blanks: a piece of wood in the coordinates of the part that it becomes.

The origin is where the part's marks R, E and F meet.  What is still too long, wide or thick stands
over at R2, E2 and B, so that a blank is a box from the origin less what has been cut from it.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field
from fractions import Fraction

from dryfit.geometry.box import Box
from dryfit.geometry.frame import SURFACES
from dryfit.plan.sawing import SawnBoard
from dryfit.rehearsal.goal import Range, Ranges

ZERO = Fraction(0)
Sizes = tuple[Fraction, Fraction, Fraction]


@dataclass(frozen=True, slots=True)
class Slant:
    """A corner sawn off aslant: of a box the half that is gone, as a mitre, bevel or taper.

    It lies next to the surface that is cut into, `end`, and to that `toward` which it gets deeper.
    """

    ranges: Ranges
    end: str
    toward: str


@dataclass(frozen=True, slots=True)
class Arch:
    """A curve sawn into a surface: an arch inside the box, deepest in the middle of its span."""

    ranges: Ranges
    end: str


@dataclass(frozen=True, slots=True)
class Sawn:
    """Where a blank was sawn out of: its board, its name, and all that it becomes.

    `leaves` is how many it is resawn into; they are `uncut` until then.
    """

    board: SawnBoard
    name: str
    pieces: tuple[str, ...]
    leaves: int = 1
    uncut: bool = False


@dataclass(slots=True)
class Blank:
    """A copy, stave or panel while it is worked.

    `sizes` are length, width and thickness as they are now; `true` names the surfaces that are
    straight, flat and square, so that something can be measured from them; `cuts` what is gone, as
    ranges along, across and deep; `at` counts the steps in which each was taken.  A size that is
    worked by hand to no line of the goal (a stave's thickness) is not `known`, only its bound.
    What a jointer has `skimmed` off comes out of the allowance before the next deed takes the rest.
    `slants` are corners sawn off at an angle, `arches` curves; their boxes are no `cuts`.
    Strips of tapers are `taped` back on the surfaces that they came off, which lie flat so.
    What was `sawn` out of a board can be planed no thicker than `flat` once one face is true.
    Its `waney` edges stay as they grew, and have lost their bark when they are `peeled`.
    It is `close` to its thickness when it was planed so far, to rest; a `strip` is trued to be
    resawn, and is not yet.
    """

    part: str
    sizes: Sizes
    true: set[str] = field(default_factory=set)
    cuts: list[Ranges] = field(default_factory=list)
    slants: list[Slant] = field(default_factory=list)
    arches: list[Arch] = field(default_factory=list)
    taped: set[str] = field(default_factory=set)
    at: list[int] = field(default_factory=list)
    known: list[bool] = field(default_factory=lambda: [True, True, True])
    skimmed: list[Fraction] = field(default_factory=lambda: [ZERO, ZERO, ZERO])
    sawn: Sawn | None = None
    flat: Fraction | None = None
    waney: frozenset[str] = frozenset()
    peeled: bool = False
    close: bool = False
    strip: bool = False

    def resize(self, direction: int, size: Fraction) -> None:
        """Cut or plane the blank to another size along, across or deep."""
        sizes = list(self.sizes)
        sizes[direction] = size
        self.skimmed[direction] = ZERO
        self.sizes = (sizes[0], sizes[1], sizes[2])

    def take(self, ranges: Ranges, step: int) -> None:
        """Remove wood; the ranges lie inside the blank."""
        self.cuts.append(ranges)
        self.at.append(step)

    def measured_from(self, surface: str, limits: Range) -> Range:
        """Return the range in the part's coordinates of distances inwards from a surface."""
        direction, side = SURFACES[surface]
        low, high = limits
        size = self.sizes[direction]
        return (size - high, size - low) if side else (low, high)

    def clipped(self, ranges: Ranges) -> Ranges | None:
        """Return what of the ranges lies in the blank's outside, or None."""
        inside = tuple(
            (max(low, ZERO), min(high, size))
            for (low, high), size in zip(ranges, self.sizes, strict=True)
        )
        if any(low >= high for low, high in inside):
            return None
        return inside[0], inside[1], inside[2]


def box_of(ranges: Ranges) -> Box:
    """Return ranges in a part's coordinates as a box."""
    (a, b), (c, d), (e, f) = ranges
    return Box((a, c, e), (b, d, f))


def left_of(box: Box, taken: Iterable[Box]) -> tuple[Box, ...]:
    """Return boxes that fill what is left of a box when others are taken from it."""
    rest: tuple[Box, ...] = (box,)
    for hole in taken:
        if any(piece.overlap(hole) for piece in rest):
            rest = tuple(part for piece in rest for part in _around(piece, hole))
    return rest


def _around(box: Box, hole: Box) -> tuple[Box, ...]:
    common = box.overlap(hole)
    if common is None:
        return (box,)
    pieces: list[Box] = []
    low, high = list(box.low), list(box.high)
    # What lies to either side of the hole is cut off, axis by axis; the rest goes on.
    for axis in range(3):
        if low[axis] < common.low[axis]:
            top = list(high)
            top[axis] = common.low[axis]
            pieces.append(Box((low[0], low[1], low[2]), (top[0], top[1], top[2])))
        if common.high[axis] < high[axis]:
            foot = list(low)
            foot[axis] = common.high[axis]
            pieces.append(Box((foot[0], foot[1], foot[2]), (high[0], high[1], high[2])))
        low[axis], high[axis] = common.low[axis], common.high[axis]
    return tuple(pieces)
