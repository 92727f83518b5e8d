"""Proofs that no cheaper boards hold everything, so that the search may stop.

Sets of boards are gone through one kind of board after the other. Prices of the blanks tell early
which sets cannot be worth the blanks, whatever else is affordable: first the faces, then what was
learnt from sets that passed them and that the sharing out refuted.
"""

from collections.abc import Sequence

from dryfit.cutting.boxes import Steps, TooMuchWork
from dryfit.cutting.instance import Instance
from dryfit.cutting.proof import Shared, materials, prices_of, shared_out
from dryfit.cutting.rooms import Counts
from dryfit.cutting.sharing import Sharing


class Least:
    """Proves for one layout after another, in so many steps in all."""

    def __init__(self, instance: Instance, most_steps: int) -> None:
        self.instance = instance
        self.steps = Steps(most_steps)
        self.worths = [stock.worth for stock in instance.stocks]
        self._sets: dict[str, _Sets] = {}
        self._said: dict[tuple[int, ...], bool] = {}

    def proved(self, stocks: Sequence[int]) -> bool:
        """Whether it is proved that boards of less worth than these do not hold all blanks.

        stocks  the stock of each board of a layout that holds everything
        """
        asked = tuple(sorted(stocks))
        if asked not in self._said:
            try:
                self._said[asked] = all(
                    self._none_cheaper(material, places, stocks)
                    for material, places in materials(self.instance)
                )
            except TooMuchWork:
                self._said[asked] = False
        return self._said[asked]

    def _none_cheaper(self, material: str, places: Sequence[int], stocks: Sequence[int]) -> bool:
        if material not in self._sets:
            self._sets[material] = _Sets(self.instance, places, self.steps)
        of = [stock for stock in stocks if self.instance.stocks[stock].board.material == material]
        sum_of = sum(self.worths[stock] for stock in of)
        return sum_of == 0 or _Cheaper(self._sets[material], self.worths).none(sum_of)


class _Sets:
    """Which sets of boards may be enough for the blanks of one material.

    boards  (number of the stock, how many boards)
    needs   what all blanks are worth, for one price after the other
    values  for each price and stock, what comes out of one board at most
    """

    def __init__(self, instance: Instance, places: Sequence[int], steps: Steps) -> None:
        self.instance = instance
        self.places = places
        self.steps = steps
        self.boards = [
            (number, stock.board.count)
            for number, stock in enumerate(instance.stocks)
            if any(instance.fits[number][place] for place in places)
        ]
        self.needs: list[int] = []
        self.values: list[dict[int, int]] = []
        for needed, rooms in prices_of(instance, places, steps):
            self.needs.append(needed)
            self.values.append({number: rooms.get(number, 0) for number, _ in self.boards})
        self._shared: Shared | None = None

    def may_be_enough(self, taken: Sequence[tuple[int, int]]) -> bool:
        """Whether so many boards (number of the stock, count) may hold all blanks."""
        if self._shared is None:
            self._shared = shared_out(self.instance, self.places, self.steps)
            self._learn(self._shared, self._shared.faces)
        shared = self._shared
        sets = [
            room for number, count in taken for _ in range(count) for room in shared.sets[number]
        ]
        sharing = Sharing(shared.quantities, sets, self.steps)
        impossible = sharing.impossible(shared.faces)
        if sharing.breaking is not None:
            self._learn(shared, sharing.breaking)
        return not impossible

    def _learn(self, shared: Shared, price: Counts) -> None:
        self.needs.append(_worth(price, shared.quantities))
        self.values.append(
            {
                number: sum(max(_worth(price, one) for one in room) for room in shared.sets[number])
                for number, _ in self.boards
            }
        )
        self.steps.count(sum(len(room) for stock in shared.sets for room in stock))


def _worth(price: Counts, counts: Counts) -> int:
    return sum(map(int.__mul__, price, counts))


class _Cheaper:
    """Looks for a set of boards that is worth less and may be enough."""

    def __init__(self, sets: _Sets, weighed: Sequence[int]) -> None:
        self.sets = sets
        # The dear ones first: few of them are affordable. What costs nothing is taken at the end.
        self.boards = sorted(
            ((weighed[number], count, number) for number, count in sets.boards), reverse=True
        )

    def none(self, worth: int) -> bool:
        """Whether no set of boards that is worth less may be enough."""
        return not self._some(0, worth - 1, [])

    def _some(self, place: int, budget: int, taken: list[tuple[int, int]]) -> bool:
        sets = self.sets
        sets.steps.count(1 + len(sets.needs))
        if any(self._too_little(price, place, budget, taken) for price in range(len(sets.needs))):
            return False
        if place == len(self.boards):
            return sets.may_be_enough(taken)
        worth, count, number = self.boards[place]
        if worth == 0:
            return self._some(place + 1, budget, [*taken, (number, count)])
        return any(
            self._some(place + 1, budget - more * worth, [*taken, (number, more)])
            for more in range(min(count, budget // worth), -1, -1)
        )

    def _too_little(
        self, price: int, place: int, budget: int, taken: Sequence[tuple[int, int]]
    ) -> bool:
        """Whether at a price all that is still affordable beside the boards taken is too little."""
        values = self.sets.values[price]
        short = self.sets.needs[price] - sum(values[number] * count for number, count in taken)
        if short <= 0:
            return False
        later = self.boards[place:]
        self.sets.steps.count(len(later))
        paid = 0
        for worth, count, number in later:
            if worth == 0:
                short -= count * values[number]
            else:
                paid += min(count, budget // worth) * values[number]
        if paid < short:
            return True
        # Nothing gives more for what it is worth than the best bargain does.
        return short > 0 and all(
            values[number] * budget < short * worth for worth, _, number in later if worth
        )
