"""The search: forbid what the best layout took, and minimise what is then left uncut.

Ruin and recreate: some boards are emptied or loosened, and what came out goes back in a noisy
order. A result is accepted when little more is left uncut than before. When nothing is left, the
layout is the best, and the next one may take less stock (research method 6). All of it is counted,
none of it is timed, so that the same job gives the same layout.
"""

from collections.abc import Sequence

from dryfit.cutting.boards import Bench, Open, blanks_of, leaves_of
from dryfit.cutting.instance import Instance
from dryfit.cutting.recreate import State, put_unit
from dryfit.cutting.slicing import APPEND
from dryfit.cutting.sticks import Stick

KEYS = 5
STARTS = 12
SWING = 3_000
"""Rounds after which the search is hot again."""


class Search:
    """One search for the least stock that holds all units, or else the most of them."""

    def __init__(self, instance: Instance, seed: int = 1) -> None:
        self.bench = Bench(instance, seed)
        self.instance = instance
        self.unit_of = {
            blank: unit for unit, one in enumerate(instance.units) for blank in one.blanks
        }
        self.open_to = [
            [
                stock
                for stock, fits in enumerate(instance.fits)
                if all(fits[blank] for blank in unit.blanks)
            ]
            for unit in instance.units
        ]
        self.budget = sum(stock.worth * stock.board.count for stock in instance.stocks)
        self.ranks = [
            [self._rank(unit, key) for unit in range(len(instance.units))] for key in range(KEYS)
        ]
        self.cheapest = [
            min((instance.stocks[stock].worth for stock in stocks), default=0)
            for stocks in self.open_to
        ]
        self.losses: dict[str, dict[str, int]] = {}
        for part in instance.job.parts:
            for board, loss in part.losses:
                self.losses.setdefault(board, {})[part.id] = loss
        self.weight = sum(unit.weight for unit in instance.units)
        self.rounds = 0
        self.stale = 0
        self.best = self._start()
        self.current = self._within(self.best) if self.best.lost == 0 else self.best

    def begin_with(self, sticks: Sequence[Stick]) -> None:
        """Take rows of blanks as the best layout so far, if they are better and break no rule."""
        boards = []
        held: set[int] = set()
        for stick in sticks:
            board = self.bench.opened(stick.stock)
            for blank in stick.blanks:
                size = self.instance.fits[stick.stock][blank][0]
                space = next((one for one in board.spaces if one[6] == APPEND), None)
                if space is None or not self.bench.insert(board, space, blank, size):
                    return
                held.add(self.unit_of[blank])
            boards.append(board)
        units = self.instance.units
        left = [unit for unit in range(len(units)) if unit not in held]
        lost = sum(units[unit].weight for unit in left)
        worth = sum(self.instance.stocks[board.stock].worth for board in boards)
        if (lost, worth) < (self.best.lost, self.best.worth):
            self.best = State(boards, left, lost, worth)
            self.current = self.best if lost else self._within(self.best)

    # -- beginning

    def _start(self) -> State:
        """The best of some greedy layouts."""
        best: State | None = None
        for start in range(STARTS):
            state = self._beginning(start)
            self.recreate(state, set(), noise=0.0 if start < KEYS else 0.2, key=start % KEYS)
            if best is None or (state.lost, state.worth) < (best.lost, best.worth):
                best = state
        assert best is not None
        return best

    def _beginning(self, _: int) -> State:
        """Nothing cut, and everything to be cut."""
        return State([], list(range(len(self.instance.units))), 0, 0)

    def run(
        self, rounds: int, least: int = 0, patience: int | None = None, *, settled: bool = False
    ) -> State:
        """Search on for so many rounds at most.

        least     a layout of everything that is worth so little ends the search
        patience  so do so many rounds without any gain, once everything has its place
        settled   or even if it has not
        """
        scale = self.weight / 400 + 1
        for _ in range(rounds):
            if self.best.lost == 0 and self.best.worth <= least:
                break
            if patience is not None and self.stale >= patience and (settled or not self.best.lost):
                break
            heat = scale * (1 - self.rounds % SWING / SWING) ** 2
            self.rounds += 1
            self.stale += 1
            state = self.ruined(self.current)
            if state.lost == 0:
                if self.best.lost or state.worth < self.best.worth:
                    self.best = state
                    self.stale = 0
                self.current = self._within(state)
                continue
            if self.best.lost and (state.lost, state.worth) < (self.best.lost, self.best.worth):
                self.best = state
                self.stale = 0
            change = state.lost - self.current.lost
            if change <= 0 or change <= heat * _daring(self.bench.rng.random()):
                self.current = state
        return self.best

    def _within(self, state: State) -> State:
        """The state without its emptiest boards, so that the next one has to take less."""
        self.budget = self.best.worth - 1
        boards = list(state.boards)
        left = list(state.left)
        worth = state.worth
        while boards and worth > self.budget:
            index = max(range(len(boards)), key=lambda i: self._emptiness(boards[i]))
            board = boards.pop(index)
            worth -= self.instance.stocks[board.stock].worth
            left += sorted({self.unit_of[blank] for blank in blanks_of(board)})
        lost = sum(self.instance.units[unit].weight for unit in left)
        return State(boards, left, lost, worth, state.picked)

    def _emptiness(self, board: Open) -> float:
        return board.free / self.instance.stocks[board.stock].clear

    # -- ruin

    def ruined(self, state: State) -> State:
        """The state after one round of ruin and recreate."""
        rng = self.bench.rng.random
        new = State(list(state.boards), list(state.left), 0, state.worth, state.picked)
        fresh: set[int] = set()
        emptied = 2 if rng() < 0.2 else 1 if rng() < 0.6 else 0
        for _ in range(min(emptied, len(new.boards))):
            self._empty(new, int(rng() * len(new.boards)))
        loosened = int(rng() * 4) + (emptied == 0)
        for _ in range(min(loosened, len(new.boards))):
            self._loosen(new, int(rng() * len(new.boards)), fresh)
        draw = rng()
        self.recreate(new, fresh, noise=0.4 * draw * draw, key=int(rng() * KEYS))
        return new

    def _empty(self, state: State, index: int) -> None:
        board = state.boards.pop(index)
        state.worth -= self.instance.stocks[board.stock].worth
        state.left += sorted({self.unit_of[blank] for blank in blanks_of(board)})

    def _loosen(self, state: State, index: int, fresh: set[int]) -> None:
        """Take some pieces or rows out of a board."""
        rng = self.bench.rng.random
        board = state.boards[index]
        if index not in fresh:
            board = self.bench.copied(board)
            state.boards[index] = board
            fresh.add(index)
        target = 0.1 + 0.3 * rng()
        units: set[int] = set()
        whole = len(blanks_of(board))
        while len(units) < max(1, target * whole):
            leaves = [
                (plot, leaf)
                for plot in board.plots
                if plot.root is not None
                for leaf in leaves_of(plot.root)
            ]
            if not leaves:
                break
            plot, node = leaves[int(rng() * len(leaves))]
            for _ in range(int(rng() * 3)):
                if node.up is not None and node.up.up is not None:
                    node = node.up
            units.update(self.unit_of[blank] for blank in self.bench.remove(board, plot, node))
        self.take_along(board, units)
        state.left += sorted(units)
        if not blanks_of(board):
            state.boards.pop(index)
            state.worth -= self.instance.stocks[board.stock].worth
            rest = {i - (i > index) for i in fresh if i != index}
            fresh.clear()
            fresh.update(rest)
            return
        self.bench.refresh(board)

    def take_along(self, board: Open, units: set[int]) -> None:
        """Take the others of a torn group out as well."""
        torn = (
            {blank for unit in units for blank in self.instance.units[unit].blanks}
            if any(len(self.instance.units[unit].blanks) > 1 for unit in units)
            else set()
        )
        self.take_out(board, units, torn)

    def take_out(self, board: Open, units: set[int], torn: set[int]) -> None:
        """Take blanks out of a board; `units` learns what comes out, `torn` what has to as well."""
        while torn:
            found = next(
                (
                    (plot, leaf)
                    for plot in board.plots
                    if plot.root is not None
                    for leaf in leaves_of(plot.root)
                    if leaf.blank in torn
                ),
                None,
            )
            if found is None:
                return
            for blank in self.bench.remove(board, *found):
                unit = self.unit_of[blank]
                units.add(unit)
                torn.update(self.instance.units[unit].blanks)

    # -- recreate

    def recreate(self, state: State, fresh: set[int], noise: float, key: int) -> None:
        """Put back what goes back, in a noisy order, and reckon what is lost."""
        rng = self.bench.rng.random
        units = self.instance.units
        ranks = self.ranks[key]
        order = sorted(
            (-ranks[unit] * (1 + noise * (rng() - 0.5) * 2), unit) for unit in state.left
        )
        way = int(rng() * 3)
        left: list[int] = []
        failed: set[int] = set()
        for _, unit in order:
            kind = units[unit].kind
            if kind in failed:
                left.append(unit)
            elif not put_unit(self.bench, state, fresh, unit, way, self._further):
                failed.add(kind)
                left.append(unit)
        state.left = left
        state.lost = sum(units[unit].weight for unit in left)

    def _rank(self, unit: int, key: int) -> int:
        blanks = [self.instance.blanks[blank] for blank in self.instance.units[unit].blanks]
        if key == 0:
            return self.instance.units[unit].weight
        if key == 1:
            return max(max(blank.length, blank.width) for blank in blanks)
        if key == 2:
            return max(blank.length for blank in blanks)
        if key == 3:
            return max(blank.width for blank in blanks)
        return sum(blank.length + blank.width for blank in blanks)

    def _further(self, state: State, unit: int) -> int | None:
        """The stock to take a further board of, if the budget allows one."""
        if state.worth + self.cheapest[unit] > self.budget:
            return None
        used = [0] * len(self.instance.stocks)
        for board in state.boards:
            used[board.stock] += 1
        open_to = [
            stock
            for stock in self.open_to[unit]
            if used[stock] < self.instance.stocks[stock].board.count
            and state.worth + self.instance.stocks[stock].worth <= self.budget
        ]
        if not open_to:
            return None
        draw = self.bench.rng.random()
        if draw < 0.3:
            return open_to[int(draw / 0.3 * len(open_to))]
        stocks = self.instance.stocks
        return min(
            open_to, key=lambda stock: (stocks[stock].worth // (stocks[stock].clear + 1), stock)
        )


def _daring(draw: float) -> float:
    """Small for most draws from 0 to 1, and large for a few; the same on every machine.

    It stands for minus the logarithm, which differs between machines in the last digit.
    """
    return (1 - draw * draw) / (2 * draw + 1e-9)
