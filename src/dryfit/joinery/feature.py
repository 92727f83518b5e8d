"""A feature: a region removed from a part, stored once in the part's own frame."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from dryfit.diagnostics import Span
from dryfit.geometry.box import Box
from dryfit.geometry.frame import LENGTH, SURFACES, THICKNESS, WIDTH, Frame

Range = tuple[Fraction, Fraction]


@dataclass(frozen=True, slots=True)
class Feature:
    """A cut in part coordinates; mm.

    `kind` is a primitive in the contract's words (end lap, cross slot, long slot, mortise, hole,
    notch); `role` the job it does, which chooses method and wording: lap, housing, groove,
    mortise, tenon cheek, tenon shoulder, button slot, button tongue, screw hole, pilot hole.
    `surface` is the surface that it is cut into.  `along` is measured from R; `across` from E for
    the faces F and B, and from F for the edges E and E2 (and is the range from F for R and R2,
    where `along` is the range from E); `depth` from the surface inwards.  `mate` names the other
    part, `joint` the first joint instance that it belongs to; both None for a declared feature.
    `hands` are the hands of the part that carry it.  `after` names the glue-up after which it is
    cut, or None.
    """

    id: str
    kind: str
    role: str
    surface: str
    along: Range
    across: Range
    depth: Fraction
    fit: str | None
    joint: str | None = None
    mate: str | None = None
    hands: tuple[str, ...] = ("A",)
    after: str | None = None
    span: Span | None = None

    def ranges(self, sizes: tuple[Fraction, Fraction, Fraction]) -> tuple[Range, Range, Range]:
        """Return the ranges along, across and deep inside a part of length, width, thickness."""
        normal, side = SURFACES[self.surface]
        size = sizes[normal]
        deep = (size - self.depth, size) if side else (Fraction(0), self.depth)
        if normal == THICKNESS:
            return self.along, self.across, deep
        if normal == WIDTH:
            return self.along, deep, self.across
        return deep, self.along, self.across

    def box(self, outer: Box, frame: Frame) -> Box:
        """Return the removed box in the piece, for the copy with this outside box and frame."""
        sizes = (
            outer.extent(frame.axes[LENGTH][0]),
            outer.extent(frame.axes[WIDTH][0]),
            outer.extent(frame.axes[THICKNESS][0]),
        )
        return frame.to_piece(outer, self.ranges(sizes))
