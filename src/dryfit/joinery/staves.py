"""The boards of an edge-glued panel."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction


@dataclass(frozen=True, slots=True)
class Staves:
    """The boards of an edge-glued panel: how many, and the jointed width of each, in mm.

    Where they differ, `widths` are those of all of them in the order of their names, and `width` is
    the widest; else it is empty.  `fixed` is whether the notes say how many there are.
    """

    count: int
    width: Fraction
    widths: tuple[Fraction, ...] = ()
    fixed: bool = True

    @property
    def each(self) -> tuple[Fraction, ...]:
        """The jointed width of one after another."""
        return self.widths or (self.width,) * self.count

    @property
    def total(self) -> Fraction:
        """The jointed width of all of them side by side."""
        return sum(self.each, Fraction(0))

    def wider(self, more: Fraction) -> Staves:
        """Return as many staves that are so much wider together."""
        share = more / self.count
        widths = tuple(width + share for width in self.widths)
        return Staves(self.count, self.width + share, widths, self.fixed)
