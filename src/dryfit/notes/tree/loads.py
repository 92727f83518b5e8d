"""What a part carries, and what a bought thing weighs."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from dryfit.diagnostics import Span


@dataclass(frozen=True, slots=True)
class Carries:
    """``carries books``, ``carries 30 kg a metre``, ``carries 60 kg``.

    `kind` is what a word says: books, heavy books, clothes, tools, display; else `kilograms` are
    written, on each `every` mm of its length, or in all where that is None.
    """

    kind: str | None
    kilograms: Fraction | None
    every: Fraction | None
    span: Span


@dataclass(frozen=True, slots=True)
class Weighs:
    """``weighs 6 kg``: what each copy of a bought thing weighs, in kg."""

    kilograms: Fraction
    span: Span
