"""Letters for boards and blanks: one row of capitals, so that no two things share one."""

from __future__ import annotations

from collections.abc import Iterator

LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"


def label(number: int) -> str:
    """Return the number-th label, from 0: ``A`` to ``Z``, then ``AA``, ``AB``, ..."""
    before, letter = divmod(number, len(LETTERS))
    return (label(before - 1) if before else "") + LETTERS[letter]


def labels(start: int = 0) -> Iterator[str]:
    """Yield labels from the start-th on, without end."""
    while True:
        yield label(start)
        start += 1
