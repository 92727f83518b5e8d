"""What a word of the notes is worked out to be."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from dryfit.diagnostics import Diagnostic, Span
from dryfit.editor.document import Document, Found, document_of, token_at
from dryfit.editor.places import Encoding, Place, column_of, place_of
from dryfit.editor.sums import sum_at, value_line, value_text
from dryfit.editor.things import about_pattern, about_thing
from dryfit.notes import Notes, parse
from dryfit.notes.tree import Number
from dryfit.piece.declared import inner_name
from dryfit.placing.model import Model

_OF_BEFORE = "by the last notes without an error"


@dataclass(frozen=True, slots=True)
class Hover:
    """A few lines of plain text about what stands at a place."""

    text: str
    place: Place


def hover(
    name: str,
    text: str,
    line: int,
    character: int,
    encoding: Encoding,
    environment: Mapping[str, str],
    *,
    model: Model | None,
) -> Hover | None:
    """Return what is known about the word at a place in the protocol's count, or None.

    `model` is the piece as it was last worked out; it may be of an earlier text.
    """
    document = document_of(name, text, environment)
    if isinstance(document, Diagnostic):
        return None
    typed = document.source.lines()
    if line >= len(typed):
        return None
    column = column_of(typed[line], character, encoding)
    notes, _ = parse(document.source, document.patterns)
    told = _on_a_sum(document, notes, line + 1, column, model) or _on_a_name(
        document, notes, line + 1, column, model
    )
    if told is None:
        return None
    said, span = told
    if model is not None and model.source.text != document.source.text:
        said = f"{said}\n({_OF_BEFORE})"
    return Hover(said, place_of(span, encoding))


def _on_a_sum(
    document: Document, notes: Notes, line: int, column: int, model: Model | None
) -> tuple[str, Span] | None:
    found = sum_at(notes, line, column)
    if found is None:
        return None
    told = []
    for amount in dict.fromkeys(reversed(found)):
        if isinstance(amount, Number) and amount.quantity is None:
            continue  # a bare number says itself what it is
        value = value_text(amount, notes, document.own_names.unit, model)
        if value is not None:
            told.append(f"{amount.span.text()} = {value}")
    return ("\n".join(told), found[1].span) if told else None


def _on_a_name(
    document: Document, notes: Notes, line: int, column: int, model: Model | None
) -> tuple[str, Span] | None:
    found = token_at(document, line, column)
    if found is None or found.line.line not in document.own:
        return None  # inside a pattern, names stand for parts of every instance
    said = _about(found, document, notes, model)
    return (said, found.span) if said else None


def _about(found: Found, document: Document, notes: Notes, model: Model | None) -> str | None:
    name, kind = str(found.token.value), found.token.type
    if kind == "VALUE":
        declared = value_line(notes, name)
        value = declared and value_text(declared.amount, notes, document.own_names.unit, model)
        return f"{found.span.text()} = {value}" if value else None
    if kind in ("PATTERNNAME", "PARAMETER"):
        pattern = name if kind == "PATTERNNAME" else found.value_before("PATTERNNAME")
        block = next((known for known in notes.patterns if known.name == pattern), None)
        return about_pattern(block, name if kind == "PARAMETER" else None) if block else None
    if model is None:
        return None
    if kind == "INNER":
        return about_thing(inner_name(found.value_before("NAME") or "", name), model)
    declared_here = kind in ("NAME", "PHRASE") and name in document.own_names.parts
    return about_thing(name, model) if declared_here else None
