"""The whole text of the notes, line by line, to statements and findings."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass, field

from dryfit.diagnostics import Diagnostic, Findings, Severity, Source
from dryfit.notes.building import Draft, build
from dryfit.notes.continued import swallowed
from dryfit.notes.limits import beyond_limits
from dryfit.notes.mistakes import explained, offered
from dryfit.notes.reading.lexer import Failure, read_line
from dryfit.notes.reading.lines import SenseLine, sense_lines
from dryfit.notes.reading.presumed import presumed
from dryfit.notes.reading.vocabulary import Vocabulary, collected, declared_in, vocabulary
from dryfit.notes.text import too_long
from dryfit.notes.tree import Notes, Statement
from dryfit.notes.unknown_names import names_used, told_once
from dryfit.notes.whole import joints_without_host, near_values, overall_missing, without_doubles

MOST_MISTAKES = 60

_INCHES = re.compile(r"\s*units\b[\s:]*(?:in|inch|inches)\b", re.IGNORECASE)
_DECIMAL_COMMA = re.compile(r"\s*units\b.*\bdecimal[ -]comma\b", re.IGNORECASE)
_OVERALL = re.compile(r"\s*overall\b", re.IGNORECASE)


@dataclass(slots=True)
class _Progress:
    """What was read so far."""

    statements: list[Statement] = field(default_factory=list)
    findings: list[Diagnostic] = field(default_factory=list)
    unreadable: set[str] = field(default_factory=set)
    used: set[str] = field(default_factory=set)
    named_unread: set[str] = field(default_factory=set)
    overall_unread: bool = False


def parse(source: Source) -> tuple[Notes, Findings]:
    """Return the notes as far as they can be read, and what is wrong with the rest.

    Never raises, whatever the text.  A line that cannot be read gives one finding and no
    statement; names that it declares are in `Notes.unreadable`.  After `MOST_MISTAKES` findings
    the rest is not read.
    """
    beyond = too_long(source)
    if beyond:
        return Notes(source, ()), (beyond,)
    lines = tuple(sense_lines(source))
    words = names_of(lines)
    progress = _Progress()
    for line in lines:
        _read(line, words, progress)
        if len(progress.findings) >= MOST_MISTAKES:
            progress.findings.append(_too_many(line))
            break
    statements, doubles = without_doubles(progress.statements)
    at = {stretch.line: line for line in lines for stretch in line.stretches}
    told = told_once(
        progress.findings,
        statements,
        progress.used,
        lambda mistake: offered(mistake, at[mistake.span.line], words),
    )
    findings = [*told, *doubles, *near_values(statements)]
    findings.extend(joints_without_host(statements, progress.named_unread))
    if not progress.overall_unread:
        findings.extend(overall_missing(statements))
    return Notes(source, statements, frozenset(progress.unreadable)), tuple(findings)


def names_of(lines: Iterable[SenseLine]) -> Vocabulary:
    """Return the names that the lines of a text declare, and the unit that its lines tell."""
    known = tuple(line for line in lines if beyond_limits(line) is None)
    unit = "in" if any(_INCHES.match(line.text) for line in known) else "mm"
    comma = any(_DECIMAL_COMMA.match(line.text) for line in known)
    return vocabulary(collected(known, presumed), unit, decimal_comma=comma)


def _read(line: SenseLine, words: Vocabulary, progress: _Progress) -> None:
    beyond = beyond_limits(line)
    if beyond:
        progress.findings.append(beyond)
        return
    reading = read_line(line, words)
    progress.used |= names_used(reading.tokens)
    if isinstance(reading, Failure):
        progress.named_unread |= names_used(reading.tokens)
        apart = swallowed(line, reading.start, words)
        if apart:
            progress.findings.extend([apart.finding] if apart.finding else [])
            for part in apart.lines:
                _read(part, words, progress)
            return
        _note_unread(line, [explained(reading, words)], progress)
        return
    draft = Draft(line, words)
    statement = build(reading, draft)
    findings = [offered(mistake, line, words) for mistake in draft.mistakes]
    if any(finding.severity is Severity.ERROR for finding in findings):
        _note_unread(line, findings[:1], progress)
    else:
        progress.statements.append(statement)
        progress.findings.extend(findings)


def _note_unread(line: SenseLine, findings: list[Diagnostic], progress: _Progress) -> None:
    progress.findings.extend(findings)
    declared = declared_in(line)
    if declared:
        progress.unreadable.add(declared.name)
    opener_unknown = any(finding.code == "unknown-opener" for finding in findings)
    if opener_unknown or _OVERALL.match(line.text):
        progress.overall_unread = True


def _too_many(line: SenseLine) -> Diagnostic:
    return Diagnostic(
        "too-many-mistakes",
        Severity.ERROR,
        f"{MOST_MISTAKES} mistakes are told: the lines after this one were not read",
        line.whole(),
    )
