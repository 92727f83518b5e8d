"""What stands on a shelf: as its line says it, else what is usual; kg on each mm of its length."""

from __future__ import annotations

from fractions import Fraction
from types import MappingProxyType

from dryfit.piece.declared import LoadWords

ON_A_METRE = MappingProxyType(
    {"books": 30, "heavy books": 60, "clothes": 15, "tools": 50, "display": 15}
)
"""Kilograms on a metre of shelf: TRADE H39, common practice; of books 30 to 60."""

_DEEP = Fraction(200)
"""A shelf that is less deep in mm holds no row of books (ours)."""


def usual_kind(width: Fraction) -> str:
    """Return what is taken to stand on a shelf that is so deep, where nobody says it."""
    return "books" if width >= _DEEP else "display"


def kilograms_a_mm(words: LoadWords | None, width: Fraction, clear: Fraction) -> Fraction:
    """Return the load on each mm of a shelf `width` deep that is free over `clear` mm."""
    if words is not None and words.kilograms is not None:
        return words.kilograms / (words.every or clear)
    kind = words.kind if words is not None and words.kind else usual_kind(width)
    return Fraction(ON_A_METRE[kind], 1000)
