"""Lines one after the other to statements, and what can only be seen in them as a whole."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, field

from dryfit.diagnostics import Diagnostic, Severity
from dryfit.notes.building import Draft, build
from dryfit.notes.building.pattern_lines import EndOfPattern, PatternHeader
from dryfit.notes.continued import swallowed
from dryfit.notes.limits import beyond_limits
from dryfit.notes.mistakes import explained, offered
from dryfit.notes.reading.lexer import Failure, read_line
from dryfit.notes.reading.lines import SenseLine
from dryfit.notes.reading.presumed import presumed
from dryfit.notes.reading.vocabulary import Vocabulary, declared_in
from dryfit.notes.tree import Statement
from dryfit.notes.unknown_names import names_used, told_once
from dryfit.notes.value_names import misleading_values, near_values
from dryfit.notes.whole import joints_without_host, without_doubles

MOST_MISTAKES = 60

_OVERALL = re.compile(r"\s*overall\b", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class LinesRead:
    """The statements of some lines, the findings, and the names that broken lines declare.

    `overall_unread` tells that a line which could not be read may have held the overall size.
    """

    statements: tuple[Statement, ...]
    findings: tuple[Diagnostic, ...]
    unreadable: frozenset[str]
    overall_unread: bool


@dataclass(slots=True)
class _Progress:
    """What was read so far."""

    statements: list[Statement] = field(default_factory=list)
    findings: list[Diagnostic] = field(default_factory=list)
    unreadable: set[str] = field(default_factory=set)
    used: set[str] = field(default_factory=set)
    named_unread: set[str] = field(default_factory=set)
    overall_unread: bool = False


def lines_read(lines: Sequence[SenseLine], words: Vocabulary) -> LinesRead:
    """Return what the lines say, each read by itself with the names that it may use."""
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
    findings = [*told, *doubles, *near_values(statements), *misleading_values(statements)]
    findings.extend(joints_without_host(statements, progress.named_unread))
    return LinesRead(
        statements, tuple(findings), frozenset(progress.unreadable), progress.overall_unread
    )


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
        _note_unread(line, [explained(reading, words)], words, progress)
        return
    draft = Draft(line, words)
    statement = build(reading, draft)
    findings = [offered(mistake, line, words) for mistake in draft.mistakes]
    if any(finding.severity is Severity.ERROR for finding in findings):
        _note_unread(line, findings[:1], words, progress)
    elif not isinstance(statement, PatternHeader | EndOfPattern):
        progress.statements.append(statement)
        progress.findings.extend(findings)


def _note_unread(
    line: SenseLine, findings: list[Diagnostic], words: Vocabulary, progress: _Progress
) -> None:
    progress.findings.extend(findings)
    declared = declared_in(line) or presumed(line, words.parts)
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
