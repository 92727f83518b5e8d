"""The notes as a whole, tidied: the text of every line that can be read, and all else as typed."""

from __future__ import annotations

from collections.abc import Sequence

from dryfit.diagnostics import Severity, Source
from dryfit.notes.building import Draft, build
from dryfit.notes.limits import beyond_limits
from dryfit.notes.parse import names_by_line
from dryfit.notes.reading.lexer import Failure, read_line
from dryfit.notes.reading.lines import SenseLine, fold, sense_lines
from dryfit.notes.reading.vocabulary import Vocabulary
from dryfit.notes.text import too_long
from dryfit.notes.tidying.remarks import with_remarks
from dryfit.notes.tidying.same_reading import says_the_same
from dryfit.notes.tidying.spacing import spaced
from dryfit.notes.tree import PatternBlock


def tidied(source: Source, patterns: Sequence[PatternBlock] = ()) -> str:
    """Return the text with its blanks in order, line for line, and with the same meaning.

    `patterns` are those that the notes can use besides their own.

    Words, names, numbers, remarks and the order of lines stay; signs that look alike become those
    of the language.  Each line of the result is one of the source: blank lines, remarks on lines
    of their own, and lines that cannot be read without an error are kept as typed.
    """
    if too_long(source):
        return source.text
    typed = source.lines()
    lines = tuple(sense_lines(source))
    written: dict[int, str] = {}
    for line, vocabulary in zip(lines, names_by_line(lines, patterns), strict=True):
        texts = _written(line, typed, vocabulary)
        numbers = (stretch.line for stretch in line.stretches)
        written.update(zip(numbers, texts, strict=False))
    text = "\n".join(with_remarks(typed, written))
    return source.text if too_long(Source(source.name, text)) else text


def _written(line: SenseLine, typed: tuple[str, ...], vocabulary: Vocabulary) -> tuple[str, ...]:
    """Return what to write for the source lines of the line; nothing when it stays as typed."""
    if beyond_limits(line):
        return ()
    reading = read_line(line, vocabulary)
    if isinstance(reading, Failure):
        return ()
    draft = Draft(line, vocabulary)
    build(reading, draft)
    if any(mistake.severity is Severity.ERROR for mistake in draft.mistakes):
        return ()
    texts = spaced(reading, typed)
    if texts is None:
        return ()
    if texts == tuple(fold(typed[stretch.line - 1]) for stretch in line.stretches):
        return texts
    return texts if says_the_same(reading, texts, typed, vocabulary) else ()
