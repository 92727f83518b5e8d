"""Bought things: those with a place take up space like parts, the others are only listed (M9)."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from dryfit.notes.tree import (
    For,
    GluedFrom,
    Lie,
    OfTimber,
    OrderWhen,
    PartsLine,
    Run,
    Sizes,
    Weighs,
)
from dryfit.piece.declared import BoughtWords, DeclaredPart, Supply
from dryfit.piece.names import Names
from dryfit.piece.written_sizes import sizes_on

_SAYS_NO_PLACE = (For, OrderWhen, Sizes, OfTimber, GluedFrom, Weighs)


def is_only_listed(line: PartsLine) -> bool:
    """Return whether a line is of a bought thing that has no place in the piece."""
    return line.bought and all(isinstance(each, _SAYS_NO_PLACE) for each in line.clauses)


def supplies(lines: Iterable[PartsLine], names: Names) -> tuple[Supply, ...]:
    """Return the bought things that have no place in the piece."""
    return tuple(
        Supply(
            line.name,
            line.written,
            line.count,
            _typed_sizes(line),
            bought_words(line, names),
            line.span,
        )
        for line in lines
        if is_only_listed(line)
    )


def bought_words(line: PartsLine, names: Names) -> BoughtWords:
    """Return what a bought thing goes with, and when it is ordered."""
    goes_with = (each.parts for each in line.clauses if isinstance(each, For))
    ordered = (each.text for each in line.clauses if isinstance(each, OrderWhen))
    weights = (each.kilograms for each in line.clauses if isinstance(each, Weighs))
    return BoughtWords(
        names.hosts(next(goes_with, ())),
        next(ordered, None),
        _typed_round(line),
        next(weights, None),
    )


def as_it_stands(line: PartsLine) -> PartsLine:
    """Return the line of a bought thing lying so that its sizes are those of the piece.

    What is bought has no grain: ``wide`` is across, ``high`` is up and ``deep`` front to back, and
    the thickness is the one that is left.  A direction that is written wins.
    """
    if any(isinstance(each, Run | Lie) for each in line.clauses):
        return line
    lies = _lies(frozenset(sizes_on(line, "length")))
    words = [Run(lies[0], line.span)] if lies else []
    if lies and lies[1]:
        return replace(line, clauses=(*words, Lie(lies[1], line.span), *line.clauses))
    return replace(line, clauses=(*words, *line.clauses))


def _lies(sizes: frozenset[str]) -> tuple[str, str | None] | None:
    """Return the run and the lie that make sizes by their names those of the piece, if any do."""
    if "length" in sizes:
        return ("upright", None) if "height" in sizes else None
    if "height" in sizes:
        sideways = "depth" in sizes and "width" not in sizes
        return "upright", "facing side" if sideways else "facing front"
    if "width" in sizes:
        return ("front to back", "flat") if "depth" in sizes else ("upright", "facing front")
    return None


def as_bought(part: DeclaredPart) -> DeclaredPart:
    """Return a bought part: it has no grain, so that nothing is assumed of how it lies."""
    return replace(part, stock="bought", timber=None, assumed=())


def _typed_sizes(line: PartsLine) -> str:
    sizes = (" ".join(each.span.text().split()) for each in line.clauses if isinstance(each, Sizes))
    return ", ".join(sizes)


def _typed_round(line: PartsLine) -> str:
    """Return the sizes as typed where one is a diameter, which no part has."""
    words = (word for each in line.clauses if isinstance(each, Sizes) for word in each.sizes)
    return _typed_sizes(line) if any(word.dimension == "diameter" for word in words) else ""
