"""The finding for a line that could not be read to its end."""

from __future__ import annotations

from dryfit.diagnostics import Diagnostic, Severity
from dryfit.notes.reading.lexer import Failure
from dryfit.notes.reading.vocabulary import Vocabulary


def unreadable(failure: Failure, words: Vocabulary) -> Diagnostic:
    """Return the finding for the place where the line stops making sense."""
    del words
    line = failure.line
    span = line.span(failure.start, failure.end)
    if failure.start == failure.end:
        return Diagnostic("line-unfinished", Severity.ERROR, "something is missing here", span)
    written = line.text[failure.start : failure.end]
    return Diagnostic("not-understood", Severity.ERROR, f"`{written}` does not fit here", span)
