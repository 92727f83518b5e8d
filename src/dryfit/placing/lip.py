"""The edges and ends of a sheet that are covered: lipped with solid wood, or banded."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction

from dryfit.diagnostics import Span
from dryfit.geometry.frame import Frame

ENDS = (("R", "R2"), ("E", "E2"))
"""The surfaces that a lip lies on, which makes a part longer (0) or wider (1)."""


@dataclass(frozen=True, slots=True)
class Lip:
    """What an edge or end of a sheet is covered with: solid wood glued on, or thin banding.

    `surface` (E, E2, R, R2) is the edge in the part frame, the same for all copies.  `thickness`
    in mm is what it adds when it is trimmed: the part's sizes count it in, its core is so much
    less.  `banded` is thin banding that is bought by the metre; else strips are sawn of `timber`.
    """

    surface: str
    thickness: Fraction
    timber: str | None
    banded: bool
    span: Span


@dataclass(frozen=True, slots=True)
class CoveredEdge:
    """An edge of a sheet that is covered, by the axis and side of the piece that it faces."""

    axis: int
    side: int
    thickness: Fraction
    timber: str | None
    banded: bool
    span: Span


def seen_from(frame: Frame, covered: Iterable[CoveredEdge]) -> frozenset[Lip]:
    """Return what covers the edges of a copy with those marks."""
    return frozenset(
        Lip(
            frame.surface_facing(each.axis, each.side),
            each.thickness,
            each.timber,
            each.banded,
            each.span,
        )
        for each in covered
    )


def added(lips: Iterable[Lip], direction: int) -> Fraction:
    """Return how much of a part's size in mm its lips make up, along (0) or across (1)."""
    return sum((lip.thickness for lip in lips if lip.surface in ENDS[direction]), Fraction(0))
