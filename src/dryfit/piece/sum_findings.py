"""What may be wrong with a sum, in words."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from fractions import Fraction

from dryfit.diagnostics import Diagnostic, Hint, Severity, Span
from dryfit.notes.tree import PartSize
from dryfit.piece.declared import PIECE_DIMENSIONS
from dryfit.piece.kind_advice import kind_advice
from dryfit.piece.leaning import LinearForm
from dryfit.piece.sum_words import figure_words, lean_figure
from dryfit.quantities import Display
from dryfit.quantities.kinds import Kind

_MOST_LINKS = 12


def not_known_here(form: LinearForm, span: Span) -> Diagnostic:
    """Return size-not-written: what must be known now leans on a size that is not."""
    figure = lean_figure(form.leans[0])
    return _error(
        "size-not-written",
        f"the {figure_words(figure)} is known only once the piece is placed: sizes and places of "
        "parts may lean on it, this may not",
        span,
        f"write a measure here, or write how large {figure} is",
    )


def not_linear(span: Span) -> Diagnostic:
    """Return not-linear: sizes that are not known yet are multiplied or divided."""
    return _error(
        "not-linear",
        "sizes that are known only once the piece is placed cannot be multiplied with or divided "
        "by one another",
        span,
        "add them, or take one so many times: `bay.width / 3`, `2 * bay.width - 4`",
    )


def no_such_size(
    size: PartSize, parts: Collection[str], spaces: Collection[str]
) -> Diagnostic | None:
    """Return value-has-no-size where the name has no size of that dimension, or None."""
    if size.part in spaces:
        if size.dimension in PIECE_DIMENSIONS:
            return None
        ways = " or ".join(f"{size.part}.{dimension}" for dimension in PIECE_DIMENSIONS)
        message = f"`{size.part}` is a space, which has a width, a depth and a height"
        return _error("value-has-no-size", message, size.span, f"write {ways}")
    if size.part in parts:
        return None
    message = f"`{size.part}` is not a part, so it has no {size.dimension}"
    return _error("value-has-no-size", message, size.span, "name a part")


def circle(keys: Sequence[str], span: Span) -> Diagnostic:
    """Return circle: written sums that lean on each other, the first one last again."""
    chain = [name.removeprefix("value ") for name in keys]
    if len(chain) > _MOST_LINKS:
        chain = [*chain[:5], "...", *chain[-5:]]
    return _error(
        "circle",
        f"these lean on each other in a circle: {' -> '.join(chain)}",
        span,
        "give one of them as a plain measure",
    )


def chain_too_long(longest: int, span: Span) -> Diagnostic:
    """Return sum-too-long: sums that lean one on the other, too many to follow."""
    return _error(
        "sum-too-long",
        f"more than {longest} sums lean one on the other here",
        span,
        "give one of them as a plain measure",
    )


def wrong_kind(span: Span, wanted: Kind, found: Kind) -> Diagnostic:
    """Return wrong-kind: a time, say, where a length is wanted."""
    message = f"this should be {wanted.words()}, but it is {found.words()}"
    hints = (kind_advice(span, wanted, found),)
    return Diagnostic("wrong-kind", Severity.ERROR, message, span, hints=hints)


def size_huge(value: Fraction, span: Span, display: Display, unit: str) -> Diagnostic:
    """Return the question whether a size of more than any board is meant."""
    return Diagnostic(
        "size-huge",
        Severity.QUESTION,
        f"{display.with_unit(value)} is longer than any board; is that meant?",
        span,
        rule="H37",
        figures={"size": value},
        hints=(Hint(f"numbers without a unit are in {unit}"),),
    )


def _error(code: str, message: str, span: Span, hint: str) -> Diagnostic:
    return Diagnostic(code, Severity.ERROR, message, span, hints=(Hint(hint),))
