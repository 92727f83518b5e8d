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

    width    states kept of each level
    moves    moves tried from each state
    weight   of the bound in tenths: 10 is the plain bound, more trusts it less far ahead
    walking  count walks beside changeover
    """

    width: int
    moves: int
    weight: int
    walking: bool


@dataclass(frozen=True, slots=True)
class Found:
    """What a search ended with.

    order   task indexes
    spent   its changeover in tenths (with walks, where they count)
    opened  states opened
    """

    order: tuple[int, ...]
    spent: int
    opened: int


def search(instance: Instance, bound: Guide, beam: Beam, lookout: Lookout | None = None) -> Found:
    """The best order that a beam comes to; the lookout counts the states opened."""
    every = (1 << len(instance.station)) - 1
    first = start(instance, walking=beam.walking)
    best = first if first.done == every else None
    level = [] if best else [first]
    opened = 1
    while level:
        reached: dict[tuple[int, tuple[int, ...], int], Ranked] = {}
        for state in level:
            offspring = children(instance, state, beam.moves, walking=beam.walking)
            opened += len(offspring)
            if lookout is not None:
                lookout.count(len(offspring))
            for child in offspring:
                left = bound.remaining(every & ~child.done, child.available, child.current)
                if best is not None and child.spent + left >= best.spent:
                    continue
                if child.done == every:
                    best = child
                    continue
                key = (child.done, child.current, child.station if beam.walking else 0)
                ranked = (10 * child.spent + beam.weight * left, child.walks, child)
                if key not in reached or ranked[:2] < reached[key][:2]:
                    reached[key] = ranked
        level = _undominated(instance, reached.values(), walking=beam.walking)[: beam.width]
    assert best is not None, "there is always something to do next, also in a visit"
    return Found(best.order(), best.spent, opened)


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
