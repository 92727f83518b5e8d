"""What waits to be solved: sums that lean on unknown sizes, and relations between distances."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from itertools import islice

from dryfit.placing.positions import WHOLE, Face, Positions, Reason
from dryfit.placing.relations import Equal, Measure, Relation, Statement
from dryfit.placing.solving import Contradiction, Counted, Solve, linear_reason

MOST_AT_ONCE = 16
"""Places told after one solve; what they lead to is found faster by plain facts."""

Pair = tuple[Face, Face]
Sizes = Callable[[], Iterable[tuple[str, Sequence[Pair]]]]
Places = Callable[[], Iterable[tuple[str, Face]]]


@dataclass(slots=True)
class Equations:
    """Statements and relations over some positions, and what was found to contradict.

    `measures` are distances that a sum may be told in.
    """

    positions: Positions
    measures: tuple[Measure, ...] = ()
    statements: list[Statement] = field(default_factory=list)
    relations: list[Relation] = field(default_factory=list)
    equals: dict[Equal, None] = field(default_factory=dict)
    contradictions: list[Contradiction] = field(default_factory=list)
    _solved_at: tuple[int, int] = (-1, -1)

    def state_what_is_known(self) -> bool:
        """Turn statements and equal distances that are known into facts; return if any was."""
        waiting: list[Statement] = []
        for statement in self.statements:
            told = statement.distance(self.positions)
            if told is None:
                waiting.append(statement)
            else:
                self.positions.add(statement.start, statement.end, *told)
        open_ones = [each for each in self.equals if each.share(self.positions) is None]
        stated = len(waiting) < len(self.statements) or len(open_ones) < len(self.equals)
        self.statements, self.equals = waiting, dict.fromkeys(open_ones)
        return stated

    def solve(self, alike: Iterable[Equal] = ()) -> Solve:
        """Return everything that waits, and the given distances, solved together."""
        stated = (statement.relation() for statement in self.statements)
        equal = (each for one in (*self.equals, *alike) for each in one.relations())
        return Solve(self.positions, (*stated, *self.relations, *equal), self.measures)

    def tell(self, alike: Iterable[Equal], sizes: Sizes, places: Places) -> bool:
        """Solve, and add what is determined as facts; return whether there was any.

        Sizes come first, one pair of faces for each (`sizes` gives labels with the pairs of equal
        copies): what follows from them is told by plain facts, whose reasons are shorter.  Where
        no size is told, some of the `places` are whose distance from the whole is determined.
        """
        waiting = (*self.statements, *self.relations, *self.equals)
        state = (self.positions.news, len(waiting))
        if state == self._solved_at:
            return False
        self._solved_at = state
        solve = self.solve(alike)
        if not solve.relations:
            return False
        self._keep_contradictions(solve.contradictions())
        equal = [(each.reason.label, each.pairs) for each in self.equals]
        wanted = (*sizes(), *equal)
        told = list(_sizes_told(solve, wanted))
        told = told or list(islice(_places_told(solve, places()), MOST_AT_ONCE))
        for (start, end), distance, reason in told:
            self.positions.add(start, end, distance, reason)
        return bool(told)

    def _keep_contradictions(self, found: Sequence[Contradiction]) -> None:
        # Once told, a relation that cannot hold is out of the game.
        if not found:
            return
        for each in found:
            if each.cause() not in [told.cause() for told in self.contradictions]:
                self.contradictions.append(each)
        wrong = [each.relation for each in found]
        self.relations = [each for each in self.relations if each not in wrong]
        self.statements = [each for each in self.statements if each.relation() not in wrong]
        right = (each for each in self.equals if not _shares(each.relations(), wrong))
        self.equals = dict.fromkeys(right)


def _shares(relations: Iterable[Relation], wrong: Sequence[Relation]) -> bool:
    return any(each in wrong for each in relations)


Told = tuple[Pair, Fraction, Reason]


def _sizes_told(solve: Solve, sizes: Iterable[tuple[str, Sequence[Pair]]]) -> Iterable[Told]:
    for label, pairs in sizes:
        pair = next((pair for pair in pairs if solve.tells(*pair)), None)
        if pair is not None:
            yield _told(solve, pair, label, f"the {label} is worked out")


def _places_told(solve: Solve, places: Iterable[tuple[str, Face]]) -> Iterator[Told]:
    # Of each tree one face.
    seen: set[Face] = set()
    for label, face in places:
        root, _ = solve.positions.root(face)
        start = Face(WHOLE, face.axis, -1)
        if root not in seen and solve.tells(start, face):
            yield _told(solve, (start, face), label, f"the {label} is worked out")
        seen.add(root)


def _told(solve: Solve, pair: Pair, label: str, words: str) -> Told:
    behind = solve.behind(*pair)
    distance = _total(behind)
    return pair, distance, linear_reason(label, words, behind, distance)


def _total(behind: Iterable[Counted]) -> Fraction:
    return sum((each.count * each.amount for each in behind), Fraction(0))
