"""Beam search for few changeovers: level by level, the most promising states are kept."""

from collections.abc import Iterable
from dataclasses import dataclass

from dryfit.order.guide import Guide
from dryfit.order.instance import Instance
from dryfit.order.states import State, children, dearer, start
from dryfit.order.watching import Lookout

Ranked = tuple[int, int, State]  # rank, walks, state


@dataclass(frozen=True, slots=True)
class Beam:
    """How a search is cut.

    width    states kept of each level, None for all
    moves    moves tried from each state, None for all
    weight   of the bound in tenths: 10 is the plain bound, more trusts it less far ahead
    walking  count walks beside changeover
    """

    width: int | None
    moves: int | None
    weight: int
    walking: bool


@dataclass(frozen=True, slots=True)
class Found:
    """What a search ended with.

    order     task indexes, None where the ceiling cut everything
    spent     its changeover in tenths (with walks, where they count)
    opened    states opened
    complete  nothing was left out but what cannot be cheaper: the order is the best there is, or
              if there is none, none is below the ceiling
    """

    order: tuple[int, ...] | None
    spent: int
    opened: int
    complete: bool


def search(
    instance: Instance,
    bound: Guide,
    beam: Beam,
    ceiling: int | None = None,
    lookout: Lookout | None = None,
) -> Found:
    """The best order that a beam comes to; with a ceiling only one that spends less.

    The lookout counts the states opened.
    """
    every = (1 << len(instance.station)) - 1
    first = start(instance, walking=beam.walking)
    best = first if first.done == every else None
    limit = ceiling
    level = [] if best else [first]
    opened, complete = 1, True
    while level:
        reached: dict[tuple[int, tuple[int, ...], int], Ranked] = {}
        for state in level:
            offspring, cut = children(instance, state, beam.moves, walking=beam.walking)
            complete = complete and not cut
            opened += len(offspring)
            if lookout is not None:
                lookout.count(len(offspring))
            for child in offspring:
                left = bound.remaining(every & ~child.done, child.available, child.current)
                if limit is not None and child.spent + left >= limit:
                    continue
                if child.done == every:
                    best, limit = child, child.spent
                    continue
                key = (child.done, child.current, child.station if beam.walking else 0)
                ranked = (10 * child.spent + beam.weight * left, child.walks, child)
                if key not in reached or ranked[:2] < reached[key][:2]:
                    reached[key] = ranked
        survivors = _undominated(instance, reached.values(), walking=beam.walking)
        complete = complete and (beam.width is None or len(survivors) <= beam.width)
        level = survivors[: beam.width]
    if best is None:
        return Found(None, 0, opened, complete and not beam.walking)
    return Found(best.order(), best.spent, opened, complete and not beam.walking)


def _undominated(instance: Instance, ranked: Iterable[Ranked], *, walking: bool) -> list[State]:
    """States that no other one with the same tasks done makes pointless, best rank first."""
    kept_by_done: dict[int, list[State]] = {}
    survivors = []
    in_order = sorted(ranked, key=lambda item: (item[0], -item[2].done.bit_count(), item[1]))
    for _, _, state in in_order:
        rivals = kept_by_done.setdefault(state.done, [])
        if not any(dearer(instance, rival, state, walking=walking) for rival in rivals):
            rivals.append(state)
            survivors.append(state)
    return survivors
