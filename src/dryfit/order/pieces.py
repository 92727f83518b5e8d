"""Which pieces a task takes where one kind serves for another: a longer clamp for a shorter one.

A small matching: each hold has kinds that serve it, each kind so many free pieces.  Every hold is
first served by its own kind, then by the others in the order in which they are named; where that
is not enough, a piece is handed on along an alternating path (Kuhn's method), so that all are
served if that is possible at all.
"""

from collections.abc import Sequence
from dataclasses import dataclass

Asked = tuple[int, int]
"""A hold: the kind it names, and how many pieces."""
Taken = tuple[int, int, int]
"""Pieces taken: which hold of the task, by number; the kind that serves it; how many pieces."""


@dataclass(frozen=True, slots=True)
class Shortage:
    """Why a matching fails: these holds (by number) ask for more pieces than may serve them."""

    holds: tuple[int, ...]
    needed: int
    there: int


def matched(
    asked: Sequence[Asked], serving: Sequence[Sequence[int]], free: Sequence[int]
) -> tuple[Taken, ...] | Shortage:
    """Return the pieces that serve all holds, or what there is too little of.

    asked    the holds of one task
    serving  per kind: the kinds whose pieces serve in its place, itself first
    free     per kind: pieces that nobody holds; none may be below nothing
    """
    left = list(free)
    given: list[dict[int, int]] = []
    for kind, count in asked:
        own = min(count, left[kind])
        left[kind] -= own
        given.append({kind: own})

    def one_more(hold: int, seen: set[int]) -> bool:
        for kind in serving[asked[hold][0]]:
            if kind in seen:
                continue
            seen.add(kind)
            if left[kind] > 0:
                left[kind] -= 1
            else:
                giver = next(
                    (at for at, row in enumerate(given) if row.get(kind) and one_more(at, seen)),
                    None,
                )
                if giver is None:
                    continue
                given[giver][kind] -= 1
            given[hold][kind] = given[hold].get(kind, 0) + 1
            return True
        return False

    for hold, (_, count) in enumerate(asked):
        for _ in range(count - sum(given[hold].values())):
            seen: set[int] = set()
            if not one_more(hold, seen):
                return _shortage(asked, serving, free, seen)
    return tuple(
        (hold, kind, count)
        for hold, row in enumerate(given)
        for kind, count in row.items()
        if count
    )


def _shortage(
    asked: Sequence[Asked],
    serving: Sequence[Sequence[int]],
    free: Sequence[int],
    kinds: set[int],
) -> Shortage:
    """The holds that nothing but these kinds can serve: together they ask for too much (Hall)."""
    holds = tuple(at for at, (kind, _) in enumerate(asked) if set(serving[kind]) <= kinds)
    return Shortage(holds, sum(asked[at][1] for at in holds), sum(free[kind] for kind in kinds))
