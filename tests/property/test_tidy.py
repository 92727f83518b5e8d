"""Whatever the text, tidying changes blanks and look-alike signs, no meaning, and once only."""

import random
import tomllib
from collections.abc import Iterator
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.property.meaning import said, words
from tests.property.strategies_blanks import respaced
from tests.property.strategies_notes import FLAWLESS, anything, damaged, damaged_notes, salad

from dryfit.diagnostics import Source
from dryfit.guide.sentences import CHAPTERS
from dryfit.notes import tidied
from dryfit.notes.limits import beyond_limits
from dryfit.notes.mistakes import is_readable
from dryfit.notes.parse import names_by_line
from dryfit.notes.reading.lexer import read_line
from dryfit.notes.reading.lines import fold, sense_lines
from dryfit.patterns.library import shipped

ROOT = Path(__file__).parents[2]
PAGES = ROOT / "src" / "dryfit" / "diagnostics" / "pages"
TEXTS = {
    path.relative_to(ROOT).as_posix(): path.read_text(encoding="utf-8")
    for folder in ("examples", "src/dryfit/patterns/shipped", "tests/pieces", "tests/language")
    for path in sorted((ROOT / folder).glob("*.dryfit"))
}
GUIDE = "\n".join(sentence.line for chapter in CHAPTERS for sentence in chapter.sentences)
randoms = st.randoms(use_true_random=False)
respaced_notes = st.builds(respaced, st.sampled_from(sorted(TEXTS.values())), randoms)


def tidy(text: str) -> str:
    """The text tidied, after everything that must hold for any text was checked."""
    after = tidied(Source("a.dryfit", text), shipped())
    assert tidied(Source("a.dryfit", after), shipped()) == after
    old, new = text.split("\n"), after.split("\n")
    assert len(old) == len(new)
    for before, line in zip(old, new, strict=True):
        assert words(before) == words(line)
        assert before.partition("#")[2].rstrip() == line.partition("#")[2].rstrip()
        assert before.count("#") == line.count("#")
    assert said(after) == said(text)
    for number in kept(text):
        assert new[number - 1] == old[number - 1]
    return after


def kept(text: str) -> Iterator[int]:
    """The numbers of the lines that cannot be read without an error or say nothing."""
    source = Source("a.dryfit", text)
    lines = tuple(sense_lines(source))
    for line, names in zip(lines, names_by_line(lines, shipped()), strict=True):
        if beyond_limits(line) or not is_readable(line, names):
            yield from (stretch.line for stretch in line.stretches)
    for number, typed in enumerate(source.lines(), start=1):
        if not fold(typed):
            yield number


@given(anything)
def test_any_text_keeps_what_it_says(text: str) -> None:
    tidy(text)


@given(salad)
def test_word_salad_keeps_what_it_says(text: str) -> None:
    tidy(text)


@given(damaged_notes)
def test_damaged_notes_keep_what_they_say(text: str) -> None:
    tidy(text)


@given(respaced_notes, randoms)
def test_damaged_notes_with_other_blanks_keep_what_they_say(
    text: str, random: random.Random
) -> None:
    tidy(damaged(text, random))


@pytest.mark.parametrize("name", TEXTS)
def test_notes_keep_what_they_say(name: str) -> None:
    tidy(TEXTS[name])


@pytest.mark.parametrize("page", sorted(PAGES.glob("*.toml")), ids=lambda page: page.stem)
def test_the_examples_of_findings_keep_what_they_say(page: Path) -> None:
    read = tomllib.loads(page.read_text(encoding="utf-8"))
    for key in ("example", "instead"):
        if isinstance(read.get(key), str):
            tidy(read[key])


def test_the_examples_of_the_guide_are_tidy() -> None:
    assert tidy(GUIDE) == GUIDE


def without_free_text(text: str) -> str:
    """The notes without the lines that end in words of the maker's own, blanks and all."""
    lines = tuple(sense_lines(Source("a.dryfit", text)))
    named = names_by_line(lines, shipped())
    readings = [read_line(line, names) for line, names in zip(lines, named, strict=True)]
    free = {
        reading.line.line
        for reading in readings
        if any(token.type == "TEXT" for token in reading.tokens)
    }
    typed = text.split("\n")
    return "\n".join(line for number, line in enumerate(typed, start=1) if number not in free)


@given(st.sampled_from([without_free_text(text) for text in (*FLAWLESS, GUIDE)]), randoms)
def test_notes_that_differ_in_blanks_become_the_same(text: str, random: random.Random) -> None:
    assert tidy(respaced(text, random)) == tidy(text)
