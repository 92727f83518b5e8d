"""The same boards, and a larger piece to keep: the last touch of a layout that holds everything."""

from dryfit.cutting.boards import Open
from dryfit.cutting.layouts import Sawing
from dryfit.cutting.recreate import State
from dryfit.cutting.search import Search


def polished(search: Search, rounds: int, patience: int) -> State:
    """A layout as cheap as the best one whose largest leftover is as large as could be found.

    It ends after `rounds`, or so many without any gain as `patience` says.
    """
    best = search.best
    rules = search.instance.job.rules
    if best.lost or min(rules.keep_length, rules.keep_width) <= 0:
        return best
    search.budget = best.worth
    size = largest(search, best)
    stale = 0
    for _ in range(rounds):
        if stale == patience:
            break
        stale += 1
        state = search.ruined(best)
        if state.lost or state.worth > best.worth:
            continue
        other = largest(search, state)
        if state.worth < best.worth or other > size:
            stale = 0
        if state.worth < best.worth or other >= size:
            best, size = state, other
    search.best = best
    return best


def largest(search: Search, state: State) -> int:
    """The face of the largest leftover that is worth keeping, 0 if none is."""
    return max((_kept(search, board) for board in state.boards), default=0)


def _kept(search: Search, board: Open) -> int:
    if board.kept < 0:
        board.kept = max(
            (
                fallen.clear.size
                for fallen in Sawing(search.instance, board).layout(1).leftovers
                if fallen.keep and fallen.clear is not None
            ),
            default=0,
        )
    return board.kept
