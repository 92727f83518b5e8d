"""Sizes as lines write them, by dimension."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from dryfit.notes.tree import LeftOut, Lie, PartsLine, Sizes, SizeWord
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
    """Return all sizes of a part's line by dimension; of two for one dimension, the first.

    Of a bought thing two bare sizes beside a written thickness are those of its face: width x
    height, or width x depth where it lies flat.  A round one that stands is as wide and as deep as
    its diameter.
    """
    clauses = [clause for clause in line.clauses if isinstance(clause, Sizes)]
    runs = [clause.sizes for clause in clauses]
    if line.bought:
        runs = [_of_a_face(line, run, runs) for run in runs]
    found: dict[str, SizeWord] = {}
    for run in runs:
        for dimension, word in size_words(run, first).items():
            found.setdefault(dimension, word)
    if line.bought and "diameter" in found and "height" in found:
        found = {"width": found["diameter"], "depth": found["diameter"]} | found
    return found


def _of_a_face(
    line: PartsLine, run: tuple[SizeWord, ...], runs: Sequence[tuple[SizeWord, ...]]
) -> tuple[SizeWord, ...]:
    thick = any(word.dimension == "thickness" for other in runs for word in other)
    if not thick or len(run) != 2 or any(word.dimension for word in run):
        return run
    flat = any(isinstance(each, Lie) and each.way == "flat" for each in line.clauses)
    names = ("width", "depth" if flat else "height")
    return tuple(replace(word, dimension=name) for word, name in zip(run, names, strict=True))
