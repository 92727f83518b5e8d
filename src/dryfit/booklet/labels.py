"""Letters for parts and numbers for copies: short names that stand alone on paper.

No letter stands for two things.  R, E, F and B are the marks on every part, A and B the hands of
mirrored parts, and I and O read as figures; the rest, from C on, are free for parts, but for
those of boards (`stock.labels`).  Blanks have small letters.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from itertools import count
from types import MappingProxyType

from dryfit.placing.model import Model

LETTERS = "CDGHJKLMNPQSTUVWXYZ"


@dataclass(frozen=True, slots=True)
class Labels:
    """`parts` maps a part's name to its letter, `copies` a copy's name to letter and number.

    A part with a single copy still numbers it: ``H1`` is a piece of wood, ``H`` a line of the cut
    list.
    """

    parts: Mapping[str, str]
    copies: Mapping[str, str]

    def part(self, name: str) -> str:
        """Return the part's letter, or nothing for a name that is no part."""
        return self.parts.get(name, "")

    def copy(self, name: str) -> str:
        """Return the copy's letter and number, or nothing for a name that is no copy."""
        return self.copies.get(name, "")


def label(model: Model, taken: Iterable[str] = ()) -> Labels:
    """Return the labels of all parts and copies, in the order of the notes; none that is taken."""
    boards = frozenset(taken)
    letters = (letter for letter in _letters() if letter not in boards)
    parts = {part.name: next(letters) for part in model.parts}
    copies = {
        copy.name: f"{parts[part.name]}{number}"
        for part in model.parts
        for number, copy in enumerate(part.copies, start=1)
    }
    return Labels(MappingProxyType(parts), MappingProxyType(copies))


def _letters() -> Iterator[str]:
    yield from LETTERS
    for length in count(2):
        yield from (_spelled(number, length) for number in range(len(LETTERS) ** length))


def _spelled(number: int, length: int) -> str:
    digits = []
    for _ in range(length):
        number, digit = divmod(number, len(LETTERS))
        digits.append(LETTERS[digit])
    return "".join(reversed(digits))
