"""The linear solve: what several relations together say where facts one at a time do not.

The unknowns are the places of the trees of the forest of facts; the tree of the overall box lies at
0.  What the relations determine between two trees becomes a fact, with the sum of all that it comes
from as its reason, so that every figure still has one chain.  Relations that cannot all hold are
kept with everything that they rest on.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from fractions import Fraction

from dryfit.diagnostics import Span
from dryfit.placing.linear import Known, System
from dryfit.placing.positions import WHOLE, Face, Fact, Positions, Reason, Share
from dryfit.placing.relations import Measure, Relation, abs_sign

ZERO, ONE = Fraction(0), Fraction(1)
_MOST_WORDS = 4
_NOWHERE = Face(WHOLE, 0, -1)


@dataclass(frozen=True, slots=True)
class Counted:
    """A reason, how often it counts in a sum, and the amount in mm that it stands for once."""

    reason: Reason
    count: Fraction
    amount: Fraction


@dataclass(frozen=True, slots=True)
class Contradiction:
    """Relations and facts that cannot all hold; `difference` is what is left over, in mm."""

    relation: Relation
    behind: tuple[Counted, ...]
    difference: Fraction

    def cause(self) -> tuple[Fraction, frozenset[Span]]:
        """Return what tells one cause from another: equal copies fail all in the same way."""
        spans = (each.reason.span for each in self.behind)
        return self.difference, frozenset(span for span in spans if span)


@dataclass(frozen=True, slots=True)
class Circle:
    """Relations that say the same thing in a circle, so that what they speak of stays open."""

    relations: tuple[Relation, ...]


@dataclass(slots=True)
class Solve:
    """One solve of relations over the forest as it is now.

    Where a sum takes in a whole one of the `measures`, it is told as that.
    """

    positions: Positions
    relations: Sequence[Relation]
    measures: Sequence[Measure] = ()
    system: System[Face] = field(default_factory=System[Face])
    whole: frozenset[Face] = frozenset()

    def __post_init__(self) -> None:
        """Take in all relations."""
        origins = (Face(WHOLE, axis, -1) for axis in range(3))
        self.whole = frozenset(self.positions.root(origin)[0] for origin in origins)
        for relation in self.relations:
            factors: dict[Face, Fraction] = {}
            constant = relation.constant
            for factor, face in relation.terms:
                root, offset = self.positions.root(face)
                factors[root] = factors.get(root, ZERO) + factor
                constant -= factor * offset
            unknowns = ((root, f) for root, f in factors.items() if root not in self.whole)
            self.system.add(unknowns, constant)

    def known(self, face: Face) -> Known[Face]:
        """Return the place of a face's tree, as far as the relations tell it."""
        root, _ = self.positions.root(face)
        return Known(ZERO, (), None) if root in self.whole else self.system.known(root)

    def tells(self, start: Face, end: Face) -> bool:
        """Return whether the relations tell the distance of two faces that no fact joins."""
        if self.positions.root(start)[0] == self.positions.root(end)[0]:
            return False
        return dict(self.known(start).free) == dict(self.known(end).free)

    def behind(self, start: Face, end: Face) -> tuple[Counted, ...]:
        """Return what the distance that `tells` promises is the sum of."""
        rows: dict[int, Fraction] = {}
        for face, factor in ((end, ONE), (start, -ONE)):
            row = self.known(face).row
            if row is not None:
                rows[row] = rows.get(row, ZERO) + factor
        mix = self.system.made_of(rows)
        demand = {end: ONE}
        demand[start] = demand.get(start, ZERO) - ONE
        return self._with_facts(mix, demand)

    def contradictions(self) -> tuple[Contradiction, ...]:
        """Return each relation that earlier ones contradict, with all that stands against it."""
        found = []
        for row in self.system.false:
            behind = self._with_facts(self.system.made_of({row: ONE}), {})
            total = sum((each.count * each.amount for each in behind), ZERO)
            found.append(Contradiction(self.relations[row], behind, abs(total)))
        return tuple(found)

    def circles(self) -> tuple[Circle, ...]:
        """Return the relations that follow from others without settling what they speak of."""
        found = []
        for row in self.system.idle:
            mix = self.system.made_of({row: ONE})
            relations = tuple(self.relations[index] for index in mix)
            faces = {face for relation in relations for _, face in relation.terms}
            if any(self.known(face).free for face in faces):
                found.append(Circle(relations))
        return tuple(found)

    def _with_facts(
        self, mix: Mapping[int, Fraction], demand: dict[Face, Fraction]
    ) -> tuple[Counted, ...]:
        # The relations leave distances inside trees over: those are facts.
        behind = []
        for index, share in mix.items():
            relation = self.relations[index]
            behind.append(Counted(relation.reason, share, relation.constant))
            for factor, face in relation.terms:
                demand[face] = demand.get(face, ZERO) - share * factor
        counts = {
            (fact.start, fact.end): (fact, count)
            for fact, count in self.positions.carried({k: v for k, v in demand.items() if v})
        }
        behind += self._measured(counts)
        behind += [Counted(fact.reason, count, fact.distance) for fact, count in counts.values()]
        return tuple(sorted(behind, key=lambda each: not each.amount))

    def _measured(self, counts: Counts) -> list[Counted]:
        """Take whole measures out of facts and how often they count, and return them."""
        found: list[Counted] = []
        for measure in self.measures:
            chain = self.positions.chain(measure.low, measure.high) if counts else ()
            shares = [_share(counts, fact) for fact in chain]
            if not shares or not (min(shares) > 0 or max(shares) < 0):
                continue
            count = min(shares, key=abs)
            for fact in chain:
                _take_out(counts, fact, count)
            size = sum((fact.distance for fact in chain), ZERO)
            found.append(Counted(measure.reason, count, size))
        return found


