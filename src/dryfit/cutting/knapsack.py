"""The most that one clear board can be worth: the guillotine knapsack, exactly.

Pieces of any number are cut out of one rectangle, by as many turns of the saw as it takes. Cuts
need only be made at sums of piece sizes (normal patterns: everything moves up against the reference
end and edge), so that a table over such sums is enough (Gilmore and Gomory 1966; Herz 1972; Beasley
1985; from memory).
"""

from collections.abc import Sequence
from dataclasses import dataclass
from operator import add

from dryfit.cutting.dual import Size


@dataclass(frozen=True, slots=True)
class Filled:
    """The best that comes out of a board: what it is worth, and how many of each piece."""

    value: int
    counts: tuple[int, ...]


def best_filling(
    board: Size, pieces: Sequence[Size], values: Sequence[int], kerfs: Size = (0, 0)
) -> Filled:
    """The most valuable pieces that a board can be cut into right through, each as often as it may.

    Sizes are whole numbers along and across the board; no piece is turned. The work grows with the
    number of different sums of sizes: it is small where pieces are large for the board.
    """
    # With a kerf added to every piece and to the board, cuts take nothing.
    grown = [(along + kerfs[0], across + kerfs[1]) for along, across in pieces]
    whole = board[0] + kerfs[0], board[1] + kerfs[1]
    table = _Table(whole, grown, values)
    counts = [0] * len(pieces)
    table.collect(len(table.alongs) - 1, len(table.acrosses) - 1, counts)
    return Filled(table.worth[-1][-1], tuple(counts))


class _Table:
    """What each rectangle is worth whose sides are sums of sizes, and how it is cut first.

    worth  for each sum along and across
    """

    def __init__(self, board: Size, pieces: Sequence[Size], values: Sequence[int]) -> None:
        fitting = [p for p in pieces if p[0] <= board[0] and p[1] <= board[1]]
        self.pieces = pieces
        self.values = values
        self.alongs = _sums(board[0], {piece[0] for piece in fitting})
        self.acrosses = _sums(board[1], {piece[1] for piece in fitting})
        self.rests_along = _rests(self.alongs)
        self.rests_across = _rests(self.acrosses)
        self.worth: list[list[int]] = [[] for _ in self.alongs]
        columns: list[list[int]] = [[] for _ in self.acrosses]
        for i, along in enumerate(self.alongs):
            row = self.worth[i]
            for j, across in enumerate(self.acrosses):
                column = columns[j]
                best = max(
                    (
                        v
                        for (a, c), v in zip(pieces, values, strict=True)
                        if a <= along and c <= across
                    ),
                    default=0,
                )
                best = max(best, _halved(column, self.rests_along[i]))
                best = max(best, _halved(row, self.rests_across[j]))
                row.append(best)
                column.append(best)

    def collect(self, i: int, j: int, counts: list[int]) -> None:
        """Count the pieces of the best way to cut a rectangle."""
        worth = self.worth[i][j]
        if worth == 0:
            return
        for piece, (size, value) in enumerate(zip(self.pieces, self.values, strict=True)):
            fits = size[0] <= self.alongs[i] and size[1] <= self.acrosses[j]
            if fits and value == worth:
                counts[piece] += 1
                return
        for first, rest in enumerate(self.rests_along[i]):
            if self.worth[first][j] + self.worth[rest][j] == worth:
                self.collect(first, j, counts)
                self.collect(rest, j, counts)
                return
        for first, rest in enumerate(self.rests_across[j]):
            if self.worth[i][first] + self.worth[i][rest] == worth:
                self.collect(i, first, counts)
                self.collect(i, rest, counts)
                return


def _halved(line: Sequence[int], rests: Sequence[int]) -> int:
    """The best sum of both sides of a cut; the first side is the smaller one."""
    return max(map(add, line, map(line.__getitem__, rests)), default=0)


def _sums(whole: int, sizes: set[int]) -> list[int]:
    """Every sum of sizes up to the whole, in rising order, 0 not among them; the whole for none."""
    reached = 1
    for size in sizes:
        step = size
        while step <= whole:
            reached |= reached << step
            step *= 2
    reached &= (1 << whole + 1) - 1
    return [total for total in range(1, whole + 1) if reached >> total & 1] or [whole]


def _rests(sums: Sequence[int]) -> list[list[int]]:
    """For each sum, and each first side of at most half of it: where the sum left stands."""
    found = []
    for total in sums:
        rests = []
        place = len(sums) - 1
        for first in sums:
            if 2 * first > total:
                break
            while sums[place] > total - first:
                place -= 1
            rests.append(place)
        found.append(rests)
    return found
