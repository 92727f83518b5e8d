"""Words with lengths among them, which the terminal and the booklet each print in their way."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from dryfit.quantities import Display

Said = tuple[str | Fraction, ...]
"""Words, and lengths in mm."""


def spoken(said: Said, display: Display, *, fitted: bool = False) -> str:
    """Return the words for a terminal, lengths without a unit where they are millimetres."""
    words = (each if isinstance(each, str) else display.shown(each, fitted=fitted) for each in said)
    return "".join(words).replace(" × ", " x ")


def times(sizes: Iterable[Fraction | None]) -> Said:
    """Return sizes as ``985 × 50 × 34``; one that is not known is left out."""
    return between((each for each in sizes if each is not None), " × ")


def between(pieces: Iterable[Fraction | str | Said], words: str) -> Said:
    """Return the pieces with the same words between each two."""
    found: list[str | Fraction] = []
    for index, piece in enumerate(pieces):
        found += [words] if index else []
        found += piece if isinstance(piece, tuple) else (piece,)
    return tuple(found)
