"""Lines of the notes with a phrase added or changed: how to say outright what was assumed."""

from __future__ import annotations

from functools import lru_cache

from dryfit.diagnostics import Source, Span
from dryfit.notes.reading.lines import SenseLine, sense_lines


def with_phrase(span: Span, phrase: str) -> str:
    """Return the statement at a span with one more phrase at its end, its remarks left out."""
    return f"{_statement(span).text.strip().rstrip(',')}, {phrase}"


def with_words(span: Span, words: str) -> str:
    """Return the statement at a span with the text there replaced, its remarks left out."""
    line = _statement(span)
    start, end = line.offsets(span)
    return f"{line.text[:start]}{words}{line.text[end:]}".strip()


def with_sizes_added(span: Span, sizes: str) -> str:
    """Return the statement at a span with sizes put behind the text there.

    Behind a bare number a comma keeps the two apart: ``tenon 1, 5/16" thick`` is no mixed fraction.
    """
    said = span.text()
    return with_words(span, f"{said}{',' if said[-1:].isdigit() else ''} {sizes}")


def _statement(span: Span) -> SenseLine:
    # A statement may go on over several lines of the text; its span names one of them.
    for line in _lines(span.source):
        if any(stretch.line == span.line for stretch in line.stretches):
            return line
    raise ValueError(span)


@lru_cache(maxsize=1)
def _lines(source: Source) -> tuple[SenseLine, ...]:
    return tuple(sense_lines(source))
