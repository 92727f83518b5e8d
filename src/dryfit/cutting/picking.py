"""Things that can be made in several ways: one search for the boards and for the ways.

All parts of all ways are in the job.  A state of the search has picked one way for each thing, and
only its parts are cut; now and then a thing is picked anew while boards are torn up.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from dryfit.cutting.boards import blanks_of
from dryfit.cutting.instance import Instance, compiled
from dryfit.cutting.layouts import layouts_of
from dryfit.cutting.problem import Job
from dryfit.cutting.recreate import State
from dryfit.cutting.result import Layout
from dryfit.cutting.search import Search

ANEW = 0.3
"""In this share of the rounds a thing is picked anew (ours)."""

MOST = 250_000
"""So many rounds at most of one blank; of so many blanks that part of them (ours)."""

Ways = Sequence[frozenset[str]]
"""The ways to make a thing, each as the names of its parts in the job."""


@dataclass(frozen=True, slots=True)
class Picked:
    """The number of the way that was picked for each thing, and how its parts are cut.

    `lost` counts the face of what was not cut, with more weight on what fits few boards; 0 where
    all was.
    """

    ways: tuple[int, ...]
    layouts: tuple[Layout, ...]
    lost: int


def picked(job: Job, things: Sequence[Ways], effort: int, *, cheapest: bool = False) -> Picked:
    """Return for each of the things a way to make it, so that the boards hold as much as they can.

    Parts that belong to no thing are always cut.  The search ends where all is cut, or, for the
    `cheapest` boards, when it has had all its rounds.
    """
    instance = compiled(job)
    search = _Picking(instance, things)
    blanks = max(1, len(search.wanted(search.first)))
    rounds = effort * min(800 + 160 * blanks, MOST // blanks)
    search.run(rounds, 0 if cheapest else search.budget)
    best = search.best
    return Picked(best.picked, layouts_of(instance, best.boards), best.lost)


class _Picking(Search):
    """The search, whose states have picked a way for each thing."""

    def __init__(self, instance: Instance, things: Sequence[Ways], seed: int = 1) -> None:
        names = [
            {
                instance.job.parts[index].id
                for blank in unit.blanks
                for index, _ in instance.blanks[blank].members
            }
            for unit in instance.units
        ]
        self.things = [
            [[unit for unit, own in enumerate(names) if own <= way] for way in thing]
            for thing in things
        ]
        of_things = {unit for thing in self.things for way in thing for unit in way}
        self.always = [unit for unit in range(len(names)) if unit not in of_things]
        self.first = tuple(0 for _ in things)
        super().__init__(instance, seed)
        self.weight = sum(instance.units[unit].weight for unit in self.wanted(self.first))

    def wanted(self, ways: Sequence[int]) -> list[int]:
        """Return the units that are cut where these ways are picked."""
        units = list(self.always)
        for thing, way in zip(self.things, ways, strict=True):
            units += thing[way]
        return sorted(units)

    def _beginning(self, start: int) -> State:
        """Nothing cut: the first way of everything, then the second, and so on, then by lot."""
        ways = tuple(
            start if start < len(thing) else int(self.bench.rng.random() * len(thing))
            for thing in self.things
        )
        return State([], self.wanted(ways), 0, 0, ways)

    def ruined(self, state: State) -> State:
        """The state after one round, in which a thing may have been picked anew."""
        rng = self.bench.rng.random
        if rng() < ANEW:
            state = self._anew(state, int(rng() * len(self.things)))
        return super().ruined(state)

    def _anew(self, state: State, thing: int) -> State:
        """The state with what belongs to a thing taken out, and another way of it to be cut."""
        ways = self.things[thing]
        way = int(self.bench.rng.random() * len(ways))
        if way == state.picked[thing]:
            return state
        gone = set(ways[state.picked[thing]])
        new = self._without(state, gone)
        new.left = sorted({*(unit for unit in new.left if unit not in gone), *ways[way]})
        new.picked = (*state.picked[:thing], way, *state.picked[thing + 1 :])
        return new

    def _without(self, state: State, units: set[int]) -> State:
        """Return the state with some units taken out of its boards, and what breaks a rule then."""
        gone = {blank for unit in units for blank in self.instance.units[unit].blanks}
        new = State([], list(state.left), 0, 0, state.picked)
        for board in state.boards:
            left = board
            if not gone.isdisjoint(blanks_of(board)):
                left = self.bench.copied(board)
                freed = set[int]()
                self.take_out(left, freed, set(gone))
                self.take_along(left, freed)
                new.left += sorted(freed)
                self.bench.refresh(left)
            if blanks_of(left):
                new.boards.append(left)
                new.worth += self.instance.stocks[left.stock].worth
        return new
