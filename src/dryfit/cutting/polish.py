"""The same boards, cut with less trouble: the last touch of a layout that holds everything.

Of layouts that take the same boards the better one loses less wood where a part comes out of a
board that does not suit it, has fewer cuts and settings of the fence, and leaves a larger piece.
"""

from fractions import Fraction

from dryfit.cutting.boards import Open
from dryfit.cutting.layouts import Sawing
from dryfit.cutting.recreate import State
from dryfit.cutting.result import Layout
from dryfit.cutting.search import Search

METRE = 100_000
LEFTOVER = Fraction(1, 2)
"""What a leftover is worth of the same wood in a board (our guess: it may never be used)."""

Trouble = tuple[Fraction, Fraction]
"""What a board's cuts cost in value, and what its largest leftover is worth."""


def polished(search: Search, rounds: int, patience: int) -> State:
    """A layout as cheap as the best one, with the least trouble that could be found.

    It ends after `rounds`, or so many without any gain as `patience` says.
    """
    best = search.best
    if best.lost or not _matters(search):
        return best
    search.budget = best.worth
    least = trouble(search, best)
    stale = 0
    for _ in range(rounds):
        if stale == patience:
            break
        stale += 1
        state = search.ruined(best)
        if state.lost or state.worth > best.worth:
            continue
        other = trouble(search, state)
        if state.worth < best.worth or other < least:
            stale = 0
        if state.worth < best.worth or other <= least:
            best, least = state, other
    search.best = best
    return best


def _matters(search: Search) -> bool:
    job = search.instance.job
    keeps = min(job.rules.keep_length, job.rules.keep_width) > 0
    costs = job.rules.crosscut_cost + job.rules.rip_cost + job.rules.fence_cost
    return keeps or costs > 0 or any(part.losses for part in job.parts)


def trouble(search: Search, state: State) -> Fraction:
    """What all cuts cost in value, less the worth of the largest leftover."""
    found = [_of_board(search, board) for board in state.boards]
    return sum((cost for cost, _ in found), Fraction(0)) - max(
        (worth for _, worth in found), default=Fraction(0)
    )


def _of_board(search: Search, board: Open) -> Trouble:
    if board.trouble is None:
        layout = Sawing(search.instance, board).layout(1)
        board.trouble = (Fraction(cost_of(search, layout)), _kept(search, board, layout))
    return board.trouble


def cost_of(search: Search, layout: Layout) -> int:
    """The losses of the pieces on this board, and what its cuts cost."""
    rules = search.instance.job.rules
    losses = search.losses.get(layout.board, {})
    rips = [cut for cut in layout.cuts if cut.saw == "rip"]
    ripped = sum(cut.piece.length for cut in rips)
    return (
        sum(losses.get(piece.part, 0) for piece in layout.pieces)
        + rules.crosscut_cost * (len(layout.cuts) - len(rips))
        + rules.rip_cost * ripped // METRE
        + rules.fence_cost * len({cut.at for cut in rips})
    )


def _kept(search: Search, board: Open, layout: Layout) -> Fraction:
    """What the largest leftover is worth; a board without a value counts as 1."""
    face = max(
        (
            fallen.clear.size
            for fallen in layout.leftovers
            if fallen.keep and fallen.clear is not None
        ),
        default=0,
    )
    stock = search.instance.stocks[board.stock].board
    return LEFTOVER * Fraction(face * (stock.value or 1), stock.length * stock.width)
