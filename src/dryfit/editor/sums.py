"""What the sums of a text come to, by the figures of the piece as far as it is worked out."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import fields, is_dataclass

from dryfit.diagnostics import Span
from dryfit.notes.tree import Notes, Number, Operation, Sum, ValueLine
from dryfit.piece.sums import Sums
from dryfit.placing.model import Model
from dryfit.quantities import LENGTH, Display, Quantity


def value_text(amount: Sum, notes: Notes, unit: str, model: Model | None) -> str | None:
    """Return what a sum comes to, as it is printed, or None where it cannot be worked out."""
    display = model.display if model else Display()
    sums = _sums(notes, unit, model, display)
    length = sums.length(amount)
    if length is not None:
        about = "about " if display.moved(length) else ""
        return about + display.with_unit(length)
    minutes = sums.minutes(amount)
    return None if minutes is None else f"{minutes} min"


def sum_at(notes: Notes, line: int, column: int) -> tuple[Sum, Sum] | None:
    """Return the whole sum at a place, both from 1, and the smallest part of it there, or None."""
    for statement in notes.statements:
        found = [amount for amount in sums_in(statement) if _covers(amount.span, line, column)]
        if found:
            return found[0], found[-1]
    return None


def value_line(notes: Notes, name: str) -> ValueLine | None:
    """Return the line that gives the value of that canonical name, or None."""
    lines = (line for line in notes.statements if isinstance(line, ValueLine))
    return next((line for line in lines if line.name == name), None)


def _sums(notes: Notes, unit: str, model: Model | None, display: Display) -> Sums:
    figures = model.figures.values() if model else ()
    nowhere = Span(notes.source, 1, 1, 1)
    known = {
        tuple(figure.name.rsplit(".", 1)): Number(
            figure.value, Quantity(figure.value, LENGTH), nowhere
        )
        for figure in figures
    }
    sizes = {(key[0], key[1]): number for key, number in known.items() if len(key) == 2}
    return Sums(
        unit=unit,
        display=display,
        values={line.name: line for line in notes.statements if isinstance(line, ValueLine)},
        sizes={key: number for key, number in sizes.items() if key[0] != "overall"},
        overall={key[1]: number for key, number in sizes.items() if key[0] == "overall"},
        parts=frozenset(part for part, _ in sizes),
    )


def _covers(span: Span, line: int, column: int) -> bool:
    return span.line == line and span.column <= column <= span.end_column


def sums_in(node: object) -> Iterator[Sum]:
    """Yield the sums in a statement, each before its own parts."""
    if isinstance(node, tuple):
        for item in node:
            yield from sums_in(item)
    elif is_dataclass(node):
        if isinstance(node, Sum):
            yield node
        inner = (node.left, node.right) if isinstance(node, Operation) else _fields(node)
        for item in inner:
            yield from sums_in(item)


def _fields(node: object) -> tuple[object, ...]:
    if not is_dataclass(node) or isinstance(node, Span):
        return ()
    return tuple(getattr(node, entry.name) for entry in fields(node))