Counts = dict[tuple[Face, Face], tuple[Fact, Fraction]]
"""Facts by the faces that they lead from and to, and how often each counts."""


def _share(counts: Counts, fact: Fact) -> Fraction:
    _, onwards = counts.get((fact.start, fact.end), (fact, ZERO))
    _, backwards = counts.get((fact.end, fact.start), (fact, ZERO))
    return onwards - backwards


def _take_out(counts: Counts, fact: Fact, count: Fraction) -> None:
    for key, share in (((fact.start, fact.end), count), ((fact.end, fact.start), -count)):
        if key in counts:
            held, had = counts.pop(key)
            if had != share:
                counts[key] = (held, had - share)


def linear_reason(label: str, words: str, behind: Sequence[Counted], distance: Fraction) -> Reason:
    """Return the reason of a distance that relations and facts together tell.

    Its shares add up to it; what it rests on without adding anything stays in its spans.
    """
    spans = dict.fromkeys(
        span
        for each in behind
        for span in (each.reason.span, *each.reason.also)
        if span is not None
    )
    figures = dict.fromkeys(name for each in behind for name in each.reason.figures)
    said = list(dict.fromkeys(each.reason.words for each in behind if each.reason.words))
    clauses = "; ".join(said[:_MOST_WORDS]) + ("; ..." if len(said) > _MOST_WORDS else "")
    first, *also = spans or [None]
    return Reason(
        "linear",
        label,
        f"{words}: {clauses}",
        first,
        assumed=any(each.reason.assumed for each in behind),
        figures=tuple(figures),
        also=tuple(span for span in also if span is not None),
        shares=_shares(behind, abs_sign(distance)),
    )


def _shares(behind: Iterable[Counted], sign: int) -> tuple[Share, ...]:
    shares = (
        Share(share.label, share.amount, sign * each.count * share.count)
        for each in behind
        for share in Fact(_NOWHERE, _NOWHERE, each.amount, each.reason).shares()
    )
    return merged(shares)


def merged(shares: Iterable[Share]) -> tuple[Share, ...]:
    """Return the shares with equal ones counted together, and without what adds nothing."""
    counts: dict[tuple[str, Fraction], Fraction] = {}
    for share in shares:
        key = (share.label, share.amount)
        counts[key] = counts.get(key, ZERO) + share.count
    return tuple(Share(*key, count) for key, count in counts.items() if count and key[1])
