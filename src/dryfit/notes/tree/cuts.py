"""Cuts with no mate, as written."""

from __future__ import annotations

from dataclasses import dataclass

from dryfit.diagnostics import Span
from dryfit.notes.tree.references import Offset, Reference, SizeWord, StageName
from dryfit.notes.tree.sums import Sum


@dataclass(frozen=True, slots=True)
class Surface:
    """Where on a part: ``inside``, ``all top edges``, ``back inner edge``, ``bottom end``.

    `noun` is face, edge, end or corner, or None where only a side is named; `words` are inside,
    outside, inner, outer and places; `every` stands for ``all`` and ``each``.
    """

    words: tuple[str, ...]
    noun: str | None
    every: bool
    span: Span


@dataclass(frozen=True, slots=True)
class Extent:
    """How far a cut runs.

    `kind`: through, stopped (``stopped 20 from left``: `start` alone) or stretch (``from 60 from
    left to 100 from right``).  `end` None with a stretch: to the end of the part.
    """

    kind: str
    start: Offset | None
    end: Offset | None
    span: Span


@dataclass(frozen=True, slots=True)
class Row:
    """``rows 37 from front and 37 from back, 12 at 32 from 250``: a row of equal cuts.

    `count` cuts, `pitch` apart, the first `start` from the bottom or the left end unless `place`
    says from where.
    """

    count: int
    pitch: Sum
    start: Sum | None
    place: str | None
    span: Span


@dataclass(frozen=True, slots=True)
class FeatureLine:
    """A cut with no mate: ``FEATURE in PARTS: face or edge, size, where, extent, after STAGE``.

    `kind`: groove, rabbet, hole, taper, chamfer, round-over, profile, curve, notch, slot, bevel or
    keys.  `parts` may name assemblies.  `places` are distances from sides of the part; `ranges`
    sizes that change along the cut (``3 1/2 to 1 3/4``); `profile` the name of a moulding (ogee,
    cove); `each` is ``corner`` or ``end`` with a count (``2 a corner``).
    """

    kind: str
    parts: tuple[Reference, ...]
    surfaces: tuple[Surface, ...]
    sizes: tuple[SizeWord, ...]
    ranges: tuple[tuple[Sum, Sum], ...]
    places: tuple[Offset, ...]
    extent: Extent | None
    rows: tuple[Row, ...]
    count: int | None
    each: str | None
    profile: str | None
    after: StageName | None
    span: Span
