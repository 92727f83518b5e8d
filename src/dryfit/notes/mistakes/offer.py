"""Corrections are tried before they are offered: the corrected line is read again."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.notes.building import Draft, build
from dryfit.notes.mistake import Mistake, Repair
from dryfit.notes.mistakes.unreadable import mistakes
from dryfit.notes.reading.lexer import Failure, read_line
from dryfit.notes.reading.lines import SenseLine, fold, goes_on, respelled
from dryfit.notes.reading.vocabulary import Vocabulary, with_declared
from dryfit.quantities import Display

_MOST_OFFERS = 3


def offered(mistake: Mistake, line: SenseLine, vocabulary: Vocabulary) -> Diagnostic:
    """Return the finding for a mistake, with those corrections that help."""
    return _finding(mistake, tuple(_hints(mistake, line, vocabulary)))


def explained(failure: Failure, vocabulary: Vocabulary) -> Diagnostic:
    """Return the finding for a line that cannot be read: of the first mistake that fits.

    A guess that only brings the reading further gives way to one that mends the whole line.
    """
    further: Diagnostic | None = None
    for mistake in mistakes(failure, vocabulary):
        if further and not mistake.guess:
            return further
        hints = tuple(_hints(mistake, failure.line, vocabulary))
        mends = any(hint.corrected_line is not None for hint in hints)
        if mends or not mistake.guess:
            return _finding(mistake, hints)
        if hints and further is None:
            further = _finding(mistake, hints)
    raise AssertionError(f"nothing explains line {failure.line.line}")


def _finding(mistake: Mistake, hints: tuple[Hint, ...]) -> Diagnostic:
    return Diagnostic(
        mistake.code,
        mistake.severity,
        mistake.message,
        mistake.span,
        notes=mistake.notes,
        hints=hints,
    )


def _hints(mistake: Mistake, line: SenseLine, vocabulary: Vocabulary) -> Iterator[Hint]:
    corrected, say = 0, _display(vocabulary).examples
    for advice in mistake.advice:
        if isinstance(advice, Hint):
            if corrected or not mistake.guess:
                yield replace(advice, message=say(advice.message))
            continue
        if corrected == _MOST_OFFERS:
            continue
        typed = _corrected(advice)
        tried = respelled(line, typed, advice.span.line)
        if is_readable(tried, vocabulary) and not _would_go_on(typed, advice, line):
            corrected += 1
            yield Hint(say(advice.message), typed)
        elif advice.stands_alone or _goes_further(tried, advice, line, vocabulary):
            corrected += 1
            yield Hint(say(advice.message))


def _display(vocabulary: Vocabulary) -> Display:
    """Return how figures in examples are said: in inches where the notes are, else in mm."""
    return Display.of_unit(vocabulary.unit)


def _would_go_on(typed: str, repair: Repair, line: SenseLine) -> bool:
    """Return whether the corrected line would take the next one for its continuation."""
    return goes_on(fold(typed)) and repair.span.line == line.stretches[-1].line


def _goes_further(
    tried: SenseLine, repair: Repair, line: SenseLine, vocabulary: Vocabulary
) -> bool:
    """Return whether the line with a second mistake is at least read beyond the first."""
    reading = read_line(tried, vocabulary)
    if not isinstance(reading, Failure) or not repair.text:
        return False
    written = line.offsets(repair.span)[0] + len(repair.text)
    return reading.start > written


def is_readable(line: SenseLine, vocabulary: Vocabulary) -> bool:
    """Return whether the line can be read without an error; a remark can."""
    if not line.text:
        return True
    reading = read_line(line, with_declared(vocabulary, line))
    if isinstance(reading, Failure):
        return False
    draft = Draft(line, vocabulary)
    build(reading, draft)
    return all(mistake.severity is not Severity.ERROR for mistake in draft.mistakes)


def _corrected(repair: Repair) -> str:
    span = repair.span
    line = span.source.lines()[span.line - 1]
    return line[: span.column - 1] + repair.text + line[span.end_column - 1 :]
