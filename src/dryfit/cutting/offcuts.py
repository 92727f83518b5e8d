"""Offcuts are used up, so that what is left of larger boards stays large.

The least worth of boards often is one large board that holds everything, where offcuts lie beside
that some blanks fit.  Here a board is relieved of what an offcut can take, if the stock is worth
more afterwards: what is left of all boards together, less what the cuts cost.
"""

from dataclasses import dataclass
from fractions import Fraction

from dryfit.cutting.boards import Open, blanks_of
from dryfit.cutting.layouts import Sawing
from dryfit.cutting.polish import cost_of
from dryfit.cutting.recreate import State, put_unit
from dryfit.cutting.search import KEYS, Search

SMALL = Fraction(2, 5)
"""What a small leftover is worth of the same wood in a board; a large one twice that (ours)."""

DONORS = 3
"""So many boards are relieved at most for one offcut, the largest first."""

TRIES = 2 * KEYS

MORE_CUTS = 3
"""An offcut may cost so many cuts and settings more: a rip with its setting, and a crosscut."""


@dataclass(frozen=True, slots=True)
class Weighed:
    """What a layout takes of the worth of the stock, and its cuts and settings of the fence."""

    taken: Fraction
    cuts: int

    def within(self, limit: int) -> tuple[int, Fraction, int]:
        """An order of layouts, by what they take where they have no more cuts than the limit."""
        return max(0, self.cuts - limit), self.taken, self.cuts


Found = tuple[State, Weighed]


def offcuts_used(search: Search, best: State, patience: int) -> State:
    """The best layout, with offcuts used up where the stock is worth more then.

    Nothing more is bought, and what is kept for last stays.  Once an offcut is used, better cuts
    are looked for until `patience` rounds bring no gain.
    """
    if best.lost or not _free(search, best):
        return best
    found = best, weighed(search, best)
    for stock in _free(search, best):
        while stock in _free(search, found[0]):
            other = _with(search, found, stock, patience // 4)
            if other is None:
                break
            found = other
    if found[0] is best:
        return best
    return _settled(search, found, found[1].cuts, patience)[0]


def weighed(search: Search, state: State) -> Weighed:
    """What the boards are worth and the cuts cost, less what falls and is kept."""
    for board in state.boards:
        if board.weighed is None:
            board.weighed = _of_board(search, board)
    found = [board.weighed for board in state.boards if board.weighed is not None]
    return Weighed(sum((taken for taken, _ in found), Fraction(0)), sum(cuts for _, cuts in found))


def _of_board(search: Search, open_board: Open) -> tuple[Fraction, int]:
    layout = Sawing(search.instance, open_board).layout(1)
    board = search.instance.stocks[open_board.stock].board
    largest = max(one.length * one.width for one in search.instance.job.boards)
    taken = Fraction(board.value + cost_of(search, layout))
    for fallen in layout.leftovers:
        if fallen.keep and fallen.clear is not None:
            face = fallen.clear.size
            rate = SMALL * (1 + Fraction(face, largest))
            taken -= rate * Fraction(face * board.value, board.length * board.width)
    settings = {cut.at for cut in layout.cuts if cut.saw == "rip"}
    return taken, len(layout.cuts) + len(settings)


def _free(search: Search, state: State) -> list[int]:
    """Offcuts that are not all in use and may hold a blank, those of the least worth first."""
    stocks = search.instance.stocks
    used = [board.stock for board in state.boards]
    return [
        number
        for number in sorted(range(len(stocks)), key=lambda one: (stocks[one].worth, one))
        for board in [stocks[number].board]
        if board.offcut and board.price is None and not board.last
        if used.count(number) < board.count
        if any(number in open_to for open_to in search.open_to)
    ]


def _with(search: Search, before: Found, stock: int, patience: int) -> Found | None:
    """The layout with one more offcut in use, None where that is no better."""
    state, weight = before
    stocks = search.instance.stocks
    limit = weight.cuts + MORE_CUTS
    donors = sorted(
        (place for place, one in enumerate(state.boards) if not stocks[one.stock].board.offcut),
        key=lambda place: (-stocks[state.boards[place].stock].clear, place),
    )
    best: Found | None = None
    for donor in donors[:DONORS]:
        for attempt in range(TRIES):
            other = _relieved(search, state, donor, stock, attempt)
            if other is None:
                continue
            own = weighed(search, other)
            if best is None or own.within(limit) < best[1].within(limit):
                best = other, own
    if best is None:
        return None
    best = _settled(search, best, limit, patience)
    return best if best[1].within(limit) < weight.within(limit) else None


def _relieved(search: Search, state: State, donor: int, stock: int, attempt: int) -> State | None:
    """The layout with a board cut anew after an offcut took what fits of its blanks."""
    bench, key = search.bench, attempt % KEYS
    board = state.boards[donor]
    units = sorted({search.unit_of[blank] for blank in blanks_of(board)})
    units.sort(key=lambda unit: -search.ranks[key][unit])
    offcut = State([bench.opened(stock)], [], 0, 0)
    rest = [
        unit
        for unit in units
        if stock not in search.open_to[unit]
        or not put_unit(bench, offcut, set(), unit, attempt % 3, _no_further)
    ]
    if len(rest) == len(units):
        return None
    worths = [one.worth for one in search.instance.stocks]
    search.budget = state.worth + worths[stock]
    other = State(
        [*state.boards[:donor], *state.boards[donor + 1 :], *offcut.boards],
        rest,
        0,
        state.worth - worths[board.stock] + worths[stock],
        state.picked,
    )
    search.recreate(other, set(), noise=0.0 if attempt < KEYS else 0.2, key=key)
    return None if other.lost else other


def _no_further(_: State, __: int) -> int | None:
    return None


def _settled(search: Search, found: Found, limit: int, patience: int) -> Found:
    """The layout with better cuts, of boards worth no more, with no offcut less in use."""
    state, weight = found
    used = _offcuts(search, state)
    search.budget = state.worth
    stale = 0
    while stale < patience:
        stale += 1
        other = search.ruined(state)
        if other.lost or other.worth > search.budget or _offcuts(search, other) < used:
            continue
        own = weighed(search, other)
        if own.within(limit) < weight.within(limit):
            stale = 0
        if own.within(limit) <= weight.within(limit):
            state, weight = other, own
    return state, weight


def _offcuts(search: Search, state: State) -> int:
    return sum(search.instance.stocks[board.stock].board.offcut for board in state.boards)
