"""What a set of blanks needs at least: every smallest rectangle from which it can be cut.

A set of one needs its own size. A larger set is cut in two somewhere, and each side is a smaller
set with a rectangle of its own; stages and the shortest rip are left out of account, so that what
is said to be too large surely is.
"""

from collections.abc import Sequence
from itertools import product

from dryfit.cutting.dual import Size

MOST = 10
"""Sets of more blanks than this are not worked out."""


class TooMuchWork(Exception):  # noqa: N818 - what is the case, not a mistake of ours
    """The steps allowed are used up."""


class Steps:
    """Counts the work of a proof, and ends it."""

    def __init__(self, most: int) -> None:
        self.left = most
        self.most = most

    def count(self, steps: int) -> None:
        """Take so many steps."""
        self.left -= steps
        if self.left < 0:
            raise TooMuchWork

    @property
    def done(self) -> int:
        """Steps taken so far."""
        return self.most - self.left


class Boxes:
    """Smallest rectangles by set; a set is a count of each kind of blank."""

    def __init__(
        self, kinds: Sequence[Sequence[Size]], most: Size, kerfs: Size, steps: Steps
    ) -> None:
        self.kinds = kinds
        self.most = most
        self.kerfs = kerfs
        self.steps = steps
        self._known: dict[tuple[int, ...], tuple[Size, ...]] = {}

    def of(self, counts: tuple[int, ...]) -> tuple[Size, ...]:
        """The smallest rectangles of a set that are within `most`; at least one blank."""
        known = self._known.get(counts)
        if known is None:
            known = self._known[counts] = self._worked_out(counts)
        return known

    def _worked_out(self, counts: tuple[int, ...]) -> tuple[Size, ...]:
        if sum(counts) == 1:
            return smallest(self._within(self.kinds[counts.index(1)]))
        found: list[Size] = []
        for one in product(*(range(count + 1) for count in counts)):
            other = tuple(count - taken for count, taken in zip(counts, one, strict=True))
            if one > other or not any(one):
                continue
            left = self.of(one)
            if not left:
                return ()
            right = self.of(other)
            if not right:
                return ()
            self.steps.count(len(left) * len(right))
            found += self._joined(left, right)
        return smallest(found)

    def _joined(self, left: Sequence[Size], right: Sequence[Size]) -> list[Size]:
        most_along, most_across = self.most
        kerf_along, kerf_across = self.kerfs
        found = []
        for along, across in left:
            for other_along, other_across in right:
                run = along + kerf_along + other_along
                if run <= most_along:
                    found.append((run, max(across, other_across)))
                height = across + kerf_across + other_across
                if height <= most_across:
                    found.append((max(along, other_along), height))
        return found

    def _within(self, sizes: Sequence[Size]) -> list[Size]:
        return [size for size in sizes if size[0] <= self.most[0] and size[1] <= self.most[1]]


def smallest(sizes: Sequence[Size]) -> tuple[Size, ...]:
    """Those that no other one is within."""
    found: list[Size] = []
    for size in sorted(set(sizes)):
        if not found or size[1] < found[-1][1]:
            found.append(size)
    return tuple(found)
