"""Lines of the notes with a phrase added or changed: what to write if an assumption is wrong."""

from __future__ import annotations

from dryfit.diagnostics import Span


def with_phrase(span: Span, phrase: str) -> str:
    """Return the line at a span with one more phrase at its end, its remark left out."""
    line = span.source.lines()[span.line - 1].split("#")[0].strip().rstrip(",")
    return f"{line}, {phrase}"


def with_words(span: Span, words: str) -> str:
    """Return the line at a span with the text there replaced."""
    line = span.source.lines()[span.line - 1]
    changed = f"{line[: span.column - 1]}{words}{line[span.end_column - 1 :]}"
    return changed.split("#", maxsplit=1)[0].strip()
