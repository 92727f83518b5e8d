"""Relations over faces: all that they determine is told, with sums that add up, in any order.

What is determined is found here by plain elimination over all faces, independent of the forest and
of the sparse system under test.
"""

from __future__ import annotations

import random
from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import combinations

from hypothesis import given, settings
from hypothesis import strategies as st

from dryfit.placing.equations import Equations
from dryfit.placing.positions import WHOLE, Face, Positions, Reason
from dryfit.placing.relations import Relation
from dryfit.placing.solving import Solve

OWNERS = ("post", "rail", "shelf")
FACES = [Face(owner, axis, side) for owner in OWNERS for axis in range(2) for side in (-1, 1)]
ORIGINS = [Face(WHOLE, axis, -1) for axis in range(2)]
ALL = (*ORIGINS, *FACES)


@dataclass(frozen=True)
class Row:
    """An equation over faces: what a fact or a relation says."""

    terms: tuple[tuple[Fraction, Face], ...]
    constant: Fraction
    name: str


coordinates = st.lists(st.integers(1, 400).map(Fraction), min_size=len(FACES), max_size=len(FACES))
pairs = st.tuples(st.sampled_from(ALL), st.sampled_from(ALL)).filter(
    lambda pair: pair[0] != pair[1] and pair[0].axis == pair[1].axis
)
facts = st.lists(pairs, max_size=7)
mixes = st.lists(
    st.lists(st.tuples(st.integers(-2, 3).filter(bool), pairs), min_size=1, max_size=3), max_size=6
)


def truth_of(values: Sequence[Fraction]) -> dict[Face, Fraction]:
    return dict(zip(FACES, values, strict=True)) | dict.fromkeys(ORIGINS, Fraction(0))


def rows_of(
    known: Sequence[tuple[Face, Face]],
    mixed: Sequence[Sequence[tuple[int, tuple[Face, Face]]]],
    truth: dict[Face, Fraction],
) -> tuple[list[Row], list[Row]]:
    stated = [
        Row(
            ((Fraction(1), end), (Fraction(-1), start)),
            truth[end] - truth[start],
            f"fact {index}",
        )
        for index, (start, end) in enumerate(known)
    ]
    related = []
    for index, mix in enumerate(mixed):
        terms = [
            (sign * Fraction(factor), face)
            for factor, (start, end) in mix
            for sign, face in ((1, end), (-1, start))
        ]
        constant = sum((factor * truth[face] for factor, face in terms), Fraction(0))
        related.append(Row(tuple(terms), constant, f"relation {index}"))
    return stated, related


def positions_of(stated: Sequence[Row]) -> Positions:
    positions = Positions()
    for row in stated:
        (_, end), (_, start) = row.terms
        positions.add(start, end, row.constant, Reason("fact", row.name, row.name))
    return positions


def relation_of(row: Row) -> Relation:
    return Relation(row.terms, row.constant, Reason("relation", row.name, row.name))


def equations_told(positions: Positions, related: Sequence[Row]) -> Equations:
    equations = Equations(positions)
    equations.relations += [relation_of(row) for row in related]
    sizes = [
        (f"size of {owner}", [(Face(owner, axis, -1), Face(owner, axis, 1))])
        for owner in OWNERS
        for axis in range(2)
    ]
    places = [(f"place of {face.owner}", face) for face in FACES]
    while equations.tell((), lambda: sizes, lambda: places):
        pass
    return equations


def reduced(rows: Sequence[Sequence[Fraction]]) -> list[list[Fraction]]:
    """The reduced echelon form of dense rows."""
    left, done = [list(row) for row in rows], 0
    for column in range(len(ALL)):
        pivot = next((i for i in range(done, len(left)) if left[i][column]), None)
        if pivot is None:
            continue
        left[done], left[pivot] = left[pivot], left[done]
        share = left[done][column]
        left[done] = [value / share for value in left[done]]
        for index in range(len(left)):
            if index != done and (factor := left[index][column]):
                own = zip(left[index], left[done], strict=True)
                left[index] = [value - factor * other for value, other in own]
        done += 1
    return left[:done]


def dense(row: Row) -> list[Fraction]:
    values = [Fraction(0)] * len(ALL)
    for factor, face in row.terms:
        values[ALL.index(face)] += factor
    return values


