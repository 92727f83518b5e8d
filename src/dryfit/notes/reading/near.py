"""Words that are nearly the same: mistyped names and words of the language."""

from __future__ import annotations

from collections.abc import Iterable

_FURTHEST = 3


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


def allowed(length: int) -> int:
    """Return how many letters of a word of that length may be wrong."""
    if length <= 3:
        return 1
    return 2 if length <= 8 else _FURTHEST


def nearest(written: str, spellings: Iterable[str], most: int = 4) -> tuple[str, ...]:
    """Return the spellings near to what was written, the nearest first, swapped letters before.

    Equal distances are ordered by the alphabet.
    """
    written = written.lower()
    limit = allowed(len(written))
    found = []
    for spelling in spellings:
        apart = distance(written, spelling.lower(), limit)
        if 0 < apart <= limit and apart < max(len(written), len(spelling)) - 1:
            swapped = sorted(written) == sorted(spelling.lower())
            found.append((apart, not swapped, spelling))
    return tuple(spelling for _, _, spelling in sorted(found)[:most])
