"""The whole text of the notes, line by line, to statements and findings."""

from __future__ import annotations

import re

from dryfit.diagnostics import Diagnostic, Findings, Source
from dryfit.notes.building import Draft, build
from dryfit.notes.mistakes import unreadable
from dryfit.notes.reading.lexer import Failure, read_line
from dryfit.notes.reading.lines import SenseLine, sense_lines
from dryfit.notes.reading.vocabulary import Vocabulary, declared_in, vocabulary
from dryfit.notes.text import too_long
from dryfit.notes.tree import Notes, Statement

_INCHES = re.compile(r"\s*units\b[\s:]*(?:in|inch|inches)\b", re.IGNORECASE)
_DECIMAL_COMMA = re.compile(r"\s*units\b.*\bdecimal[ -]comma\b", re.IGNORECASE)


def parse(source: Source) -> tuple[Notes, Findings]:
    """Return the notes as far as they can be read, and what is wrong with the rest.

    Never raises, whatever the text.  A line gives one finding at most while it cannot be read.
    """
    beyond = too_long(source)
    if beyond:
        return Notes(source, ()), (beyond,)
    lines = tuple(sense_lines(source))
    words = _vocabulary(lines)
    statements: list[Statement] = []
    findings: list[Diagnostic] = []
    for line in lines:
        statement, found = _statement(line, words)
        findings.extend(found)
        if statement:
            statements.append(statement)
    return Notes(source, tuple(statements)), tuple(findings)


def _vocabulary(lines: tuple[SenseLine, ...]) -> Vocabulary:
    unit = "in" if any(_INCHES.match(line.text) for line in lines) else "mm"
    comma = any(_DECIMAL_COMMA.match(line.text) for line in lines)
    return vocabulary(lines, unit, decimal_comma=comma)


def _statement(line: SenseLine, words: Vocabulary) -> tuple[Statement | None, list[Diagnostic]]:
    reading = read_line(line, words)
    if isinstance(reading, Failure):
        return None, [unreadable(reading, words)]
    draft = Draft(line, words.unit)
    return build(reading, draft), draft.findings
