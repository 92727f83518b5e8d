"""Words that are nearly the same: mistyped names and words of the language."""

from __future__ import annotations

from collections.abc import Iterable

from dryfit.notes.names import canonical

_FURTHEST = 3
_MOST_COMPARED = 200


def distance(first: str, second: str, most: int = _FURTHEST) -> int:
    """Return how many letters are wrong, missing, too many or swapped; at most ``most + 1``.

    Optimal string alignment: a swap of neighbours counts as one.
    """
    if abs(len(first) - len(second)) > most:
        return most + 1
    before_last: list[int] = []
    last = list(range(len(second) + 1))
    for row, letter in enumerate(first, start=1):
        current = [row]
        for column, other in enumerate(second, start=1):
            cost = min(
                last[column] + 1,
                current[column - 1] + 1,
                last[column - 1] + (letter != other),
            )
            if row > 1 and column > 1 and letter == second[column - 2] and first[row - 2] == other:
                cost = min(cost, before_last[column - 2] + 1)
            current.append(cost)
        if min(current) > most:
            return most + 1
        before_last, last = last, current
    return min(last[-1], most + 1)


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
    letters = frozenset(written)
    likely = [
        spelling
        for spelling in dict.fromkeys(spellings)
        if abs(len(spelling) - len(written)) <= limit
        and len(letters.difference(spelling.lower())) <= limit
    ]
    if len(likely) > _MOST_COMPARED:
        likely.sort(key=lambda spelling: abs(len(spelling) - len(written)))
    return likely[:_MOST_COMPARED]


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
