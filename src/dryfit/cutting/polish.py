"""The same boards, and a larger piece to keep: the last touch of a layout that holds everything."""

from dryfit.cutting.layouts import layouts_of
from dryfit.cutting.recreate import State
from dryfit.cutting.search import Search


def polished(search: Search, rounds: int) -> State:
    """A layout as cheap as the best one whose largest leftover is as large as could be found."""
    best = search.best
    rules = search.instance.job.rules
    if best.lost or min(rules.keep_length, rules.keep_width) <= 0:
        return best
    search.budget = best.worth
    size = largest(search, best)
    for _ in range(rounds):
        state = search.ruined(best)
        if state.lost or state.worth > best.worth:
            continue
        other = largest(search, state)
        if state.worth < best.worth or other >= size:
            best, size = state, other
    search.best = best
    return best


def largest(search: Search, state: State) -> int:
    """The face of the largest leftover that is worth keeping, 0 if none is."""
    return max(
        (
            fallen.clear.size
            for layout in layouts_of(search.instance, state.boards)
            for fallen in layout.leftovers
            if fallen.keep and fallen.clear is not None
        ),
        default=0,
    )
