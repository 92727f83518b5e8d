"""A feature: a region removed from a part, stored once in the part's own frame."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from dryfit.diagnostics import Span
from dryfit.geometry.box import Box
from dryfit.geometry.frame import LENGTH, SURFACES, THICKNESS, WIDTH, Frame
from dryfit.joinery.flare import Flare, halves
from dryfit.joinery.form import Form, Region, Side
from dryfit.joinery.splay import Slopes

Range = tuple[Fraction, Fraction]


@dataclass(frozen=True, slots=True)
class Feature:
    """A cut in part coordinates; mm.

    `kind` is a primitive in the contract's words (end lap, cross slot, long slot, rabbet, mortise,
    hole, notch, mitre, bevel, profile, taper, curve, fingers, tails, pins); `role` the job it does,
    which chooses method and wording: lap, housing, groove, mortise, tenon cheek, tenon shoulder,
    button slot, button tongue, screw hole, pilot hole, finger socket, tail socket, pin socket; of a
    cut with no mate the word of its line (rabbet, hole, taper, chamfer, round-over, profile, curve,
    notch, slot, bevel) or key slot.
    `surface` is the surface that it is cut into.  `along` is measured from R; `across` from E for
    the faces F and B, and from F for the edges E and E2 (and is the range from F for R and R2,
    where `along` is the range from E); `depth` from the surface inwards.  `mate` names the other
    part, `joint` the first joint instance that it belongs to; both None for a declared feature.
    `hands` are the hands of the part that carry it.  `after` names the glue-up after which it is
    cut, or None.  `form` says what of the region goes where that is not all of it, `flare` how the
    sides of a socket lean off it, `slopes` toward which surfaces the whole cut leans.
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
    form: Form | None = None
    flare: Flare | None = None
    slopes: Slopes = ()

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

    def boxes(self, outer: Box, frame: Frame) -> tuple[Box, ...]:
        """Return the removed box, a sloping socket as its narrow half and its wide one."""
        if self.flare is None:
            return (self.box(outer, frame),)
        sizes = tuple(outer.extent(frame.axes[each][0]) for each in (LENGTH, WIDTH, THICKNESS))
        both = halves(self.ranges((sizes[0], sizes[1], sizes[2])), self.flare)
        return tuple(frame.to_piece(outer, each) for each in both)

    def region(self, outer: Box, frame: Frame) -> Region:
        """Return what is removed in the piece from the copy with this box and frame."""
        box, face = self.box(outer, frame), _facing(self.surface, frame)
        if self.form is None:
            return Region(box, face)
        toward = None if self.form.toward is None else _facing(self.form.toward, frame)
        return Region(box, face, self.form.kind, toward)


def _facing(surface: str, frame: Frame) -> Side:
    direction, far = SURFACES[surface]
    axis, sign = frame.axes[direction]
    return axis, sign if far else -sign
