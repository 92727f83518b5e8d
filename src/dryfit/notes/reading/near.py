"""Words that are nearly the same: mistyped names and words of the language."""

from __future__ import annotations

from collections.abc import Iterable
from functools import lru_cache

from dryfit.notes.names import canonical

_FURTHEST = 3
_MOST_COMPARED = 200


def distance(first: str, second: str, most: int = _FURTHEST) -> int:
    """Return how many letters are wrong, missing, too many or swapped; at most ``most + 1``.

    Optimal string alignment: a swap of neighbours counts as one.
    """
    beyond = most + 1
    if abs(len(first) - len(second)) > most:
        return beyond
    first, second = _without_same_ends(first, second)
    before_last: list[int] = []
    last = list(range(len(second) + 1))
    for row, letter in enumerate(first, start=1):
        # So far from the diagonal that it takes more letters to come back, nothing is counted.
        current = [row] + [beyond] * len(second)
        for column in range(max(1, row - most), min(len(second), row + most) + 1):
            other = second[column - 1]
            cost = min(
                last[column] + 1,
                current[column - 1] + 1,
                last[column - 1] + (letter != other),
            )
            if row > 1 and column > 1 and letter == second[column - 2] and first[row - 2] == other:
                cost = min(cost, before_last[column - 2] + 1)
            current[column] = cost
        if min(current) > most:
            return beyond
        before_last, last = last, current
    return min(last[-1], beyond)


def _without_same_ends(first: str, second: str) -> tuple[str, str]:
    start = _same_at_start(first, second)
    first, second = first[start:], second[start:]
    end = _same_at_start(first[::-1], second[::-1])
    return first[: len(first) - end], second[: len(second) - end]


def _same_at_start(first: str, second: str) -> int:
    pairs = enumerate(zip(first, second, strict=False))
    shortest = min(len(first), len(second))
    return next((index for index, (one, other) in pairs if one != other), shortest)


def nearest(written: str, spellings: Iterable[str], most: int = 3) -> tuple[str, ...]:
    """Return the spellings near to what was written, the nearest first, of each name one.

    Of equally near ones those come first that have letters swapped, then those that are as plural
    and begin and measure as what was written, then by the alphabet.
    """
    written = written.lower()
    limit = _allowed(len(written))
    found = []
    for spelling in _worth_comparing(written, spellings, limit):
        lowered = spelling.lower()
        apart = distance(written, lowered, limit)
        if 0 < apart <= limit:
            found.append((apart, _unlikeness(written, lowered), spelling))
    best: dict[str, str] = {}
    for _, _, spelling in sorted(found):
        best.setdefault(canonical(spelling), spelling)
    return tuple(best.values())[:most]


def _worth_comparing(written: str, spellings: Iterable[str], limit: int) -> list[str]:
    """Return the spellings that can be near; of very many the likeliest, to bound the work."""
    letters = _letters(written)
    likely = [
        spelling
        for spelling in dict.fromkeys(spellings)
        if abs(len(spelling) - len(written)) <= limit
        and len(letters - _letters(spelling)) <= limit
        and len(_letters(spelling) - letters) <= limit
    ]
    if len(likely) > _MOST_COMPARED:
        likely.sort(key=lambda spelling: abs(len(spelling) - len(written)))
    return likely[:_MOST_COMPARED]


@lru_cache(maxsize=4096)
def _letters(word: str) -> frozenset[str]:
    return frozenset(word.lower())


def _allowed(length: int) -> int:
    if length <= 1:
        return 0
    if length <= 5:
        return 1
    return 2 if length <= 9 else _FURTHEST


def _unlikeness(written: str, spelling: str) -> tuple[bool, bool, bool, int]:
    return (
        sorted(written) != sorted(spelling),
        written.endswith("s") != spelling.endswith("s"),
        written[0] != spelling[0],
        abs(len(written) - len(spelling)),
    )
