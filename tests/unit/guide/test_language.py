"""The page on the language: every rule of the grammar is on it, every example can be read."""

from __future__ import annotations

import pytest
from lark import Token
from tests.unit.guide.printed import OF_THE_STOOL, PRINTED, STOOL, readings

from dryfit import workshop
from dryfit.diagnostics import Source
from dryfit.guide.language import language_text
from dryfit.guide.page import WIDTH
from dryfit.guide.sentences import PATTERNS
from dryfit.notes import canonical, parse
from dryfit.notes.reading.lines import sense_lines
from dryfit.notes.reading.table import table
from dryfit.notes.reading.vocabulary import declared_in
from dryfit.piece import declare

LONGEST_PAGE = 180


def in_the_piece(line: str) -> str:
    """The piece with the line in place of whatever says or declares the same."""
    (new,) = sense_lines(Source("", line))
    declared = declared_in(new)

    def goes(old_text: str) -> bool:
        (old,) = sense_lines(Source("", old_text))
        same_name = declared is not None and declared_in(old) == declared
        opener = canonical(old.words[0].text) if not old.text[0].isdigit() else ""
        return same_name or (opener == new.words[0].text and opener in ONCE)

    openings = [other for other in OF_THE_STOOL if "opening between" in other]
    kept = [old for old in (*STOOL, *openings) if not goes(old)]
    return "\n".join([*kept, line])


ONCE = ("piece", "unit", "overall", "timber", "finish")


@pytest.mark.parametrize("line", OF_THE_STOOL)
def test_every_example_can_be_read_and_its_names_and_sums_worked_out(line: str) -> None:
    source = Source("example", in_the_piece(line))
    last = source.text.count("\n") + 1
    notes, in_notes = parse(source)
    findings = in_notes + declare(notes)[1]
    here = [said for said in findings if said.span and said.span.line == last]
    assert [said.message for said in here] == []


def test_the_examples_of_patterns_can_be_read_one_after_the_other() -> None:
    lines = [*STOOL, *(sentence.line for sentence in PATTERNS.sentences)]
    notes, findings = parse(Source("example", "\n".join(lines)))
    assert findings == ()
    assert [pattern.name for pattern in notes.patterns] == ["trestle"]


def test_the_whole_piece_is_without_a_finding() -> None:
    found = workshop.check(Source("stool", "\n".join(STOOL)), None, {})
    assert found.findings == ()
    assert found.model is not None


def test_every_rule_of_the_grammar_has_an_example() -> None:
    rules = {
        str(rule.alias or rule.origin.name)
        for rule in table().rules
        if not rule.origin.name.startswith("_") and (rule.alias or not rule.options.expand1)
    }
    said = {str(node.data) for reading in readings() for node in reading.tree.iter_subtrees()}
    assert rules - said - {"line"} == set()


def test_every_word_class_has_an_example() -> None:
    classes = {symbol.name for rule in table().rules for symbol in rule.expansion if symbol.is_term}
    said = {
        token.type
        for reading in readings()
        for token in reading.tree.scan_values(lambda value: isinstance(value, Token))
    }
    assert classes - said == set()


def test_the_page_is_one_to_two_pages_and_fits_a_terminal() -> None:
    lines = language_text().split("\n")
    assert lines[-1] == ""
    assert lines[-2] != ""
    assert len(lines) <= LONGEST_PAGE
    assert all(len(line) <= WIDTH for line in lines)


def test_every_example_is_printed_as_it_is_read() -> None:
    printed = language_text().splitlines()
    for line in PRINTED:
        assert any(said.startswith(f"  {line}") for said in printed), line
