"""Where faces lie: every fact is a distance between two faces, kept with its reason.

Each copy has two faces on each axis.  A fact "face b lies d beyond face a" joins them; facts that
follow from one another need not be told twice, facts that contradict are kept as clashes.  The
structure is a forest of facts with, for each face, its offset from the root of its tree
(union-find with potentials), so that every distance is exact and every distance has one chain of
reasons: the path between the two faces.
"""

from __future__ import annotations

import heapq
from collections import deque
from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction

from dryfit.diagnostics import Span, Term

WHOLE = "overall"
"""The owner of the six faces of the overall box."""


@dataclass(frozen=True, slots=True, order=True)
class Face:
    """The low (side -1) or high (side 1) face of a copy on an axis; owner is the copy's name."""

    owner: str
    axis: int
    side: int


@dataclass(frozen=True, slots=True)
class Reason:
    """Why a distance holds.

    `rule` is a word for the kind of reason, `label` a short name for the term in a sum
    (``thickness of top``), `words` a clause for a sentence.  `assumed` marks what no line says;
    `figures` names the figures that the distance comes from (a written size: its own), `guest` the
    part that enters its host by it, `also` further places in the notes that it rests on.  A
    distance that is itself a sum has its `parts`: labels and amounts, which add up to its size;
    one that relations tell has `shares`: what it is a mix of, and how often each counts in it.
    """

    rule: str
    label: str
    words: str
    span: Span | None = None
    assumed: bool = False
    figures: tuple[str, ...] = ()
    guest: str | None = None
    also: tuple[Span, ...] = ()
    parts: tuple[tuple[str, Fraction], ...] = ()
    shares: tuple[Share, ...] = ()


@dataclass(frozen=True, slots=True)
class Share:
    """What has a share in a sum: its label, its amount in mm, and how often that counts."""

    label: str
    amount: Fraction
    count: Fraction


@dataclass(frozen=True, slots=True)
class Fact:
    """``high`` lies `distance` mm beyond ``low``'s coordinate, for a reason."""

    start: Face
    end: Face
    distance: Fraction
    reason: Reason

    def terms(self, *, apart: bool) -> tuple[Term, ...]:
        """Return the fact as a term of a sum, or `apart` as the terms of which it consists."""
        if not apart or not self.reason.parts:
            return (Term(self.reason.label, self.distance),)
        sign = 1 if self.distance > 0 else -1
        return tuple(Term(label, sign * amount) for label, amount in self.reason.parts)

    def shares(self) -> tuple[Share, ...]:
        """Return what the distance is a mix of; a plain one is itself, once."""
        sign = 1 if self.distance > 0 else -1
        told = self.reason.shares
        if not told:
            parts = self.reason.parts or ((self.reason.label, abs(self.distance)),)
            told = tuple(Share(label, amount, Fraction(1)) for label, amount in parts)
        return tuple(Share(each.label, each.amount, sign * each.count) for each in told)


@dataclass(frozen=True, slots=True)
class Clash:
    """A fact that earlier facts contradict: they make the distance `known`."""

    fact: Fact
    known: Fraction


