"""Proofs that no cheaper boards hold everything, so that the search may stop.

Sets of boards are gone through one kind of board after the other. Prices of the blanks tell early
which sets cannot be worth the blanks, whatever else is affordable; a set that passes them all is
held against the sharing out, which either passes it too or gives one price more.
"""

from collections.abc import Sequence

from dryfit.cutting.boxes import Steps, TooMuchWork
from dryfit.cutting.instance import Instance
from dryfit.cutting.proof import materials, shared_out
from dryfit.cutting.rooms import Counts
from dryfit.cutting.sharing import Sharing


class Least:
    """Proves for one layout after another, in so many steps in all."""

    def __init__(self, instance: Instance, most_steps: int) -> None:
        self.instance = instance
        self.steps = Steps(most_steps)
        self._cheaper: list[tuple[str, _Cheaper]] = []
        self._given_up = False

    def proved(self, stocks: Sequence[int]) -> bool:
        """Whether it is proved that boards of less worth than these do not hold all blanks.

        stocks  the stock of each board of a layout that holds everything
        """
        if self._given_up:
            return False
        try:
            if not self._cheaper:
                self._cheaper = [
                    (material, _Cheaper(self.instance, places, self.steps))
                    for material, places in materials(self.instance)
                ]
            return all(
                cheaper.none(self._worth(stocks, material)) for material, cheaper in self._cheaper
            )
        except TooMuchWork:
            self._given_up = True
            return False

    def _worth(self, stocks: Sequence[int], material: str) -> int:
        used = (self.instance.stocks[stock] for stock in stocks)
        return sum(stock.worth for stock in used if stock.board.material == material)


class _Cheaper:
    """Looks for a set of boards that is worth less and may be enough, for one material."""

    def __init__(self, instance: Instance, places: Sequence[int], steps: Steps) -> None:
        self.shared = shared = shared_out(instance, places, steps)
        self.steps = steps
        self.worths = [
            (stock.worth, stock.board.count, number)
            for number, stock in enumerate(instance.stocks)
            if any(shared.sets[number])
        ]
        # The dear ones first: few of them are affordable.
        self.worths.sort(reverse=True)
        self.needs: list[int] = []
        self.values: list[list[int]] = []
        self._learn(shared.faces)

    def _learn(self, price: Counts) -> None:
        """One price more: what all blanks are worth, and at most what comes out of a board."""
        self.needs.append(_worth(price, self.shared.quantities))
        self.values.append(
            [
                sum(max(_worth(price, one) for one in sets) for sets in self.shared.sets[number])
                for _, _, number in self.worths
            ]
        )
        self.steps.count(sum(len(sets) for room in self.shared.sets for sets in room))

    def none(self, worth: int) -> bool:
        """Whether no set of boards that is worth less may be enough."""
        return not self._some(0, worth - 1, [])

    def _some(self, place: int, budget: int, taken: list[int]) -> bool:
        self.steps.count(1 + len(self.needs))
        if any(self._too_little(price, place, budget, taken) for price in range(len(self.needs))):
            return False
        if place == len(self.worths):
            return self._enough(taken)
        worth, count, _ = self.worths[place]
        return any(
            self._some(place + 1, budget - more * worth, [*taken, more])
            for more in range(min(count, budget // worth), -1, -1)
        )

    def _too_little(self, price: int, place: int, budget: int, taken: list[int]) -> bool:
        """Whether at a price all that is still affordable beside the boards taken is too little."""
        values = self.values[price]
        short = self.needs[price] - sum(map(int.__mul__, values, taken))
        if short <= 0:
            return False
        later = self.worths[place:]
        self.steps.count(len(later))
        most = sum(
            min(count, budget // worth) * value
            for (worth, count, _), value in zip(later, values[place:], strict=True)
        )
        if most < short:
            return True
        # No worth gives more than the best bargain does.
        return all(
            value * budget < short * worth
            for (worth, _, _), value in zip(later, values[place:], strict=True)
        )

    def _enough(self, taken: list[int]) -> bool:
        sets = [
            room
            for (_, _, number), count in zip(self.worths, taken, strict=True)
            for _ in range(count)
            for room in self.shared.sets[number]
        ]
        sharing = Sharing(self.shared.quantities, sets, self.steps)
        impossible = sharing.impossible(self.shared.faces)
        if sharing.breaking is not None:
            self._learn(sharing.breaking)
        return not impossible


def _worth(price: Counts, counts: Counts) -> int:
    return sum(map(int.__mul__, price, counts))
