"""Findings as text: the full form for a person, the short form of one line for an editor.

The trade rule behind a finding is for programs: it stands in the JSON only.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from dryfit.diagnostics.diagnostic import Diagnostic
from dryfit.diagnostics.source import Span

_UNSHOWABLE = "\ufffd"


def full(findings: Iterable[Diagnostic]) -> str:
    """Return all findings by file and line, an empty line between them.

    ::

        error[unknown-name]: nothing here is called `lges`
          --> stool.dryfit:14:52
           |
        14 | 2 long rails, across, 55 x 20, tenon 20 long into lges
           |                                                   ^^^^
        hint: did you mean `leg`?
        try:  2 long rails, across, 55 x 20, tenon 20 long into legs
    """
    ordered = (each.as_told() for each in sorted(findings, key=Diagnostic.sort_key))
    return "\n\n".join("\n".join(_full_lines(finding)) for finding in ordered)


def short(finding: Diagnostic) -> str:
    """Return ``stool.dryfit:14:52: error[unknown-name]: nothing here is called `lges```."""
    place = f"{_place(finding.span.told())}: " if finding.span else ""
    return _showable(f"{place}{finding.severity.value}[{finding.code}]: {finding.message}")


def _full_lines(finding: Diagnostic) -> Iterator[str]:
    yield _showable(f"{finding.severity.value}[{finding.code}]: {finding.message}")
    if finding.span:
        yield from _excerpt(finding.span)
    for note in finding.notes:
        yield _showable(f"note: {note.message}{_where(note.span, finding.span)}")
    for hint in finding.hints:
        yield _showable(f"hint: {hint.message}")
        if hint.corrected_line is not None:
            yield _showable(f"try:  {hint.corrected_line.strip()}")


def _excerpt(span: Span) -> Iterator[str]:
    number = str(span.line)
    margin = " " * len(number)
    line = _showable(span.source.lines()[span.line - 1])
    yield f"{margin}--> {_showable(_place(span))}"
    yield f"{margin} |"
    yield f"{number} | {line}".rstrip()
    carets = "^" * max(1, span.end_column - span.column)
    yield f"{margin} | {' ' * (span.column - 1)}{carets}"


def _where(span: Span | None, main: Span | None) -> str:
    if span is None:
        return ""
    elsewhere = main is not None and span.source.name != main.source.name
    file = f"{span.source.name}, " if elsewhere else ""
    return f" ({file}line {span.line}, column {span.column})"


def _place(span: Span) -> str:
    return f"{span.source.name}:{span.line}:{span.column}"


def _showable(text: str) -> str:
    """Return the text with one blank or mark for each sign that a terminal would act on."""
    return "".join(_shown(character) for character in text)


def _shown(character: str) -> str:
    if character.isprintable():
        return character
    return " " if character.isspace() else _UNSHOWABLE
