"""Sizes as lines write them, by dimension."""

from __future__ import annotations

from collections.abc import Sequence

from dryfit.notes.tree import LeftOut, PartsLine, Sizes, SizeWord
from dryfit.piece.declared import PART_DIMENSIONS


def size_words(sizes: Sequence[SizeWord], first: str) -> dict[str, SizeWord]:
    """Return the sizes by dimension: length, width, thickness (or the word that was written).

    Bare sizes stand in the order length x width x thickness, two are width x thickness; a
    ``units ..., thickness first`` line turns the order round.
    """
    bare = [word for word in sizes if word.dimension is None]
    order = PART_DIMENSIONS if len(bare) > 2 else PART_DIMENSIONS[1:]
    if first == "thickness":
        order = tuple(reversed(order))
    named = {word.dimension: word for word in sizes if word.dimension is not None}
    words = dict(zip(order, bare, strict=False)) | named
    return {
        name: word
        for name, word in words.items()
        if name is not None and not isinstance(word.amount, LeftOut)
    }


def sizes_on(line: PartsLine, first: str) -> dict[str, SizeWord]:
    """Return all sizes of a part's line by dimension; of two for one dimension, the first."""
    found: dict[str, SizeWord] = {}
    for clause in line.clauses:
        if isinstance(clause, Sizes):
            for dimension, word in size_words(clause.sizes, first).items():
                found.setdefault(dimension, word)
    return found
