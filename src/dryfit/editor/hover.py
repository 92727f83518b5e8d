"""What a word of the notes is worked out to be."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from dryfit.diagnostics import Diagnostic, Span
from dryfit.editor.document import Document, document_of, token_at
from dryfit.editor.places import Encoding, Place, column_of, place_of
from dryfit.editor.sums import sum_at, value_line, value_text
from dryfit.notes import Notes, parse
from dryfit.notes.tree import Number
from dryfit.placing.as_text import sum_behind, sums_behind
from dryfit.placing.model import Assembly, Model, Part

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
    if found is None or found[0].line not in document.own:
        return None  # inside a pattern, names stand for parts of every instance
    sense, token = found
    assert token.start_pos is not None
    assert token.end_pos is not None
    span = sense.span(token.start_pos, token.end_pos)
    name = str(token.value)
    if token.type == "VALUE":
        declared = value_line(notes, name)
        value = declared and value_text(declared.amount, notes, document.own_names.unit, model)
        return (f"{span.text()} = {value}", span) if value else None
    if (
        token.type not in ("NAME", "PHRASE")
        or name not in document.own_names.parts
        or model is None
    ):
        return None
    said = _about(name, model)
    return (said, span) if said else None


def _about(name: str, model: Model) -> str | None:
    part = next((known for known in model.parts if known.name == name), None)
    if part is not None:
        return "\n".join(_about_a_part(part, model))
    built = [known for known in model.assemblies if known.stage == name]
    return _about_a_glue_up(built, model) if built else _about_a_space(name, model)


def _about_a_part(part: Part, model: Model) -> list[str]:
    show = model.display.shown
    length = f"{'~' if part.measure else ''}{show(part.length)}"
    sizes = f"{length} x {show(part.width)} x {show(part.thickness)}"
    timber = f", {part.timber}" if part.timber else ""
    unit = ", mm" if model.display.unit == "mm" else ""
    lines = [f"{len(part.copies)} {part.written}: {sizes}{timber}{unit}"]
    sums = sums_behind(part, model)
    if part.shoulder_length is not None and not any(line.startswith("shoulder") for line in sums):
        lines.append(f"shoulder length {show(part.shoulder_length)}")
    lines += sums
    hands = part.hands()
    if len(hands) > 1:
        lines.append("in two hands, " + " and ".join(hands))
    return lines


def _about_a_glue_up(built: list[Assembly], model: Model) -> str:
    first = built[0]
    sizes = " x ".join(model.display.shown(first.box.extent(axis)) for axis in range(3))
    count = f"{len(built)} glue-ups" if len(built) > 1 else "1 glue-up"
    return f"{count}: {', '.join(first.of)}\n{sizes} outside (width x depth x height)"


def _about_a_space(name: str, model: Model) -> str | None:
    """Return the sizes of an opening, or of what else has sizes without being a part."""
    lines = []
    for dimension in ("width", "depth", "height"):
        figure = model.figures.get(f"{name}.{dimension}")
        if figure is not None:
            behind = sum_behind(figure, model.display) if figure.terms else ""
            lines.append(f"{dimension} {behind or model.display.with_unit(figure.value)}")
    return "\n".join(lines) or None
