"""Words with lengths among them, which the terminal and the booklet each print in their way."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction

from dryfit.quantities import Display


@dataclass(frozen=True, slots=True)
class Fine:
    """A length in mm that is shown as settings are, to 0.1 mm: what was measured, as 17.6."""

    length: Fraction


Said = tuple[str | Fraction | Fine, ...]
"""Words, and lengths in mm."""


def spoken(said: Said, display: Display) -> str:
    """Return the words for a terminal, lengths without a unit where they are millimetres."""
    words = (_spoken(each, display) for each in said)
    return "".join(words).replace(" × ", " x ")


def _spoken(each: str | Fraction | Fine, display: Display) -> str:
    if isinstance(each, Fine):
        return display.shown(each.length, fitted=True)
    return each if isinstance(each, str) else display.shown(each)


def with_unit(said: Said, display: Display) -> str:
    """Return the words as a sentence, each length with its unit."""
    return "".join(_with_unit(each, display) for each in said)


def _with_unit(each: str | Fraction | Fine, display: Display) -> str:
    if isinstance(each, Fine):
        return display.with_unit(each.length, fitted=True)
    return each if isinstance(each, str) else display.with_unit(each)


def at_the_saw(sizes: Iterable[Fraction]) -> Said:
    """Return sizes as the saw is set to them, so that a list of cuts adds up."""
    return between(((Fine(each),) for each in sizes), " × ")


def measured(sizes: tuple[Fraction, Fraction, Fraction]) -> Said:
    """Return the sizes of a board or a blank of it: its thickness as it measures."""
    long, wide, thick = sizes
    return between((long, wide, (Fine(thick),)), " × ")


def times(sizes: Iterable[Fraction | None]) -> Said:
    """Return sizes as ``985 × 50 × 34``; one that is not known is left out."""
    return between((each for each in sizes if each is not None), " × ")


def between(pieces: Iterable[Fraction | str | Said], words: str) -> Said:
    """Return the pieces with the same words between each two."""
    found: list[str | Fraction | Fine] = []
    for index, piece in enumerate(pieces):
        found += [words] if index else []
        found += piece if isinstance(piece, tuple) else (piece,)
    return tuple(found)
