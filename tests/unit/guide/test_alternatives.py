"""Spellings told in few words are the same spellings."""

from __future__ import annotations

from itertools import product

from hypothesis import given
from hypothesis import strategies as st

from dryfit.guide.alternatives import merged, without_articles

PHRASES = st.lists(
    st.lists(st.sampled_from("abc"), min_size=1, max_size=3).map(" ".join), unique=True, max_size=9
)


def expanded(phrase: str) -> list[str]:
    return [" ".join(words) for words in product(*(word.split("/") for word in phrase.split()))]


def test_words_that_can_stand_for_one_another_are_joined() -> None:
    assert merged(["on inner face", "on inner side", "at inner face", "at inner side"]) == (
        "on/at inner face/side",
    )
    assert merged(["into", "let into"]) == ("into", "let into")


@given(PHRASES)
def test_choosing_at_each_slash_gives_the_phrases_back(phrases: list[str]) -> None:
    back = [each for phrase in merged(phrases) for each in expanded(phrase)]
    assert sorted(back) == sorted(phrases)


def test_a_phrase_that_differs_in_an_article_is_told_once() -> None:
    assert without_articles(["the floor", "ground", "the ground"], ["floor"]) == ("ground",)
