"""Bought things: those with a place take up space like parts, the others are only listed (M9)."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from dryfit.notes.tree import For, GluedFrom, Lie, OfTimber, OrderWhen, PartsLine, Run, Sizes
from dryfit.piece.declared import BoughtWords, DeclaredPart, Supply
from dryfit.piece.names import Names

_SAYS_NO_PLACE = (For, OrderWhen, Sizes, OfTimber, GluedFrom)


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
    return BoughtWords(names.hosts(next(goes_with, ())), next(ordered, None))


def as_it_stands(line: PartsLine) -> PartsLine:
    """Return the line of a bought thing; it stands where its height and no direction is written."""
    said = any(isinstance(each, Run | Lie) for each in line.clauses)
    high = any(
        word.dimension == "height"
        for each in line.clauses
        if isinstance(each, Sizes)
        for word in each.sizes
    )
    if said or not high:
        return line
    return replace(line, clauses=(Run("upright", line.span), *line.clauses))


def as_bought(part: DeclaredPart) -> DeclaredPart:
    """Return a bought part: it has no grain, so that nothing is assumed of how it lies."""
    return replace(part, stock="bought", timber=None, assumed=())


def _typed_sizes(line: PartsLine) -> str:
    sizes = (each.span.text() for each in line.clauses if isinstance(each, Sizes))
    return ", ".join(sizes)
