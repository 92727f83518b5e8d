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
        found = _first_like(rows, at)
        if found is None:
            at += 1
            continue
        other, rows[at] = found
        del rows[other]
        # A row before it that was unlike all others may be like the joined one.
        while (before := _first_before(rows, at)) is not None:
            other, joined = before
            rows[other] = joined
            del rows[at]
            at = other
    return tuple(" ".join("/".join(words) for words in row) for row in rows)


def _first_like(rows: Sequence[Row], at: int) -> tuple[int, Row] | None:
    """Return the first row after one that it can be joined with, and the two as one."""
    for other in range(at + 1, len(rows)):
        joined = _joined(rows[at], rows[other])
        if joined is not None:
            return other, joined
    return None


def _first_before(rows: Sequence[Row], at: int) -> tuple[int, Row] | None:
    """Return the first row before one that can be joined with it, and the two as one."""
    for other in range(at):
        joined = _joined(rows[other], rows[at])
        if joined is not None:
            return other, joined
    return None


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
