"""Many spellings of one phrase as few: ``on/at the inner/outer face of``."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

_ARTICLES = frozenset(["the", "a", "an"])

Row = tuple[tuple[str, ...], ...]


def merged(phrases: Sequence[str]) -> tuple[str, ...]:
    """Return the phrases with words that can stand for one another joined by a slash.

    Choosing one word at each slash gives the phrases back and no others.
    """
    rows: list[Row] = [tuple((word,) for word in phrase.split()) for phrase in phrases]
    at = 0
    while at < len(rows):
        other = next((row for row in rows[at + 1 :] if _joined(rows[at], row)), None)
        joined = _joined(rows[at], other) if other else None
        if other is None or joined is None:
            at += 1
            continue
        rows[at] = joined
        rows.remove(other)
        at = 0  # a row that was unlike all others may be like the joined one
    return tuple(" ".join("/".join(words) for words in row) for row in rows)


def without_articles(phrases: Iterable[str], known: Iterable[str] = ()) -> tuple[str, ...]:
    """Return the phrases that differ in more than an article from one before and from `known`."""
    seen = {_bare(phrase) for phrase in known}
    kept = []
    for phrase in phrases:
        if _bare(phrase) not in seen:
            seen.add(_bare(phrase))
            kept.append(phrase)
    return tuple(kept)


def _joined(one: Row, other: Row) -> Row | None:
    """Return the row that stands for both, or None where they differ in more than one place.

    Single words stay apart: a list of them reads better with commas.
    """
    if len(one) != len(other) or len(one) == 1:
        return None
    differing = [at for at, words in enumerate(one) if words != other[at]]
    if len(differing) != 1:
        return None
    (at,) = differing
    return (*one[:at], one[at] + other[at], *one[at + 1 :])


def _bare(phrase: str) -> tuple[str, ...]:
    return tuple(word for word in phrase.split() if word not in _ARTICLES)
