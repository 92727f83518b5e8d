"""Cuts with no mate, as declared."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from dryfit.diagnostics import Span
from dryfit.piece.declared.amounts import NOTHING_BEHIND, Amount, Behind, PlacedAmount
from dryfit.piece.declared.hosts import Host


@dataclass(frozen=True, slots=True)
class SurfaceWords:
    """``all top edges``: see `notes.tree.Surface`."""

    words: tuple[str, ...]
    noun: str | None
    every: bool
    span: Span


@dataclass(frozen=True, slots=True)
class Stretch:
    """How far a cut runs along its part: through, stopped or stretch; see `notes.tree.Extent`."""

    kind: str
    start: PlacedAmount | None
    end: PlacedAmount | None
    span: Span


@dataclass(frozen=True, slots=True)
class RowOfCuts:
    """`count` equal cuts `pitch` apart, the first `start` from `place`."""

    count: int
    pitch: Fraction
    start: Fraction | None
    place: str | None
    span: Span


@dataclass(frozen=True, slots=True)
class DeclaredFeature:
    """A cut with no mate: ``groove in aprons: inside, 6 wide, 9 deep, 12 from top, through``.

    `kind` as in `notes.tree.FeatureLine`.  `sizes` in mm by dimension (width, depth, length,
    diameter, radius), an angle in degrees under ``angle``; `ranges` are pairs that change along the
    cut.  `parts` may name assemblies.  `late` are sizes that only the placed piece knows.
    """

    kind: str
    parts: tuple[Host, ...]
    surfaces: tuple[SurfaceWords, ...]
    sizes: tuple[tuple[str, Fraction], ...]
    ranges: tuple[tuple[Fraction, Fraction], ...]
    places: tuple[PlacedAmount, ...]
    extent: Stretch | None
    rows: tuple[RowOfCuts, ...]
    count: int | None
    each: str | None
    profile: str | None
    after: str | None
    span: Span
    behind: Behind = NOTHING_BEHIND
    late: tuple[tuple[str, Amount], ...] = ()

    def says(self, dimension: str) -> bool:
        """Return whether a size is written, known or not."""
        return dimension in dict(self.sizes) or dimension in dict(self.late)

    def size(self, dimension: str) -> Fraction | None:
        """Return a size in mm (an angle in degrees), or None when it is not written."""
        return dict(self.sizes).get(dimension)
