"""The findings of a text as marks in it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path

from dryfit import workshop
from dryfit.diagnostics import Diagnostic, Findings, Severity, Source, Span
from dryfit.diagnostics.render import short
from dryfit.editor.places import Encoding, Place, character_of, place_of
from dryfit.notes import source_of
from dryfit.shop import ShopFileError
from dryfit.workshop import Checked

_TOP = Place(0, 0, 0)


@dataclass(frozen=True, slots=True)
class Fix:
    """A correction that was read again before it was offered: a whole line to write instead."""

    title: str
    place: Place
    text: str


@dataclass(frozen=True, slots=True)
class Mark:
    """A finding where it is shown; `related` are the second places that it speaks of."""

    place: Place
    severity: Severity
    code: str | None
    message: str
    related: tuple[tuple[Place, str], ...] = ()
    fixes: tuple[Fix, ...] = ()


@dataclass(frozen=True, slots=True)
class Examined:
    """What was found in a text; `checked` is None where it is no text or the shop is missing."""

    marks: tuple[Mark, ...]
    checked: Checked | None = None


def examined(
    name: str,
    text: str,
    shop_file: Path | None,
    environment: Mapping[str, str],
    encoding: Encoding,
    folder: Path | None = None,
) -> Examined:
    """Return all that `dryfit check` finds in a text, each finding with its place.

    `folder` is that of the text, where its inventory lies.
    What has no place in the text, as what is wrong in the shop file, is marked at its top.
    """
    source = source_of(name, text.encode("utf-8", "surrogatepass"))
    if isinstance(source, Diagnostic):
        return Examined(marks((source,), None, encoding))
    try:
        checked = workshop.check(source, shop_file, environment, folder=folder)
    except (ShopFileError, OSError) as error:
        return Examined((Mark(_TOP, Severity.ERROR, None, str(error)),))
    return Examined(marks(checked.findings, source, encoding), checked)


def marks(findings: Findings, source: Source | None, encoding: Encoding) -> tuple[Mark, ...]:
    """Return the findings as marks in the source, in the order of every report."""
    return tuple(
        _mark(finding, source, encoding) for finding in sorted(findings, key=Diagnostic.sort_key)
    )


def _mark(finding: Diagnostic, source: Source | None, encoding: Encoding) -> Mark:
    span = finding.span
    elsewhere = span is not None and source is not None and span.source != source
    lines = [short(finding) if elsewhere else finding.message]
    lines += [note.message for note in finding.notes if note.span is None]
    for hint in finding.hints:
        lines.append(hint.message)
        if hint.corrected_line is not None:
            lines.append(f"try: {hint.corrected_line.strip()}")
    related = tuple(
        (place_of(note.span, encoding), note.message)
        for note in finding.notes
        if note.span is not None and note.span.source == source
    )
    if span is None or elsewhere:
        return Mark(_TOP, finding.severity, finding.code, "\n".join(lines), related)
    return Mark(
        place_of(span, encoding),
        finding.severity,
        finding.code,
        "\n".join(lines),
        related,
        tuple(_fixes(finding, span, encoding)),
    )


def _fixes(finding: Diagnostic, span: Span, encoding: Encoding) -> Iterator[Fix]:
    typed = span.source.lines()[span.line - 1]
    whole = Place(span.line - 1, 0, character_of(typed, len(typed) + 1, encoding))
    for hint in finding.hints:
        if hint.corrected_line is not None:
            yield Fix(hint.message, whole, hint.corrected_line)
