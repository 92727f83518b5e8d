"""Systems of equations: exact answers, led back to their rows; the least set that contradicts."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from itertools import combinations

from hypothesis import given
from hypothesis import strategies as st

from dryfit.placing.linear import System

Row = tuple[tuple[tuple[int, Fraction], ...], Fraction]

UNKNOWNS = 5
factors = st.integers(-3, 3).map(Fraction)
values = st.fractions(min_value=-50, max_value=50, max_denominator=8)
rows = st.lists(st.tuples(*[factors] * UNKNOWNS), max_size=8)


def row_of(row: Sequence[Fraction], constant: Fraction) -> Row:
    return tuple(enumerate(row)), constant


def solved(equations: Sequence[Row]) -> System[int]:
    system = System[int]()
    for terms, constant in equations:
        system.add(terms, constant)
    return system


def rank(matrix: Sequence[Sequence[Fraction]]) -> int:
    """The rank by plain elimination on dense rows, independent of the system under test."""
    left = [list(row) for row in matrix]
    found = 0
    for column in range(len(left[0]) if left else 0):
        pivot = next((row for row in left[found:] if row[column]), None)
        if pivot is None:
            continue
        left.remove(pivot)
        left.insert(found, pivot)
        for index in range(found + 1, len(left)):
            share = left[index][column] / pivot[column]
            left[index] = [a - share * b for a, b in zip(left[index], pivot, strict=True)]
        found += 1
    return found


@given(rows, st.lists(values, min_size=UNKNOWNS, max_size=UNKNOWNS))
def test_a_consistent_system_gives_back_what_it_was_made_of(
    matrix: list[tuple[Fraction, ...]], truth: list[Fraction]
) -> None:
    equations = [
        row_of(row, sum((f * x for f, x in zip(row, truth, strict=True)), Fraction(0)))
        for row in matrix
    ]
    system = solved(equations)
    assert system.false == []
    assert len(matrix) - len(system.idle) == rank(matrix)
    for unknown, value in enumerate(truth):
        known = system.known(unknown)
        total = known.constant + sum(factor * truth[each] for each, factor in known.free)
        assert total == value
        assert all(system.known(each).row is None for each, _ in known.free)


@given(rows, st.lists(values, min_size=UNKNOWNS, max_size=UNKNOWNS))
def test_every_answer_is_the_sum_of_the_rows_that_it_names(
    matrix: list[tuple[Fraction, ...]], truth: list[Fraction]
) -> None:
    equations = [
        row_of(row, sum((f * x for f, x in zip(row, truth, strict=True)), Fraction(0)))
        for row in matrix
    ]
    system = solved(equations)
    for unknown in range(UNKNOWNS):
        known = system.known(unknown)
        if known.row is None:
            continue
        mix = system.made_of({known.row: Fraction(1)})
        left = [
            sum((share * matrix[index][column] for index, share in mix.items()), Fraction(0))
            for column in range(UNKNOWNS)
        ]
        expected = [Fraction(0)] * UNKNOWNS
        expected[unknown] = Fraction(1)
        for each, factor in known.free:
            expected[each] = -factor
        assert left == expected
        assert sum(share * equations[index][1] for index, share in mix.items()) == known.constant


@given(st.lists(st.tuples(st.tuples(*[factors] * 3), st.integers(0, 2).map(Fraction)), max_size=6))
def test_a_contradiction_names_the_least_set_that_cannot_hold(
    system_rows: list[tuple[tuple[Fraction, ...], Fraction]],
) -> None:
    equations = [row_of(row, constant) for row, constant in system_rows]
    system = solved(equations)
    for false in system.false:
        mix = system.made_of({false: Fraction(1)})
        assert false in mix
        named = [equations[index] for index in mix]
        assert solved(named).false, "the rows that are named cannot all hold"
        for fewer in combinations(named, len(named) - 1):
            assert not solved(fewer).false, "without any one of them the others can"


@given(st.permutations(range(6)), st.lists(values, min_size=3, max_size=3))
def test_the_order_of_rows_changes_no_answer(order: list[int], truth: list[Fraction]) -> None:
    matrix = [(1, -1, 0), (0, 1, -1), (1, 0, -1), (1, 1, 1), (2, 0, 1), (0, 3, 1)]
    equations = [
        row_of(
            tuple(map(Fraction, row)),
            sum((f * x for f, x in zip(row, truth, strict=True)), Fraction(0)),
        )
        for row in matrix
    ]
    system = solved([equations[index] for index in order])
    assert [system.known(each).constant for each in range(3)] == truth


def test_a_free_unknown_is_told_by_itself() -> None:
    system = solved([row_of((Fraction(1), Fraction(-2)), Fraction(6))])
    told = [system.known(unknown) for unknown in range(2)]
    assert sorted(each.row is None for each in told) == [False, True]


def test_a_long_chain_keeps_its_rows_short() -> None:
    # x1 - x0 = s, x2 - x1 = s, ... and the last is given: the size s follows, exactly.
    system, count = System[int](), 2000
    for index in range(count):
        start = () if index == 0 else ((index, Fraction(-1)),)
        system.add((*start, (index + 1, Fraction(1)), (-1, Fraction(-1))), Fraction(0))
    system.add(((count, Fraction(1)),), Fraction(700))
    assert system.known(-1).constant == Fraction(700, count)
    assert len(system.made_of({system.known(-1).row or 0: Fraction(1)})) == count + 1
