"""Linear relations between faces: what holds between distances that are not known yet.

A relation is an equation over coordinates of faces of any axes.  It speaks of distances only: on
every axis its factors add up to nothing.  Most say how far one face lies beyond another where the
line gives a sum that leans on other sizes (``bay.width - 4``); others that two sizes are equal, or
that something is centred.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from dryfit.piece.declared import Opening
from dryfit.piece.sum_words import figure_words, times_words
from dryfit.placing.positions import Face, Fact, Positions, Reason

ONE = Fraction(1)


@dataclass(frozen=True, slots=True)
class Relation:
    """The sum of factor times coordinate over `terms` is `constant` mm, for a reason.

    `leans` names the figures that it was written with.
    """

    terms: tuple[tuple[Fraction, Face], ...]
    constant: Fraction
    reason: Reason
    leans: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Measure:
    """A distance between two faces that has a name of its own, such as ``bay.width``."""

    low: Face
    high: Face
    reason: Reason


@dataclass(frozen=True, slots=True)
class LeaningTerm:
    """`factor` times the distance from `low` to `high`: the figure ``bay.width``."""

    factor: Fraction
    low: Face
    high: Face
    figure: str


@dataclass(frozen=True, slots=True)
class Statement:
    """`end` lies `constant` mm and the leaning terms beyond `start`, for a reason."""

    start: Face
    end: Face
    constant: Fraction
    leans: tuple[LeaningTerm, ...]
    reason: Reason

    def relation(self) -> Relation:
        """Return the statement as a relation; its reason does not rest on what it leans on."""
        terms = [(ONE, self.end), (-ONE, self.start)]
        for lean in self.leans:
            terms += [(-lean.factor, lean.high), (lean.factor, lean.low)]
        unknown = dict.fromkeys(lean.figure for lean in self.leans)
        known = tuple(name for name in self.reason.figures if name not in unknown)
        reason = replace(
            self.reason,
            label=f"allowance in {self.reason.label}",
            figures=() if self.reason.rule == "size" else known,
        )
        return Relation(tuple(terms), self.constant, reason, tuple(unknown))

    def distance(self, positions: Positions) -> tuple[Fraction, Reason] | None:
        """Return the distance and its reason, or None while a size that it leans on is unknown."""
        total, parts = self.constant, [] if not self.constant else [("as written", self.constant)]
        for lean in self.leans:
            size = positions.distance(lean.low, lean.high)
            if size is None:
                return None
            total += lean.factor * size
            parts.append((times_words(lean.factor, figure_words(lean.figure)), lean.factor * size))
        figures = dict.fromkeys((*self.reason.figures, *(lean.figure for lean in self.leans)))
        amounts = tuple((label, abs_sign(total) * amount) for label, amount in parts)
        return total, replace(self.reason, figures=tuple(figures), parts=amounts)


def abs_sign(total: Fraction) -> int:
    """Return the sign by which parts of a distance are turned to add up to its size."""
    return -1 if total < 0 else 1


@dataclass(frozen=True, slots=True)
class Equal:
    """Pairs of faces, each low and high, that are all equally far apart, for a reason."""

    pairs: tuple[tuple[Face, Face], ...]
    reason: Reason

    def relations(self) -> list[Relation]:
        """Return that every pair is as far apart as the first."""
        low, high = self.pairs[0]
        return [
            Relation(
                ((ONE, high), (-ONE, low), (-ONE, other[1]), (ONE, other[0])),
                Fraction(0),
                self.reason,
            )
            for other in self.pairs[1:]
        ]

    def share(self, positions: Positions) -> bool | None:
        """Tell a distance that is known to all pairs; return whether any was news, None if none is.

        A pair that is known to be otherwise apart is kept as a clash.
        """
        known = (positions.distance(*pair) for pair in self.pairs)
        distance = next((each for each in known if each is not None), None)
        if distance is None:
            return None
        news = [positions.add(*pair, distance, self.reason) for pair in self.pairs]
        return any(news)


def centred(inner: tuple[Face, Face], outer: tuple[Face, Face], reason: Reason) -> Equal:
    """Return that a pair of faces lies midway between another pair on its axis."""
    return Equal(((outer[0], inner[0]), (inner[1], outer[1])), reason)


def measures_of(openings: Iterable[Opening]) -> tuple[Measure, ...]:
    """Return the width, depth and height of each opening as measures."""
    return tuple(
        Measure(
            Face(opening.name, axis, -1),
            Face(opening.name, axis, 1),
            Reason(
                "measure",
                f"{dimension} of {opening.name}",
                "",
                opening.span,
                figures=(f"{opening.name}.{dimension}",),
            ),
        )
        for opening in openings
        for axis, dimension in enumerate(("width", "depth", "height"))
    )


def told_in_measures(chain: Sequence[Fact], measures: Iterable[Measure]) -> tuple[Fact, ...]:
    """Return a chain of facts with each stretch that is a whole measure as one fact.

    A chain that is nothing but that measure stays as it is.
    """
    for measure in measures:
        faces = [chain[0].start, *(fact.end for fact in chain)] if chain else []
        if measure.low not in faces or measure.high not in faces:
            continue
        start, end = sorted((faces.index(measure.low), faces.index(measure.high)))
        if end - start < len(chain):
            distance = sum((fact.distance for fact in chain[start:end]), Fraction(0))
            whole = Fact(faces[start], faces[end], distance, measure.reason)
            chain = (*chain[:start], whole, *chain[end:])
    return tuple(chain)
