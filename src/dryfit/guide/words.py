"""`dryfit help words`: every word of the language, what else it may be called, and of what kind."""

from __future__ import annotations

from dryfit.guide.alternatives import merged, without_articles
from dryfit.guide.page import INDENT, filled, section
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


def words_text() -> str:
    """Return the list of words as plain text, ending in a newline."""
    kinds = [
        section(kind.heading, _flowing("; ".join(_shown(word) for word in words)))
        for kind, words in words_by_kind()
    ]
    names = section(
        "What no part and no value can be called",
        _flowing("; ".join(no_names())),
        _flowing(f"{_FREE} {'; '.join(name_ends())}."),
    )
    return "\n\n".join(("The words of the notes", filled(_INTRODUCTION), *kinds, names)) + "\n"


def _shown(word: Word) -> str:
    others = merged(without_articles(word.synonyms, [word.word]))
    return f"{word.word} ({', '.join(others)})" if others else word.word


def _flowing(text: str) -> str:
    return filled(text, first=INDENT, rest=INDENT)
