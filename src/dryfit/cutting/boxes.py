"""What a set of blanks needs at least: every smallest rectangle from which it can be cut.

A set of one needs its own size. A larger set is cut in two somewhere, and each side is a smaller
set with a rectangle of its own; stages and the shortest rip are left out of account, so that what
is said to be too large surely is.
"""

from bisect import bisect_left
from collections.abc import Sequence
from itertools import compress, product

from dryfit.cutting.dual import Size

Set = tuple[int, ...]

MOST = 10
"""Sets of more blanks than this are not worked out."""


MOST_HELD = 6_000_000
"""Numbers that a proof keeps in memory at most: about a hundred million bytes."""


class TooMuchWork(Exception):  # noqa: N818 - what is the case, not a mistake of ours
    """The steps allowed are used up."""


class Steps:
    """Counts the work of a proof, and ends it."""

    def __init__(self, most: int) -> None:
        self.left = most
        self.most = most
        self.held = 0

    def count(self, steps: int) -> None:
        """Take so many steps."""
        self.left -= steps
        if self.left < 0:
            raise TooMuchWork

    def hold(self, numbers: int) -> None:
        """Keep so many numbers more in memory."""
        self.held += numbers
        if self.held > MOST_HELD:
            self.left = -1
            raise TooMuchWork

    @property
    def done(self) -> int:
        """Steps taken so far."""
        return self.most - self.left


class Boxes:
    """Smallest rectangles by set; a set names the kind of each of its blanks, in rising order."""

    def __init__(
        self, kinds: Sequence[Sequence[Size]], rooms: Sequence[Size], kerfs: Size, steps: Steps
    ) -> None:
        self.kinds = kinds
        self.lengths, self.widths = _staircase(rooms)
        self.kerfs = kerfs
        self.steps = steps
        self._known: dict[Set, tuple[Size, ...]] = {}

    def of(self, blanks: Set) -> tuple[Size, ...]:
        """The smallest rectangles of a set that are within some room; at least one blank."""
        known = self._known.get(blanks)
        if known is None:
            known = self._known[blanks] = self._worked_out(blanks)
        return known

    def _worked_out(self, blanks: Set) -> tuple[Size, ...]:
        if len(blanks) == 1:
            return smallest(self._within(self.kinds[blanks[0]]))
        found: list[Size] = []
        self.steps.count(1 << len(blanks) - 1)
        for one, other in halves(blanks):
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
        lengths, widths = self.lengths, self.widths
        kerf_along, kerf_across = self.kerfs
        found = []
        for along, across in left:
            for other_along, other_across in right:
                run = along + kerf_along + other_along
                high = max(other_across, across)
                if high <= widths[bisect_left(lengths, run)]:
                    found.append((run, high))
                run = max(other_along, along)
                high = across + kerf_across + other_across
                if high <= widths[bisect_left(lengths, run)]:
                    found.append((run, high))
        return found

    def _within(self, sizes: Sequence[Size]) -> list[Size]:
        return [
            size for size in sizes if size[1] <= self.widths[bisect_left(self.lengths, size[0])]
        ]


def _staircase(rooms: Sequence[Size]) -> tuple[list[int], list[int]]:
    """Lengths in rising order, and the width of the widest room that is at least so long."""
    lengths = sorted({length for length, _ in rooms})
    widths = [max(width for run, width in rooms if run >= length) for length in lengths]
    return lengths, [*widths, -1]


def halves(blanks: Set) -> list[tuple[Set, Set]]:
    """All ways to part a set in two, each once."""
    parted: set[tuple[Set, Set]] = set()
    first, others = blanks[0], blanks[1:]
    for chosen in product((False, True), repeat=len(others)):
        one = (first, *compress(others, chosen))
        other = tuple(compress(others, (not is_in for is_in in chosen)))
        if other:
            parted.add((one, other))
    return sorted(parted)


def smallest(sizes: Sequence[Size]) -> tuple[Size, ...]:
    """Those that no other one is within."""
    found: list[Size] = []
    for size in sorted(set(sizes)):
        if not found or size[1] < found[-1][1]:
            found.append(size)
    return tuple(found)
