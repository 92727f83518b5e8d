"""Choices that follow from a seed alone, the same on every machine and version of Python."""

from collections.abc import Sequence
from dataclasses import dataclass
from hashlib import sha256
from typing import TypeVar

Choice = TypeVar("Choice")


@dataclass(slots=True)
class Draw:
    """A row of numbers out of a seed; `drawn` counts those that were taken."""

    seed: str
    drawn: int = 0

    def below(self, limit: int) -> int:
        """Return a whole number from 0 up to and without `limit`."""
        self.drawn += 1
        digest = sha256(f"{self.seed}/{self.drawn}".encode()).digest()
        return int.from_bytes(digest[:8], "big") % limit

    def between(self, low: int, high: int) -> int:
        """Return a whole number from `low` to `high`, both included."""
        return low + self.below(high - low + 1)

    def chance(self, percent: int) -> bool:
        """Return True so many times in a hundred."""
        return self.below(100) < percent

    def one_of(self, options: Sequence[Choice]) -> Choice:
        """Return one of the options."""
        return options[self.below(len(options))]

    def some(self, options: Sequence[Choice], most: int) -> tuple[Choice, ...]:
        """Return up to `most` of the options, none twice, in the order given."""
        left, wanted = list(options), self.between(0, min(most, len(options)))
        while len(left) > wanted:
            left.pop(self.below(len(left)))
        return tuple(left)

    def shuffled(self, options: Sequence[Choice]) -> tuple[Choice, ...]:
        """Return all options in another order."""
        left, shuffled = list(options), []
        while left:
            shuffled.append(left.pop(self.below(len(left))))
        return tuple(shuffled)
