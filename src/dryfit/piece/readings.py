"""How sums with names in them were read: ``door width = bay width - 4 = 396``.

``width`` alone is the width of the whole piece, and a name may be of several words; what was made
of a line is echoed, so that a maker sees it before it is cut.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from fractions import Fraction

from dryfit.diagnostics import Span
from dryfit.notes.tree import (
    LeftOut,
    Notes,
    Number,
    Operation,
    OverallSize,
    PartSize,
    PartsLine,
    Sum,
    ValueLine,
    ValueName,
)
from dryfit.piece.declared import Declared, SumRead
from dryfit.piece.sum_words import lean_figure
from dryfit.piece.sums import Sums
from dryfit.piece.written_sizes import sizes_on

_RANK = {"+": 1, "-": 1, "*": 2, "/": 2}


def sums_read(notes: Notes, sums: Sums, first: str) -> tuple[SumRead, ...]:
    """Return the values and sizes whose sums name others, in the order of their lines."""
    return tuple(
        SumRead(name, words, sums.quietly(amount, span), span)
        for name, amount, span in _written(notes, first)
        if _names_something(amount) and (words := sum_as_read(amount)) != name
    )


def readings(
    declared: Declared, size: Callable[[str], Fraction | None]
) -> tuple[tuple[str, Span], ...]:
    """Return how each sum was read and what it comes to, with its place.

    `size` gives a figure of the placed piece in mm (``bay.width``), or None where it is not known:
    then the sum is echoed without its result.
    """
    found = []
    for read in declared.sums:
        text, value = f"{read.name} = {read.words}", _value(read, size)
        if value is not None:
            text += f" = {declared.display.shown(value)}"
        found.append((text, read.span))
    return tuple(found)


def sum_as_read(amount: Sum) -> str:
    """Return a sum with every name said in full: ``piece width - 2 * bay width``."""
    if isinstance(amount, Operation):
        rank = _RANK[amount.sign]
        left = _said(amount.left, rank)
        # What is taken away, or divided by, keeps its brackets: 10 - (4 - 1).
        right = _said(amount.right, rank + (amount.sign in "-/"))
        return f"{left} {amount.sign} {right}"
    if isinstance(amount, OverallSize):
        return f"piece {amount.dimension}"
    if isinstance(amount, PartSize):
        return f"{amount.part} {amount.dimension}"
    if isinstance(amount, ValueName):
        return amount.name
    return "?" if isinstance(amount, LeftOut) else amount.span.text()


def _said(amount: Sum, least_rank: int) -> str:
    words = sum_as_read(amount)
    loose = isinstance(amount, Operation) and _RANK[amount.sign] < least_rank
    return f"({words})" if loose else words


def _written(notes: Notes, first: str) -> Iterator[tuple[str, Sum, Span]]:
    for line in notes.statements:
        if isinstance(line, ValueLine):
            yield line.name, line.amount, line.span
        elif isinstance(line, PartsLine):
            for dimension, word in sizes_on(line, first).items():
                yield f"{line.name} {dimension}", word.amount, word.span


def _names_something(amount: Sum) -> bool:
    waiting = [amount]
    while waiting:
        each = waiting.pop()
        if isinstance(each, Operation):
            waiting += [each.left, each.right]
        elif not isinstance(each, Number | LeftOut):
            return True
    return False


def _value(read: SumRead, size: Callable[[str], Fraction | None]) -> Fraction | None:
    if read.amount is None:
        return None
    total = read.amount.value
    for lean in read.amount.leans:
        length = size(lean_figure(lean))
        if length is None:
            return None
        total += lean.factor * length
    return total
