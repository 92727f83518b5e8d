"""Can the blanks be shared out to the rooms? A search through all ways, cut short by prices.

Whatever prices the blanks have, the fullest sets of all rooms must be worth at least as much as
all blanks together. Prices that come closest to breaking this are found by raising those of the
blanks that the dearest sets leave out (a subgradient of the linear relaxation over sets). Prices
are whole numbers, so what they prove is proved.
"""

from collections.abc import Sequence

from dryfit.cutting.boxes import Steps
from dryfit.cutting.rooms import Counts

ROUNDS = 120
SCALE = 1 << 20


class Sharing:
    """Rooms with their fullest sets, and what is to be shared out.

    breaking  prices at which the rooms cannot be worth the blanks, once some are found
    """

    def __init__(self, quantities: Counts, sets: Sequence[Sequence[Counts]], steps: Steps) -> None:
        self.quantities = quantities
        self.sets = sorted(sets, key=len)
        self.steps = steps
        self.prices: list[Counts] = []
        self.breaking: Counts | None = None

    def impossible(self, faces: Counts) -> bool:
        """Whether no way to share out holds every blank. `faces` are prices to begin with."""
        if self._priced_out(faces):
            return True
        return not self._shared()

    def _priced_out(self, faces: Counts) -> bool:
        """Look for prices at which the rooms together cannot be worth the blanks."""
        largest = max(faces)
        price = [max(1, SCALE * face // largest) for face in faces]
        best: list[tuple[int, Counts]] = []
        for turn in range(ROUNDS):
            worths = tuple(price)
            lack = list(self.quantities)
            short = sum(map(int.__mul__, worths, self.quantities))
            for sets in self.sets:
                self.steps.count(len(sets))
                dearest = max(sets, key=lambda one: sum(map(int.__mul__, worths, one)))
                short -= sum(map(int.__mul__, worths, dearest))
                lack = [left - taken for left, taken in zip(lack, dearest, strict=True)]
            if short > 0:
                self.breaking = worths
                return True
            best.append((short, worths))
            norm = sum(one * one for one in lack)
            if norm == 0:
                break
            stride = max(1, (SCALE // 50 - short) // norm * 100 // (100 + 2 * turn))
            price = [max(0, p + stride * one) for p, one in zip(price, lack, strict=True)]
            if not any(price):
                break
        best.sort(key=lambda one: -one[0])
        self.prices = [worths for _, worths in best[:12]]
        self.prices.append(tuple(max(1, SCALE * face // largest) for face in faces))
        return False

    def _shared(self) -> bool:
        """Whether some way to share out holds all, room after room."""
        rests = self._rests()
        worths = [
            [[sum(map(int.__mul__, price, one)) for price in self.prices] for one in sets]
            for sets in self.sets
        ]
        failed: set[tuple[int, Counts]] = set()
        kept = [[price[kind] for kind in range(len(self.quantities))] for price in self.prices]

        def holds(room: int, left: Counts) -> bool:
            if not any(left):
                return True
            if room == len(self.sets) or (room, left) in failed:
                return False
            self.steps.count(1)
            needs = [sum(map(int.__mul__, price, left)) for price in kept]
            if any(need > rest for need, rest in zip(needs, rests[room], strict=True)):
                failed.add((room, left))
                return False
            after = rests[room + 1]
            tried: set[Counts] = set()
            for one, worth in zip(self.sets[room], worths[room], strict=True):
                self.steps.count(1)
                if any(
                    need - taken > rest
                    for need, taken, rest in zip(needs, worth, after, strict=True)
                ):
                    continue
                rest_of = tuple(max(0, a - b) for a, b in zip(left, one, strict=True))
                if rest_of not in tried:
                    tried.add(rest_of)
                    if holds(room + 1, rest_of):
                        return True
            failed.add((room, left))
            return False

        return holds(0, self.quantities)

    def _rests(self) -> list[list[int]]:
        """For each room and price: the most that it and those after it can be worth."""
        rests = [[0] * len(self.prices)]
        for sets in reversed(self.sets):
            self.steps.count(len(sets))
            most = [max(sum(map(int.__mul__, price, one)) for one in sets) for price in self.prices]
            rests.append([a + b for a, b in zip(rests[-1], most, strict=True)])
        return rests[::-1]
