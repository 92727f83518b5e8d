"""What to write where a sum comes to the wrong kind of quantity."""

from __future__ import annotations

from dryfit.diagnostics import Hint, Span
from dryfit.quantities import LENGTH, NUMBER, TIME
from dryfit.quantities.kinds import Kind


def kind_advice(span: Span, wanted: Kind, found: Kind) -> Hint:
    """Return the advice for a sum at a span: the corrected line where one word mends it."""
    if wanted == TIME and found == NUMBER:
        return Hint("give the time its unit", _with_word(span, f"{span.text()} h"))
    if found == NUMBER:
        return Hint("give the number its unit")
    if TIME in (wanted, found):
        return Hint(f"write {wanted.words()}, such as `{'45 min' if wanted == TIME else '45 mm'}`")
    if wanted == LENGTH:
        return Hint("leave out one of the lengths that are multiplied")
    return Hint("look at the units of this sum")


def _with_word(span: Span, word: str) -> str:
    line = span.source.lines()[span.line - 1]
    return f"{line[: span.column - 1]}{word}{line[span.end_column - 1 :]}"
