"""Corrections are tried before they are offered: the corrected line is read again."""

from __future__ import annotations

from collections.abc import Iterator

from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.notes.building import Draft, build
from dryfit.notes.mistake import Mistake, Repair
from dryfit.notes.reading.lexer import Failure, read_line
from dryfit.notes.reading.lines import SenseLine, respelled
from dryfit.notes.reading.vocabulary import Vocabulary, with_declared

_MOST_OFFERS = 3


def offered(mistake: Mistake, line: SenseLine, vocabulary: Vocabulary) -> Diagnostic:
    """Return the finding for a mistake, with those corrections that can be read."""
    return Diagnostic(
        mistake.code,
        mistake.severity,
        mistake.message,
        mistake.span,
        notes=mistake.notes,
        hints=tuple(_hints(mistake, line, vocabulary)),
    )


def _hints(mistake: Mistake, line: SenseLine, vocabulary: Vocabulary) -> Iterator[Hint]:
    corrected = 0
    for advice in mistake.advice:
        if isinstance(advice, Hint):
            yield advice
            continue
        if corrected == _MOST_OFFERS:
            continue
        typed = _corrected(advice)
        if is_readable(respelled(line, typed, advice.span.line), vocabulary):
            corrected += 1
            yield Hint(advice.message, typed)
        elif advice.stands_alone:
            yield Hint(advice.message)


def is_readable(line: SenseLine, vocabulary: Vocabulary) -> bool:
    """Return whether the line can be read without an error; a remark can."""
    if not line.text:
        return True
    reading = read_line(line, with_declared(vocabulary, line))
    if isinstance(reading, Failure):
        return False
    draft = Draft(line, vocabulary.unit)
    build(reading, draft)
    return all(mistake.severity is not Severity.ERROR for mistake in draft.mistakes)


def _corrected(repair: Repair) -> str:
    span = repair.span
    line = span.source.lines()[span.line - 1]
    return line[: span.column - 1] + repair.text + line[span.end_column - 1 :]
