"""The list of words is whole: every word of the table, under a heading, with its synonyms."""

from __future__ import annotations

import re
from itertools import product

import pytest

from dryfit.guide.kinds import KINDS, OTHER, kind_of
from dryfit.guide.page import WIDTH
from dryfit.guide.vocabulary import no_names, words_by_kind
from dryfit.guide.words import words_text
from dryfit.notes import canonical
from dryfit.notes.reading.word_kinds import RESERVED
from dryfit.notes.reading.words import PHRASES, SPELLINGS


@pytest.mark.parametrize("terminal", sorted(SPELLINGS))
def test_every_terminal_has_a_heading(terminal: str) -> None:
    assert kind_of(terminal) is not OTHER, f"say in guide/kinds.py what {terminal} is to a maker"


def test_no_terminal_has_two_headings_and_none_is_of_the_past() -> None:
    listed = [terminal for kind in KINDS for terminal in kind.terminals]
    assert sorted(listed) == sorted(SPELLINGS)
    assert len({kind.heading for kind in KINDS}) == len(KINDS)


def test_a_new_terminal_would_show_up_by_itself() -> None:
    assert kind_of("FROM_TOMORROW") is OTHER


def test_every_phrase_is_listed_under_each_of_its_kinds() -> None:
    listed = {
        (kind.heading, canonical(phrase))
        for kind, words in words_by_kind()
        for word in words
        for phrase in (word.word, *word.synonyms)
    }
    table = {
        (kind_of(terminal).heading, phrase)
        for phrase, meanings in PHRASES.items()
        for terminal, _ in meanings
    }
    assert listed == table


def test_synonyms_stand_behind_the_word_that_they_mean() -> None:
    text = " ".join(words_text().split())
    assert "upright (standing, vertical)" in text
    assert "housing (dado, trench, housed, dadoed)" in text


def test_every_phrase_is_printed_but_for_its_articles() -> None:
    sections = [" ".join(body.split("\n")[1:]) for body in words_text().split("\n\n")]
    printed = {
        bare(" ".join(words))
        for body in sections
        for said in re.split(r"[;(),]", body)
        for words in product(*(word.split("/") for word in said.split()))
    }
    assert {phrase for phrase in PHRASES if bare(phrase) not in printed} == set()


def bare(phrase: str) -> str:
    return " ".join(word for word in canonical(phrase).split() if word not in ("the", "a", "an"))


def test_words_that_cannot_be_names_are_those_that_the_reader_refuses() -> None:
    assert {canonical(phrase) for phrase in no_names()} == RESERVED
    assert "top" not in no_names()


def test_the_page_fits_a_terminal_and_is_the_same_each_time() -> None:
    text = words_text()
    assert text.endswith("\n")
    assert not text.endswith("\n\n")
    assert all(len(line) <= WIDTH for line in text.split("\n"))
    assert text == words_text()
