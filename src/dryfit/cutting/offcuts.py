"""Offcuts are used up, so that what is left of larger boards stays large.

The least worth of boards often is one large board that holds everything, where offcuts lie beside
that some blanks fit.  Here a board is relieved of what an offcut can take, if the stock is worth
more afterwards: what is left of all boards together, less what the cuts cost.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from dryfit.cutting.boards import blanks_of
from dryfit.cutting.layouts import Sawing
from dryfit.cutting.polish import cost_of
from dryfit.cutting.recreate import State, put_unit
from dryfit.cutting.search import KEYS, Search

SMALL = Fraction(2, 5)
"""What a small leftover is worth of the same wood in a board; a large one up to twice that (ours)."""

DONORS = 3
"""So many boards are relieved at most for one offcut, the largest first."""

TRIES = 2 * KEYS

MORE_CUTS = 2
"""So many more cuts and settings of the fence are put up with for an offcut that is used up."""


@dataclass(frozen=True, slots=True)
class Weighed:
    """What a layout takes of the worth of the stock, and its cuts and settings of the fence."""

    taken: Fraction
    cuts: int


def offcuts_used(search: Search, best: State, patience: int) -> State:
    """The best layout, with offcuts used up where the stock is worth more then.

    Nothing more is bought, and what is kept for last stays.  Once an offcut is used, better cuts
    are looked for until `patience` rounds bring no gain.
    """
    if best.lost:
        return best
    state, weight = best, weighed(search, best)
    for stock in list(_free(search, best)):
        while stock in _free(search, state):
            found = _with(search, state, weight, stock)
            if found is None:
                break
            state, weight = found
    return best if state is best else _settled(search, state, weight, patience)


def weighed(search: Search, state: State) -> Weighed:
    """What the boards are worth and the cuts cost, less what falls and is kept."""
    job = search.instance.job
    largest = max(board.length * board.width for board in job.boards)
    taken, count = Fraction(0), 0
    for one in state.boards:
        layout = Sawing(search.instance, one).layout(1)
        board = search.instance.stocks[one.stock].board
        taken += board.value + cost_of(search, layout)
        count += len(layout.cuts) + len({cut.at for cut in layout.cuts if cut.saw == "rip"})
        for fallen in layout.leftovers:
            if fallen.keep and fallen.clear is not None:
                face = fallen.clear.size
                rate = SMALL * (1 + Fraction(face, largest))
                taken -= rate * Fraction(face * board.value, board.length * board.width)
    return Weighed(taken, count)


def _free(search: Search, state: State) -> Iterator[int]:
    """Offcuts that are not all in use and may hold a blank, those of the least worth first."""
    stocks = search.instance.stocks
    used = [board.stock for board in state.boards]
    for number in sorted(range(len(stocks)), key=lambda one: (stocks[one].worth, one)):
        board = stocks[number].board
        if not board.offcut or board.price is not None or board.last:
            continue
        if used.count(number) < board.count and any(number in open_to for open_to in search.open_to):
            yield number


def _with(
    search: Search, state: State, weight: Weighed, stock: int
) -> tuple[State, Weighed] | None:
    """The layout with one more offcut in use, None where that is no better."""
    stocks = search.instance.stocks
    donors = sorted(
        (place for place, one in enumerate(state.boards) if not _offcut(search, one.stock)),
        key=lambda place: (-stocks[state.boards[place].stock].clear, place),
    )
    best: tuple[State, Weighed] | None = None
    for donor in donors[:DONORS]:
        for attempt in range(TRIES):
            other = _relieved(search, state, donor, stock, attempt)
            if other is None:
                continue
            own = weighed(search, other)
            if own.cuts > weight.cuts + MORE_CUTS:
                continue
            if own.taken < (weight if best is None else best[1]).taken:
                best = other, own
    return best


def _offcut(search: Search, stock: int) -> bool:
    return search.instance.stocks[stock].board.offcut


def _relieved(
    search: Search, state: State, donor: int, stock: int, attempt: int
) -> State | None:
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


def _settled(search: Search, state: State, weight: Weighed, patience: int) -> State:
    """The layout, with better cuts of the boards in it."""
    search.budget = state.worth
    stale = 0
    while stale < patience:
        stale += 1
        other = search.ruined(state)
        if other.lost or other.worth > state.worth:
            continue
        own = weighed(search, other)
        if own.cuts <= weight.cuts and own.taken <= weight.taken:
            if (own.taken, own.cuts) < (weight.taken, weight.cuts):
                stale = 0
            state, weight = other, own
    return state
