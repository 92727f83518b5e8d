"""One finding, and the collection of a run."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from enum import StrEnum
from fractions import Fraction
from types import MappingProxyType

from dryfit.diagnostics.source import Span

_NO_FIGURES: Mapping[str, Fraction] = MappingProxyType({})


class Severity(StrEnum):
    """How much a finding weighs: CONTRACTS, section check."""

    ERROR = "error"
    WARNING = "warning"
    QUESTION = "question"
    NOTICE = "notice"


_WEIGHT = {
    Severity.ERROR: 3,
    Severity.WARNING: 2,
    Severity.QUESTION: 1,
    Severity.NOTICE: 0,
}


@dataclass(frozen=True, slots=True)
class Note:
    """A second fact about a finding, perhaps at a second place."""

    message: str
    span: Span | None = None


@dataclass(frozen=True, slots=True)
class Hint:
    """What to write instead: an action, and the corrected line where one was tested."""

    message: str
    corrected_line: str | None = None


@dataclass(frozen=True, slots=True)
class Diagnostic:
    """What is wrong, where, why and what to write instead.

    `code` is a word code such as ``mortises-collide``; `rule` the trade rule behind it, such as
    ``H05``, or None; `message` one short line, lower case, without a full stop; `figures` lengths
    in mm by name.
    """

    code: str
    severity: Severity
    message: str
    span: Span | None
    rule: str | None = None
    figures: Mapping[str, Fraction] = field(default_factory=lambda: _NO_FIGURES, hash=False)
    notes: tuple[Note, ...] = ()
    hints: tuple[Hint, ...] = ()

    def sort_key(self) -> tuple[str, int, int, str, str]:
        """Return file, line, column, code and message: the order of every report."""
        if self.span is None:
            return ("", 0, 0, self.code, self.message)
        span = self.span.told()
        return (span.source.name, span.line, span.column, self.code, self.message)

    def as_told(self) -> Diagnostic:
        """Return the finding at the maker's own line, with the line of the pattern as a note."""
        if self.span is None or self.span.used_by is None:
            return self
        inside = Note(f"in the pattern: `{self.span.text()}`", replace(self.span, used_by=None))
        notes = tuple(
            note if note.span is None else Note(note.message, note.span.told())
            for note in self.notes
        )
        return replace(self, span=self.span.told(), notes=(inside, *notes))


Findings = tuple[Diagnostic, ...]
"""Findings of a stage; order does not matter, reports sort by `Diagnostic.sort_key`."""


def once(findings: Iterable[Diagnostic]) -> Findings:
    """Return the findings in their order, each once."""
    kept: list[Diagnostic] = []
    for finding in findings:
        if finding not in kept:
            kept.append(finding)
    return tuple(kept)


def worst(findings: Iterable[Diagnostic]) -> Severity | None:
    """Return the heaviest severity of the findings, or None when there are none."""
    severities = [finding.severity for finding in findings]
    return max(severities, key=_WEIGHT.__getitem__) if severities else None
