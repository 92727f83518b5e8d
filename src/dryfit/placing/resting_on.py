"""Errors of places say which way their parts were taken to lie, where no word says it.

When the piece cannot be placed nothing else would tell the maker that an end was taken to face the
front, so that a rail misses it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from dryfit.diagnostics import Diagnostic, Note, Severity
from dryfit.piece.declared import Declared, DeclaredPart

_OF_PLACES = frozenset(
    {
        "button-slot-off-rail",
        "copies-differ",
        "joint-without-contact",
        "lap-of-parallel-parts",
        "no-room-between",
        "no-screw-fits",
        "overlap",
        "place-unknown",
        "size-not-positive",
        "sizes-clash",
        "spread-too-full",
        "tenon-misses-host",
    }
)
_MOST_NOTES = 4


def with_lies(declared: Declared, findings: Sequence[Diagnostic]) -> tuple[Diagnostic, ...]:
    """Return the findings, those about places with what was assumed of the parts in question."""
    return tuple(_with_lies(declared, finding) for finding in findings)


def _with_lies(declared: Declared, finding: Diagnostic) -> Diagnostic:
    if finding.code not in _OF_PLACES or finding.severity is not Severity.ERROR:
        return finding
    said = (
        Note(f"taken for granted: {text}; else add another word to its line", part.name_span)
        for part in _spoken_of(declared, finding)
        for text, _ in part.assumed
    )
    notes = tuple(dict.fromkeys(said))[:_MOST_NOTES]
    return replace(finding, notes=finding.notes + notes)


def _spoken_of(declared: Declared, finding: Diagnostic) -> Iterator[DeclaredPart]:
    # The parts whose lines it points at, and those that these lines join.
    lines = {span.line for span in (finding.span, *(n.span for n in finding.notes)) if span}
    names = {part.name for part in declared.parts if part.span.line in lines}
    for contact in declared.contacts:
        if contact.span.line in lines:
            names |= {contact.guest.part, *(host.part for host in contact.hosts)}
    return (part for part in declared.parts if part.name in names)
