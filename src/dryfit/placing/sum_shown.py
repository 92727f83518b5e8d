"""A worked-out size as the sum that a maker writes: ``(overall width 940 - 5 x gap 2.5) / 6``.

Each term is shown to the step of the units line where that shows it whole, else as finely as a
fitted joint is set; so is what the sum comes to, with what the list then shows (TRADE 0.10: a
printed sum must add up).
"""

from __future__ import annotations

from fractions import Fraction
from math import lcm

from dryfit.diagnostics import Figure, Term
from dryfit.quantities import Display

Piece = str | tuple[Fraction, bool]
"""Words, or a length with whether it is shown as finely as a fitted one."""


def sum_shown(figure: Figure, display: Display) -> str:
    """Return a figure with its terms, as ``350 = between shoulders 310 + tenon at R 20 + ...``."""
    terms, came_to = sum_pieces(figure, display)
    # The list's own figure stands before the sum already.
    if came_to and display.moved(figure.value):
        terms = (*terms, *came_to[:-2], ", rounded")
    else:
        terms = (*terms, *came_to[2:])
    said = "".join(
        each if isinstance(each, str) else display.shown(each[0], fitted=each[1]) for each in terms
    )
    return f"{display.shown(figure.value)} = {said}"


def sum_pieces(
    figure: Figure, display: Display, *, times: str = "x", minus: str = "-"
) -> tuple[tuple[Piece, ...], tuple[Piece, ...]]:
    """Return the sum, and with its sign of equality what it comes to.

    Where the units line is coarser than that, what the list shows comes last.
    """
    terms = [term for term in figure.terms if term.amount] or list(figure.terms)
    if len(terms) == 1 and terms[0].amount == figure.value:
        return (f"{terms[0].label} ", (figure.value, False)), ()
    parts = lcm(*(term.times.denominator for term in terms))
    pieces: list[Piece] = ["("] if parts > 1 else []
    for index, term in enumerate(terms):
        less = term.amount < 0
        if index or less:
            sign = minus if less else "+"
            pieces.append(f" {sign} " if index else f"{sign} ")
        often = abs(term.times) * parts
        pieces.append(f"{often} {times} {_bare(term)} " if often != 1 else f"{_bare(term)} ")
        pieces.append(_shown(_amount(term), display))
    pieces += [f") / {parts}"] if parts > 1 else []
    came_to: list[Piece] = [" = ", _shown(figure.value, display)]
    total = sum((_printed(term, display) for term in terms), Fraction(0))
    rest = display.rounded(figure.value, fitted=True) - display.rounded(total, fitted=True)
    if rest:
        came_to += [" (", (abs(rest), True), " is rounding)"]
    if display.moved(figure.value):
        came_to += [", rounded ", (figure.value, False)]
    return tuple(pieces), tuple(came_to)


def _bare(term: Term) -> str:
    return term.of or term.label


def _amount(term: Term) -> Fraction:
    return abs(term.amount / term.times)


def _shown(length: Fraction, display: Display) -> tuple[Fraction, bool]:
    return length, display.moved(length)


def _printed(term: Term, display: Display) -> Fraction:
    """Return what a term adds, by its figure as it is printed."""
    amount = _amount(term)
    figure = display.rounded(amount, fitted=display.moved(amount))
    return figure * abs(term.times) * (1 if term.amount > 0 else -1)
