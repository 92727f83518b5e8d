"""`dryfit help words`: every word of the language, what else it may be called, and of what kind."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from dryfit.guide.alternatives import merged, without_articles
from dryfit.guide.page import INDENT, WIDTH, filled, section
from dryfit.guide.vocabulary import Word, name_ends, no_names, words_by_kind

_INTRODUCTION = (
    "Case, plural and hyphens make no difference. Behind each word stands in brackets what else "
    "it may be called; a slash stands between words of which one is chosen; articles are left "
    "out. A word with several uses stands under each of them."
)
_FREE = (
    "Inside a longer name they are free: `flat bar`, `glue block`, `drawer up`; only before these "
    "a name always ends:"
)


_LONG = 3
"""Phrases of so many words come in families, which are told together."""


def words_text() -> str:
    """Return the list of words as plain text, ending in a newline."""
    kinds = [
        section(kind.heading, _flowing("; ".join(_shown(words)))) for kind, words in words_by_kind()
    ]
    names = section(
        "What no part and no value can be called",
        _flowing("; ".join(_short(no_names()))),
        _flowing(f"{_FREE} {'; '.join(_short(name_ends()))}."),
    )
    return "\n\n".join(("The words of the notes", filled(_INTRODUCTION), *kinds, names)) + "\n"


def _shown(words: Sequence[Word]) -> Iterator[str]:
    """Yield the words of one kind, each with its synonyms, then the families of phrases."""
    family: list[str] = []
    for word in words:
        if not _is_long(word.word):
            yield _with_synonyms(word.word, word.synonyms)
            continue
        family += [phrase for phrase in (word.word, *word.synonyms) if _is_long(phrase)]
        short = [phrase for phrase in word.synonyms if not _is_long(phrase)]
        if without_articles(short, [word.word]):
            yield _with_synonyms(word.word, short)
    yield from _short(family)


def _with_synonyms(word: str, synonyms: Sequence[str]) -> str:
    others = merged(without_articles(synonyms, [word]))
    return f"{word} ({', '.join(others)})" if others else word


def _short(phrases: Sequence[str]) -> tuple[str, ...]:
    return merged(without_articles(phrases))


def _is_long(phrase: str) -> bool:
    return len(phrase.split()) >= _LONG


def _flowing(text: str) -> str:
    words = (_broken(word) for word in text.split(" "))
    return filled(" ".join(words), first=INDENT, rest=INDENT)


def _broken(word: str) -> str:
    """Return words between slashes with a gap behind a slash where no line takes them all."""
    widest = WIDTH - len(INDENT)
    at = word.rfind("/", 0, widest) + 1
    if len(word) <= widest or not at:
        return word
    return f"{word[:at]} {_broken(word[at:])}"
