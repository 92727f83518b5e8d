"""What sums refer to: figures of the piece, and the lines of the values that they name."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from dryfit.notes.tree import (
    Number,
    Operation,
    OverallSize,
    PartSize,
    Sum,
    ValueLine,
    ValueName,
)
from dryfit.piece.declared import Behind

Values = Mapping[str, ValueLine]


def behind(amounts: Sequence[Sum], values: Values) -> Behind:
    """Return the figures and the value lines behind some sums, each thing once."""
    figures: dict[str, None] = {}
    lines: dict[str, ValueLine] = {}
    for leaf in _leaves(amounts, values):
        if isinstance(leaf, OverallSize):
            figures[f"overall.{leaf.dimension}"] = None
        elif isinstance(leaf, PartSize):
            figures[f"{leaf.part}.{leaf.dimension}"] = None
        elif isinstance(leaf, ValueName) and leaf.name in values:
            lines[leaf.name] = values[leaf.name]
    return Behind(tuple(figures), tuple(line.amount.span for line in lines.values()))


def is_bare(amount: Sum, values: Values) -> bool:
    """Return whether a sum is made of numbers without units only: then it may be a measure."""
    return all(
        isinstance(leaf, Number) and leaf.quantity is None
        for leaf in _leaves((amount,), values)
        if not (isinstance(leaf, ValueName) and leaf.name in values)
    )


def _leaves(amounts: Sequence[Sum], values: Values) -> Iterator[Sum]:
    # Values are followed to their own sums, each once; with a stack, since a chain may be long.
    waiting, seen = list(amounts), set()
    while waiting:
        amount = waiting.pop()
        if isinstance(amount, Operation):
            waiting += [amount.right, amount.left]
            continue
        yield amount
        if isinstance(amount, ValueName) and amount.name in values and amount.name not in seen:
            seen.add(amount.name)
            waiting.append(values[amount.name].amount)