@dataclass(slots=True)
class Positions:
    """The forest of facts; grows by `add`, answers `distance` and `chain`.

    `news` counts the facts that joined two trees.
    """

    clashes: list[Clash] = field(default_factory=list)
    news: int = 0
    _root: dict[Face, Face] = field(default_factory=dict)
    _offset: dict[Face, Fraction] = field(default_factory=dict)
    _members: dict[Face, list[Face]] = field(default_factory=dict)
    _facts: dict[Face, list[Fact]] = field(default_factory=dict)
    _inwards: dict[Face, Fact] = field(default_factory=dict)
    _depth: dict[Face, int] = field(default_factory=dict)

    def add(self, start: Face, end: Face, distance: Fraction, reason: Reason) -> bool:
        """Record that `end` lies `distance` beyond `start`; return whether this was news.

        A fact that contradicts earlier ones is kept as a clash and changes nothing.
        """
        fact = Fact(start, end, distance, reason)
        root, other = self._find(start), self._find(end)
        if root == other:
            known = self._offset[end] - self._offset[start]
            if known != distance:
                self.clashes.append(Clash(fact, known))
            return False
        shift = self._offset[start] + distance - self._offset[end]
        if len(self._members[root]) < len(self._members[other]):
            root, other, shift = other, root, -shift
        for face in self._members.pop(other):
            self._root[face] = root
            self._offset[face] += shift
            self._members[root].append(face)
        self._facts[start].append(fact)
        self._facts[end].append(fact)
        self._depth.clear()
        self._inwards.clear()
        self.news += 1
        return True

    def distance(self, start: Face, end: Face) -> Fraction | None:
        """Return how far `end` lies beyond `start` in mm, or None while nothing joins them."""
        if self._find(start) != self._find(end):
            return None
        return self._offset[end] - self._offset[start]

    def facts(self) -> tuple[Fact, ...]:
        """Return the facts of the forest, in the order of the faces from which they lead."""
        return tuple(
            fact for face, facts in self._facts.items() for fact in facts if fact.start == face
        )

    def root(self, face: Face) -> tuple[Face, Fraction]:
        """Return the root of a face's tree and how far the face lies beyond it, in mm."""
        return self._find(face), self._offset[face]

    def is_joined(self, face: Face) -> bool:
        """Return whether any fact speaks of a face."""
        return len(self._members[self._find(face)]) > 1

    def knows(self, face: Face) -> bool:
        """Return whether a face has a coordinate in the piece frame."""
        return self._find(face) == self._find(Face(WHOLE, face.axis, -1))

    def at(self, face: Face) -> Fraction | None:
        """Return the coordinate of a face in the piece frame, or None while unknown."""
        return self.distance(Face(WHOLE, face.axis, -1), face)

    def extent(self, owner: str, axis: int) -> Fraction | None:
        """Return the size of a copy along an axis, or None while unknown."""
        return self.distance(Face(owner, axis, -1), Face(owner, axis, 1))

    def chain(self, start: Face, end: Face) -> tuple[Fact, ...]:
        """Return the facts from `start` to `end`, each turned so that it leads onwards."""
        root = self._find(start)
        if root != self._find(end):
            return ()
        if root not in self._depth:
            self._look_inwards(root)
        up: list[Fact] = []
        down: list[Fact] = []
        while start != end:
            if self._depth[start] >= self._depth[end]:
                up.append(self._inwards[start])
                start = up[-1].end
            else:
                down.append(_turned(self._inwards[end]))
                end = down[-1].start
        return (*up, *reversed(down))

    def carried(self, demand: Mapping[Face, Fraction]) -> tuple[tuple[Fact, Fraction], ...]:
        """Return the facts, and how often each counts, that make up a sum of coordinates.

        `demand` gives the factor of each face; over every tree the factors must add up to nothing.
        Then the sum of factor times coordinate is the sum of count times distance.
        """
        for face in demand:
            if (root := self._find(face)) not in self._depth:
                self._look_inwards(root)
        load = dict(demand)
        waiting = [(-self._depth[face], face) for face in load]
        heapq.heapify(waiting)
        counted: list[tuple[Fact, Fraction]] = []
        while waiting:
            _, face = heapq.heappop(waiting)
            count = load.pop(face)
            if not count or face not in self._inwards:
                continue
            inwards = self._inwards[face]
            counted.append((inwards, -count))
            if inwards.end not in load:
                load[inwards.end] = Fraction(0)
                heapq.heappush(waiting, (-self._depth[inwards.end], inwards.end))
            load[inwards.end] += count
        return tuple(counted)

    def _look_inwards(self, root: Face) -> None:
        # For every face of the tree the fact that leads one step towards the root, and how many
        # steps there are.
        self._depth[root] = 0
        queue = deque([root])
        while queue:
            face = queue.popleft()
            for fact in self._facts[face]:
                outwards = fact if fact.start == face else _turned(fact)
                if outwards.end not in self._depth:
                    self._depth[outwards.end] = self._depth[face] + 1
                    self._inwards[outwards.end] = _turned(outwards)
                    queue.append(outwards.end)

    def _find(self, face: Face) -> Face:
        if face not in self._root:
            self._root[face] = face
            self._offset[face] = Fraction(0)
            self._members[face] = [face]
            self._facts[face] = []
        return self._root[face]


def _turned(fact: Fact) -> Fact:
    return Fact(fact.end, fact.start, -fact.distance, fact.reason)
