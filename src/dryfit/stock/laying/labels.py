"""Letters: capitals for boards, small ones for blanks, so that neither is taken for the other.

Parts have capitals too, other ones (`booklet.labels`).
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import count

LETTERS = "ABCDGHJKLMNPQSTUVWXYZ"
"""Without the marks on every part, E, F and R, so that cut E2 is no edge, and I and O."""
SMALL_LETTERS = "abcdefghjkmnpqrstuvwxyz"
"""Without those that read as figures."""


def label(number: int, letters: str = LETTERS) -> str:
    """Return the number-th label, from 0: ``A`` to ``Z``, then ``AA``, ``AB``, ..."""
    before, letter = divmod(number, len(letters))
    return (label(before - 1, letters) if before else "") + letters[letter]


def labels(letters: str = LETTERS) -> Iterator[str]:
    """Yield labels without end."""
    return (label(number, letters) for number in count())