def is_determined(rows: Sequence[Row], start: Face, end: Face) -> bool:
    wanted = dense(Row(((Fraction(1), end), (Fraction(-1), start)), Fraction(0), ""))
    matrix = [dense(row) for row in rows]
    return len(reduced([*matrix, wanted])) == len(reduced(matrix))


def is_consistent(rows: Sequence[Row]) -> bool:
    left = [[*dense(row), row.constant] for row in rows]
    done = 0
    for column in range(len(ALL)):
        pivot = next((i for i in range(done, len(left)) if left[i][column]), None)
        if pivot is None:
            continue
        left[done], left[pivot] = left[pivot], left[done]
        for index in range(done + 1, len(left)):
            factor = left[index][column] / left[done][column]
            own = zip(left[index], left[done], strict=True)
            left[index] = [value - factor * other for value, other in own]
        done += 1
    return all(not row[-1] for row in left[done:])


@settings(deadline=None)
@given(coordinates, facts, mixes)
def test_every_size_and_place_that_is_determined_is_told_and_nothing_else(
    values: list[Fraction],
    known: list[tuple[Face, Face]],
    mixed: list[list[tuple[int, tuple[Face, Face]]]],
) -> None:
    truth = truth_of(values)
    stated, related = rows_of(known, mixed, truth)
    positions = positions_of(stated)
    equations = equations_told(positions, related)
    assert equations.contradictions == []
    assert positions.clashes == []
    rows = [*stated, *related]
    for start, end in combinations(ALL, 2):
        if start.axis != end.axis:
            continue
        distance, origin = positions.distance(start, end), Face(WHOLE, start.axis, -1)
        if distance is not None:
            assert is_determined(rows, start, end)
            assert distance == truth[end] - truth[start]
        elif start.owner == end.owner:
            assert not is_determined(rows, start, end)
        else:
            assert not (is_determined(rows, origin, start) and is_determined(rows, origin, end))


@settings(deadline=None)
@given(coordinates, facts, mixes)
def test_what_is_told_is_the_sum_of_its_shares(
    values: list[Fraction],
    known: list[tuple[Face, Face]],
    mixed: list[list[tuple[int, tuple[Face, Face]]]],
) -> None:
    stated, related = rows_of(known, mixed, truth_of(values))
    positions = positions_of(stated)
    equations_told(positions, related)
    for fact in positions.facts():
        shares = fact.shares()
        assert sum(share.count * share.amount for share in shares) == fact.distance


@settings(deadline=None)
@given(coordinates, facts, mixes, st.randoms(use_true_random=False))
def test_the_order_in_which_it_is_told_changes_nothing(
    values: list[Fraction],
    known: list[tuple[Face, Face]],
    mixed: list[list[tuple[int, tuple[Face, Face]]]],
    chance: random.Random,
) -> None:
    stated, related = rows_of(known, mixed, truth_of(values))
    one, other = positions_of(stated), positions_of(chance.sample(stated, len(stated)))
    equations_told(one, related)
    equations_told(other, chance.sample(related, len(related)))
    for start, end in combinations(ALL, 2):
        if start.axis == end.axis:
            assert one.distance(start, end) == other.distance(start, end)


@settings(deadline=None)
@given(coordinates, facts, mixes, st.data())
def test_a_contradiction_names_the_least_set_of_lines(
    values: list[Fraction],
    known: list[tuple[Face, Face]],
    mixed: list[list[tuple[int, tuple[Face, Face]]]],
    data: st.DataObject,
) -> None:
    stated, related = rows_of(known, mixed, truth_of(values))
    if related:
        wrong = data.draw(st.integers(0, len(related) - 1))
        row = related[wrong]
        related[wrong] = Row(row.terms, row.constant + 7, row.name)
    rows = {row.name: row for row in (*stated, *related)}
    found = Solve(positions_of(stated), [relation_of(row) for row in related]).contradictions()
    assert bool(found) == (not is_consistent(list(rows.values())))
    for contradiction in found:
        named = [rows[each.reason.label] for each in contradiction.behind]
        assert len({row.name for row in named}) == len(named)
        assert not is_consistent(named)
        for fewer in combinations(named, len(named) - 1):
            assert is_consistent(fewer)
        assert contradiction.difference > 0
