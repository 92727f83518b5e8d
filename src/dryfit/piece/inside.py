"""What stands inside an instance of a pattern: its lines, read as a piece of their own."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import fields, is_dataclass, replace
from fractions import Fraction
from typing import TypeVar

from dryfit.diagnostics import Diagnostic, Findings, Hint, Severity, Source, Span
from dryfit.notes.tree import (
    Number,
    OverallLine,
    PatternBlock,
    PieceLine,
    SizeWord,
    Statement,
    Sum,
    TimberLine,
    UnitsLine,
    ValueLine,
)
from dryfit.piece.declare import declare
from dryfit.piece.declared import PIECE_DIMENSIONS, Declared, Have, Instance
from dryfit.piece.inside_inches import in_inches, told_in_inches
from dryfit.piece.inside_sheets import sheets_for, told_of_sheets
from dryfit.piece.statements import first_line
from dryfit.piece.sums import Sums
from dryfit.piece.whole_lines import display_of
from dryfit.quantities import LENGTH, Display, Quantity

Node = TypeVar("Node")


def declare_inside(
    instance: Instance,
    sizes: tuple[Fraction, Fraction, Fraction],
    settings: Mapping[str, Fraction],
    display: Display,
    *,
    timber: str | None = None,
    stock: Sequence[Have] = (),
) -> tuple[Declared, Findings]:
    """Return the piece inside an instance of these sizes (width, depth, height) and settings, mm.

    Its names are those of the pattern.  Every place in it has the instance's line as `used_by`.
    What the pattern says no wood of is of the `timber`.  A part of a sheet is as thick as the sheet
    in `stock` that is nearly what the pattern says, where none is just that.
    Findings: those of `declare`, parameter-out-of-range.
    """
    block = used_by(instance.block, instance.span)
    inches = in_inches(instance, settings, display)
    given = dict(zip(PIECE_DIMENSIONS, sizes, strict=True)) | dict(settings)
    statements: list[Statement] = [PieceLine(block.written, block.span)]
    if instance.units is not None:
        statements.append(instance.units)
    words = tuple(_size_word(name, given[name], block.span) for name in PIECE_DIMENSIONS)
    statements.append(OverallLine(words, block.span))
    statements += _values(block, {**inches, **settings})
    statements += block.notes.statements
    declared, findings = declare(replace(block.notes, statements=tuple(statements)))
    sheets = sheets_for(declared, timber, stock)
    if sheets:
        if declared.timber is None and timber is not None:
            statements.insert(1, TimberLine(timber, block.span))
        declared, findings = declare(replace(block.notes, statements=tuple(statements)), (), sheets)
        declared = told_of_sheets(declared, sheets, display)
    declared = told_in_inches(declared, instance, inches, display)
    return replace(declared, display=display), findings + _ranges(instance, block, given, display)


def used_by(node: Node, span: Span) -> Node:
    """Return the part of a tree with all its places used by the line at a span."""
    if isinstance(node, Span):
        outer = span if node.used_by is None else used_by(node.used_by, span)
        return replace(node, used_by=outer)
    if isinstance(node, tuple):
        return type(node)(used_by(each, span) for each in node)
    if is_dataclass(node) and not isinstance(node, type | Source):
        changed = {each.name: used_by(getattr(node, each.name), span) for each in fields(node)}
        return replace(node, **changed)
    return node


def _size_word(name: str, value: Fraction, span: Span) -> SizeWord:
    return SizeWord(_length(value, span), name, span)


def _length(value: Fraction, span: Span) -> Number:
    return Number(value, Quantity(value, LENGTH), span)


def _values(block: PatternBlock, settings: Mapping[str, Fraction]) -> list[ValueLine]:
    values = []
    for parameter in block.parameters:
        amount: Sum | None = parameter.default
        if parameter.name in settings:
            amount = _length(settings[parameter.name], parameter.span)
        if amount is not None and parameter.name not in PIECE_DIMENSIONS:
            values.append(ValueLine(parameter.name, parameter.span, amount, parameter.span))
    return values


def _ranges(
    instance: Instance, block: PatternBlock, given: Mapping[str, Fraction], display: Display
) -> Findings:
    sums = _sums_of(instance, block)
    spans = {name: amount.span for name, amount in instance.settings}
    findings: list[Diagnostic] = []
    for parameter in block.parameters:
        value = given.get(parameter.name)
        least = None if parameter.least is None else sums.length(parameter.least)
        most = None if parameter.most is None else sums.length(parameter.most)
        if value is None or least is None or most is None or least <= value <= most:
            continue
        shown = display.with_unit
        findings.append(
            Diagnostic(
                "parameter-out-of-range",
                Severity.ERROR,
                f"the {parameter.name} of `{block.written}` is {shown(value)}; it is made for "
                f"{shown(least)} to {shown(most)}",
                spans.get(parameter.name, instance.span),
                figures={"given": value, "least": least, "most": most},
                hints=(Hint("keep within the range, or copy the pattern and change it"),),
            )
        )
    return (*findings, *sums.findings)


def _sums_of(instance: Instance, block: PatternBlock) -> Sums:
    units = instance.units or first_line(block.notes, UnitsLine)
    return Sums(
        unit=units.unit if units else "mm",
        display=display_of(units),
        values={},
        sizes={},
        overall={},
        parts=frozenset(),
    )
