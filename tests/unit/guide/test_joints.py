"""The page on joints: each family once, with a line that really names it."""

from __future__ import annotations

import pytest
from lark import Token
from tests.unit.guide.printed import STOOL
from tests.unit.guide.test_language import in_the_piece

from dryfit.diagnostics import Source
from dryfit.guide.joints import joints_text
from dryfit.guide.page import WIDTH
from dryfit.kinds.joints import joint_kinds, kind_written
from dryfit.kinds.kind import JointKind
from dryfit.notes import names_by_line, parse
from dryfit.notes.reading.lexer import Reading, read_line
from dryfit.notes.reading.lines import sense_lines
from dryfit.piece import declare

OF_ANOTHERS_WORD = {"back rabbet": {"rabbet"}}
"""Families that are told from another of the same word by what stands around it."""


def families_named(line: str) -> set[str]:
    """The families that a line names, as the grammar reads it in the stool."""
    lines = tuple(sense_lines(Source("stool", "\n".join([*STOOL, line]))))
    reading = read_line(lines[-1], names_by_line(lines)[-1])
    assert isinstance(reading, Reading), line
    words = [
        str(token)
        for token in reading.tree.scan_values(lambda value: isinstance(value, Token))
        if token.type in {"JOINT", "FASTENER"}
    ]
    known = (kind_written(word.partition(",")[0]) for word in words)
    return {kind.name for kind in known if kind is not None}


@pytest.mark.parametrize("kind", tuple(joint_kinds()), ids=lambda kind: kind.name)
def test_the_line_of_a_family_names_it_and_has_no_fault(kind: JointKind) -> None:
    text = in_the_piece(kind.example)
    notes, in_notes = parse(Source("stool", text))
    findings = in_notes + declare(notes)[1]
    last = text.count("\n") + 1
    assert [said.message for said in findings if said.span and said.span.line == last] == []
    named = {kind.name} if kind.written else set()
    assert families_named(kind.example) == OF_ANOTHERS_WORD.get(kind.name, named)


@pytest.mark.parametrize("kind", tuple(joint_kinds()), ids=lambda kind: kind.name)
def test_each_family_is_told_with_its_sentence_and_its_line(kind: JointKind) -> None:
    page = joints_text()
    assert " ".join(page.split()).count(kind.glossary) == 1
    assert f"    {kind.example}" in page.splitlines()


def test_the_page_fits_a_terminal() -> None:
    assert all(len(line) <= WIDTH for line in joints_text().splitlines())
    assert joints_text().endswith("\n")
