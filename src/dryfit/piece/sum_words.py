"""Sums in words: ``2 x width of bay - 4 mm``."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction

from dryfit.piece.declared import Amount, Lean


def lean_figure(lean: Lean) -> str:
    """Return the name of the figure that a sum leans on: ``bay.width``."""
    return f"{lean.subject}.{lean.dimension}"


def figure_words(figure: str) -> str:
    """Return a figure in words: ``bay.width`` is the width of bay."""
    subject, _, dimension = figure.rpartition(".")
    return f"{dimension} of {subject}" if subject else figure


def times_words(factor: Fraction, label: str) -> str:
    """Return a label so many times, without a sign: ``2 x width of bay``, ``1/3 of width of bay``.

    The sign is that of the amount beside it.
    """
    size = abs(factor)
    if size == 1:
        return label
    return f"{size} x {label}" if size.denominator == 1 else f"{size} of {label}"


def sum_words(amount: Amount, shown: Callable[[Fraction], str]) -> str:
    """Return an amount as a maker says it: a length, or the sum with what it leans on."""
    if not amount.leans:
        return shown(amount.value)
    terms = [
        (lean.factor < 0, times_words(lean.factor, figure_words(lean_figure(lean))))
        for lean in amount.leans
    ]
    if amount.value:
        terms.append((amount.value < 0, shown(abs(amount.value))))
    words = " ".join(f"{'-' if less else '+'} {term}" for less, term in terms)
    return words.removeprefix("+ ")
