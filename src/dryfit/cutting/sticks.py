"""Sticks: jobs in which every board is one row of blanks, so that only lengths count.

One board after the other is filled as full as sums of lengths allow, beginning with the longest
blank that is left (minimum bin slack: Gupta and Ho 1999; Fleszar and Hindi 2002; from memory). Then
some boards are emptied and filled anew, which may save one. The result is where the general search
begins.
"""

import random
from collections.abc import Sequence
from dataclasses import dataclass

from dryfit.cutting.instance import Instance

ROUNDS = 12
"""Emptied and filled anew so many times for each blank."""

WORK = 400_000_000
"""Bits to shift at most: a second, about."""


@dataclass(frozen=True, slots=True)
class Stick:
    """A board of a stock and the blanks that come out of it, in order."""

    stock: int
    blanks: tuple[int, ...]


def one_row(instance: Instance) -> bool:
    """Whether no board has two blanks side by side, so that only lengths count."""
    rules = instance.job.rules
    if not instance.blanks:
        return False
    if any(len(unit.blanks) > 1 for unit in instance.units):
        return False
    narrowest = min(blank.width for blank in instance.blanks)
    for stock, fits in zip(instance.stocks, instance.fits, strict=True):
        if stock.board.zones or stock.board.width >= 2 * narrowest + rules.rip_kerf:
            return False
        for blank, sizes in zip(instance.blanks, fits, strict=True):
            if sizes and sizes != ((blank.length, blank.width),):
                return False
            if sizes and blank.width < stock.board.width and blank.shortest < rules.least_rip:
                return False
    return True


def filled(instance: Instance) -> tuple[list[Stick], list[int]]:
    """Sticks and the blanks that none holds: as few of these as may be, on as little stock."""
    filler = _Filler(instance)
    blanks = sorted(range(len(instance.blanks)), key=lambda b: -instance.blanks[b].length)
    best = min((filler.all_of([], blanks, way) for way in range(WAYS)), key=filler.cost)
    rng = random.Random(1)  # noqa: S311 - a search, not a secret
    current = best
    for _ in range(ROUNDS * len(blanks)):
        if filler.work > WORK or not current[0]:
            break
        other = filler.shaken(current, rng)
        if filler.cost(other) <= filler.cost(current):
            current = other
    return min(best, current, key=filler.cost)


WAYS = 3
Filling = tuple[list[Stick], list[int]]


class _Filler:
    """Fills sticks; `work` counts the bits that it has shifted."""

    def __init__(self, instance: Instance) -> None:
        self.instance = instance
        kerf = instance.job.rules.crosscut_kerf
        self.sizes = [blank.length + kerf for blank in instance.blanks]
        self.rooms = [
            max((room.length for room in stock.rooms), default=0) + kerf
            for stock in instance.stocks
        ]
        self.work = 0

    def cost(self, filling: Filling) -> tuple[int, int, int]:
        """What is left uncut, then the worth of the sticks, then how evenly they are filled."""
        sticks, left = filling
        lost = sum(self.sizes[blank] for blank in left)
        worth = sum(self.instance.stocks[stick.stock].worth for stick in sticks)
        rests = (self.rooms[s.stock] - sum(self.sizes[b] for b in s.blanks) for s in sticks)
        return lost, worth, -sum(rest * rest for rest in rests)

    def all_of(self, sticks: list[Stick], blanks: Sequence[int], way: int) -> Filling:
        """Fill further sticks until no blank is left or none fits. Ways differ in the stock."""
        found = list(sticks)
        used = [0] * len(self.rooms)
        for stick in found:
            used[stick.stock] += 1
        left = sorted(blanks, key=lambda b: (-self.sizes[b], b))
        lost: list[int] = []
        while left:
            longest = left[0]
            open_to = [
                stock
                for stock, fits in enumerate(self.instance.fits)
                if fits[longest] and used[stock] < self.instance.stocks[stock].board.count
            ]
            if not open_to:
                lost.append(left.pop(0))
                continue
            stock = min(open_to, key=lambda one: (self._rank(one, way), one))
            chosen = self._fullest(stock, left)
            stock = self._cheapest(chosen, used)
            used[stock] += 1
            found.append(Stick(stock, tuple(chosen)))
            gone = set(chosen)
            left = [blank for blank in left if blank not in gone]
        return found, lost

    def _rank(self, stock: int, way: int) -> int:
        if way == 0:
            return self.instance.stocks[stock].worth // max(1, self.rooms[stock])
        return self.rooms[stock] if way == 1 else -self.rooms[stock]

    def _cheapest(self, chosen: Sequence[int], used: Sequence[int]) -> int:
        """The cheapest stock left that holds some blanks."""
        length = sum(self.sizes[blank] for blank in chosen)
        stocks = self.instance.stocks
        return min(
            (
                stock
                for stock, fits in enumerate(self.instance.fits)
                if used[stock] < stocks[stock].board.count
                and length <= self.rooms[stock]
                and all(fits[blank] for blank in chosen)
            ),
            key=lambda stock: (stocks[stock].worth, stock),
        )

    def _fullest(self, stock: int, left: Sequence[int]) -> list[int]:
        """The longest blank, and others with it that leave the least of a stick."""
        room = self.rooms[stock] - self.sizes[left[0]]
        fits = self.instance.fits[stock]
        others = [b for b in left[1:] if fits[b] and self.sizes[b] <= room]
        sums = [1]
        within = (1 << room + 1) - 1
        for blank in others:
            sums.append((sums[-1] | sums[-1] << self.sizes[blank]) & within)
            self.work += room + 64
            if sums[-1] >> room & 1:
                break
        total = sums[-1].bit_length() - 1
        chosen = [left[0]]
        for place in range(len(sums) - 1, 0, -1):
            if not sums[place - 1] >> total & 1:
                chosen.append(others[place - 1])
                total -= self.sizes[others[place - 1]]
        return chosen

    def shaken(self, filling: Filling, rng: random.Random) -> Filling:
        """Some sticks emptied and filled anew, some of their blanks first exchanged by lot."""
        sticks, left = list(filling[0]), list(filling[1])
        for _ in range(min(len(sticks), 2 + int(rng.random() * 4))):
            left += sticks.pop(int(rng.random() * len(sticks))).blanks
        way = int(rng.random() * WAYS)
        if rng.random() < HALF:
            return self.all_of(sticks, left, way)
        # Fill one stick by the way from other blanks than the longest.
        kept = [blank for blank in left if rng.random() < HALF]
        part, lost = self.all_of(sticks, kept, way)
        rest = [blank for blank in left if blank not in kept]
        return self._topped(part, [*lost, *rest], way)

    def _topped(self, sticks: list[Stick], blanks: Sequence[int], way: int) -> Filling:
        """Put blanks where they fit best, and the others on further sticks."""
        found = list(sticks)
        rest: list[int] = []
        rooms = [self.rooms[s.stock] - sum(self.sizes[b] for b in s.blanks) for s in found]
        for blank in sorted(blanks, key=lambda b: (-self.sizes[b], b)):
            size = self.sizes[blank]
            fitting = [
                (room, n)
                for n, room in enumerate(rooms)
                if size <= room and self.instance.fits[found[n].stock][blank]
            ]
            if not fitting:
                rest.append(blank)
                continue
            _, n = min(fitting)
            found[n] = Stick(found[n].stock, (*found[n].blanks, blank))
            rooms[n] -= size
        return self.all_of(found, rest, way)


HALF = 0.5
