"""Findings as the entries of the ``findings`` array that ends every JSON document."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from fractions import Fraction

from dryfit.diagnostics.diagnostic import Diagnostic, Hint, Note, Severity
from dryfit.quantities.as_json import length_object

Json = dict[str, object]


def findings_json(findings: Iterable[Diagnostic], shown: Callable[[Fraction], str]) -> list[Json]:
    """Return the findings by file, line, column and code; `shown` prints a length in mm."""
    return [finding_json(finding, shown) for finding in sorted(findings, key=Diagnostic.sort_key)]


def finding_json(finding: Diagnostic, shown: Callable[[Fraction], str]) -> Json:
    """Return one finding; what has no place in a text has null there."""
    finding = finding.as_told()
    span = finding.span
    return {
        "code": finding.code,
        "rule": finding.rule,
        "severity": finding.severity.value,
        "message": finding.message,
        "file": span.source.name if span else None,
        "line": span.line if span else None,
        "column": span.column if span else None,
        "end_line": span.line if span else None,
        "end_column": span.end_column if span else None,
        "text": span.text() if span else None,
        "figures": {
            name: length_object(length, shown(length)) for name, length in finding.figures.items()
        },
        "notes": [_note(note) for note in finding.notes],
        "hints": [_hint(hint) for hint in finding.hints],
    }


def severity_counts(findings: Iterable[Diagnostic]) -> dict[str, int]:
    """Return how many findings there are of each severity: errors, warnings, questions, notices."""
    severities = [finding.severity for finding in findings]
    return {f"{severity.value}s": severities.count(severity) for severity in Severity}


def _note(note: Note) -> Json:
    span = note.span
    return {
        "message": note.message,
        "file": span.source.name if span else None,
        "line": span.line if span else None,
        "column": span.column if span else None,
    }


def _hint(hint: Hint) -> Json:
    return {"message": hint.message, "corrected_line": hint.corrected_line}
