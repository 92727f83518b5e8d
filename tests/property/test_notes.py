"""Whatever the text, it is read to an end, and every place that is told lies in it."""

import random
from collections.abc import Iterator
from dataclasses import fields, is_dataclass

import pytest
from hypothesis import given
from tests.property.meaning import statements
from tests.property.strategies_notes import (
    FLAWLESS,
    TO_DAMAGE,
    anything,
    damaged,
    damaged_notes,
    salad,
)

from dryfit.diagnostics import Diagnostic, Source, Span
from dryfit.diagnostics.render import full
from dryfit.notes import Notes, parse, source_of
from dryfit.notes.tree import PatternBlock
from dryfit.patterns import shipped
from dryfit.quantities import Quantity

DAMAGED_FILES = 300


def spans(tree: object) -> Iterator[Span]:
    """All places in a statement or a finding."""
    if isinstance(tree, Span):
        yield tree
    elif isinstance(tree, tuple):
        for item in tree:
            yield from spans(item)
    elif is_dataclass(tree) and not isinstance(tree, Source | Quantity | type):
        for field in fields(tree):
            yield from spans(getattr(tree, field.name))


def own_spans(blocks: tuple[PatternBlock, ...]) -> Iterator[Span]:
    """All places of a text's own patterns, not of those that they use from elsewhere."""
    for block in blocks:
        yield from spans((block.span, block.name_span, block.parameters, block.notes.statements))


def read(text: str) -> tuple[Notes, tuple[Diagnostic, ...]]:
    """The notes of a text, after everything that must hold for any text was checked."""
    source = Source("a.dryfit", text)
    notes, findings = parse(source, shipped())
    lines = source.lines()
    own = tuple(block for block in notes.patterns if block.notes.source == source)
    for span in (*spans(notes.statements), *own_spans(own), *spans(findings)):
        assert 1 <= span.line <= len(lines)
        assert 1 <= span.column <= span.end_column <= len(lines[span.line - 1]) + 1
    assert parse(source, shipped()) == (notes, findings)
    full(findings)
    return notes, findings


def corrected(text: str, finding: Diagnostic) -> Iterator[str]:
    """The text with each correction of the finding put in."""
    for hint in finding.hints:
        if hint.corrected_line is not None and finding.span is not None:
            lines = text.split("\n")
            lines[finding.span.line - 1] = hint.corrected_line
            yield "\n".join(lines)


@given(anything)
def test_any_text_is_read_to_an_end(text: str) -> None:
    read(text)
    source_of("a.dryfit", text.encode("utf-8", "surrogatepass"))


@given(salad)
def test_word_salad_is_read_to_an_end(text: str) -> None:
    read(text)


@given(damaged_notes)
def test_damaged_notes_are_read_to_an_end(text: str) -> None:
    read(text)


@given(damaged_notes)
def test_a_correction_removes_the_finding(text: str) -> None:
    _, findings = read(text)
    for finding in findings:
        assert finding.span is not None
        for better in corrected(text, finding):
            _, left = parse(Source("a.dryfit", better), shipped())
            told = {(other.code, other.span, other.message) for other in left}
            assert (finding.code, finding.span, finding.message) not in told


@pytest.mark.parametrize("text", FLAWLESS)
def test_the_order_of_lines_does_not_matter(text: str) -> None:
    notes, _ = read(text)
    turned, findings = read("\n".join(reversed(statements(text))))
    assert findings == ()
    assert len(turned.statements) == len(notes.statements)


def test_many_damaged_files_are_read_to_an_end() -> None:
    generator = random.Random(20)  # noqa: S311 - damage, no secret
    found = 0
    for number in range(DAMAGED_FILES):
        text = damaged(TO_DAMAGE[number % len(TO_DAMAGE)], generator)
        found += bool(read(text)[1])
    assert found > DAMAGED_FILES // 2


@pytest.mark.parametrize(
    "text",
    [
        "",
        "\n\n",
        "#",
        ",",
        "x",
        "x x x x",
        "4",
        "4 x",
        "½",
        "''" * 300,
        "(" * 900,
        "a = " + "(" * 24 + "1" + ")" * 24,
        "a = " + "1+" * 49 + "1",
        "4 legs,\n" * 400,
        "x" * 999,
        "x" * 200_000,
        "- " * 150_000,
        "a" + " " * 300_000 + "b",
        "a " * 150_000 + "= 1",
        "4 legs,\n" * 9_000,
        "1 " * 499,
        ("a" + " " * 900 + "b\n") * 300,
        "leg " * 249,
        "glue up",
        "glue up:",
        "glue up x: y",
        "finish before before before",
        "before",
        "after after",
        "top top top top",
        "4 top top, at top",
        "\ufeff4 legs",
        "4 legs\x00, upright",
        "4 legs, \u202eupright",
        "\uff11\uff12 legs",
        "٣ legs, upright",
        "4 legs, ² thick",
    ],
)
def test_nasty_texts_are_read_to_an_end(text: str) -> None:
    read(text)
