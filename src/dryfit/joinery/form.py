"""Cuts that are no boxes: a box around what may be removed, and the form inside it.

Both questions that are asked of such a cut have a safe side.  Whether two parts take up the same
space counts only what surely goes (`Region.takes`); whether a cut runs into a joint counts all
that may go (`Region.meets`).  Both are exact for slants, quarter rounds and arches; of a moulding
only its box is known, so that it surely takes nothing.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from dryfit.geometry.box import Box
from dryfit.geometry.frame import SURFACES, Frame

Side = tuple[int, int]
"""An axis of the piece and -1 or 1: a face of a box."""

SLANTS = frozenset({"taper", "chamfer", "bevel", "key slot", "mitre"})
_FAR = ("R2", "E2", "B")


def _opposite(side: Side) -> Side:
    return side[0], -side[1]


@dataclass(frozen=True, slots=True)
class Form:
    """The form of a cut in a part's own frame.

    `kind`: taper, chamfer, round-over, profile, curve, bevel, key slot, mitre.  `sizes` in mm by
    dimension, an angle in degrees under ``angle``.  `toward` is the surface beside the one that is
    cut into: the other face of an edge, the thin end of a taper, the low side of a bevel, and for a
    curve the far end of the way that it spans (it is the same from both ends); None where the cut
    does not reach that surface.  `profile` is the name of a moulding.
    """

    kind: str
    sizes: tuple[tuple[str, Fraction], ...]
    toward: str | None
    profile: str | None = None


@dataclass(frozen=True, slots=True)
class PlacedForm:
    """The form of a cut in the piece: as `Form`, with `toward` as axis and side."""

    kind: str
    sizes: tuple[tuple[str, Fraction], ...]
    toward: Side | None
    profile: str | None = None

    def seen_from(self, frame: Frame) -> Form:
        """Return the form as the part with that frame has it."""
        if self.toward is None:
            return Form(self.kind, self.sizes, None, self.profile)
        surface = frame.surface_facing(*self.toward)
        if self.kind == "curve":
            surface = _FAR[SURFACES[surface][0]]
        return Form(self.kind, self.sizes, surface, self.profile)


@dataclass(frozen=True, slots=True)
class Region:
    """What a cut removes from a copy in the piece: all of the box where `form` is None.

    `face` is the face of the copy that it is cut into, on which one side of the box lies.
    """

    box: Box
    face: Side
    form: str | None = None
    toward: Side | None = None

    def takes(self, box: Box) -> bool:
        """Return whether all wood inside another box is surely gone."""
        if not self.box.contains(box):
            return False
        if self.form is None:
            return True
        deep, beside = self._deepest(box), self._farthest(box)
        if beside is None:
            return False
        if self.form == "curve":
            return self._under_arch(deep, self._widest(box)) >= 0
        if self.form == "round-over":
            return (1 - deep) ** 2 + (1 - beside) ** 2 >= 1
        return self.form in SLANTS and deep + beside <= 1

    def meets(self, box: Box) -> bool:
        """Return whether some of another box may be gone."""
        common = self.box.overlap(box)
        if common is None:
            return False
        if self.form is None or self.toward is None:
            return True
        near, beside = self._nearest(common, self.face), self._nearest(common, self.toward)
        if self.form == "curve":
            return self._under_arch(near, self._narrowest(common)) > 0
        if self.form == "round-over":
            return (1 - near) ** 2 + (1 - beside) ** 2 > 1
        return self.form not in SLANTS or near + beside < 1

    def completes(self, other: Region) -> bool:
        """Return whether this cut and another one halve one box: what one takes the other leaves.

        So two mitres close a corner: each is cut into its own end, toward the inside of the other.
        """
        return (
            self.form == other.form == "mitre"
            and self.box == other.box
            and self.toward == _opposite(other.face)
            and other.toward == _opposite(self.face)
        )

    def _nearest(self, box: Box, face: Side) -> Fraction:
        """Return how near a box comes to a face, as a share of the cut's own extent there."""
        axis, side = face
        if side < 0:
            return (box.low[axis] - self.box.low[axis]) / self.box.extent(axis)
        return (self.box.high[axis] - box.high[axis]) / self.box.extent(axis)

    def _deepest(self, box: Box) -> Fraction:
        axis, side = self.face
        return 1 - self._nearest(box, (axis, -side))

    def _farthest(self, box: Box) -> Fraction | None:
        if self.toward is None:
            return None
        axis, side = self.toward
        return 1 - self._nearest(box, (axis, -side))

    def _under_arch(self, deep: Fraction, beside: Fraction) -> Fraction:
        """Return a figure above 0 for a point inside an arch, 0 on it, and below 0 in the wood.

        `deep` is its share of the rise, `beside` of half the span from the middle.  The arch is a
        part of a circle; one that rises beyond a half circle is drawn by eye, and taken so.
        """
        assert self.toward is not None
        half, rise = self.box.extent(self.toward[0]) / 2, self.box.extent(self.face[0])
        if rise > half:
            return 1 - beside**2 - deep
        radius = (half**2 + rise**2) / (2 * rise)
        return radius**2 - (half * beside) ** 2 - (radius - rise + deep * rise) ** 2

    def _from_middle(self, box: Box) -> tuple[Fraction, Fraction]:
        """Return both ends of a box along an arch: -1 and 1 are the ends of the arch itself."""
        assert self.toward is not None
        axis = self.toward[0]
        low, size = self.box.low[axis], self.box.extent(axis)
        start, end = (2 * (at - low) / size - 1 for at in (box.low[axis], box.high[axis]))
        return start, end

    def _widest(self, box: Box) -> Fraction:
        start, end = self._from_middle(box)
        return max(abs(start), abs(end))

    def _narrowest(self, box: Box) -> Fraction:
        start, end = self._from_middle(box)
        return Fraction(0) if start <= 0 <= end else min(abs(start), abs(end))
