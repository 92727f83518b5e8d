"""Values that a task leaves open: which one is set, what it costs, what stands at the start."""

from dataclasses import replace
from fractions import Fraction

import pytest

from dryfit.order import (
    Axis,
    Precedence,
    Problem,
    Range,
    Schedule,
    Station,
    Task,
    Unsolvable,
    Value,
    changeover_bound,
    evaluate,
    solve,
    violations,
)
from dryfit.order.ranges import serves, stretches, worthwhile

THROUGH_34 = Range(Fraction(73, 2), None, "combination blade")
"""TRADE E2: a through cut is set to the thickness and 3 or more, here the shop's 2.5."""
THROUGH_45 = Range(48, None, "combination blade")


def at_the_saw(*heights: Value, rules: str = "", standing: Value | None = None) -> Problem:
    """Tasks 0, 1, ... that demand heights; rules like "01 12"."""
    return Problem(
        stations=(Station("saw", (Axis("height", 10),)),),
        tasks=tuple(
            Task(str(i), "saw", (("height", height),), 5) for i, height in enumerate(heights)
        ),
        precedences=tuple(Precedence(rule[0], rule[1], 0, "by lot") for rule in rules.split()),
        standing=() if standing is None else (("saw", "height", standing),),
    )


def values_of(schedule: Schedule) -> list[Value]:
    return [value for entry in schedule.entries for _, value in entry.values]


def test_one_height_serves_all_cuts_right_through() -> None:
    problem = at_the_saw(THROUGH_34, THROUGH_45, THROUGH_34)
    schedule, totals = evaluate(problem, ("0", "1", "2"))
    assert values_of(schedule) == [Range(48, 48, "combination blade")] * 3
    assert totals.changeover == 10
    assert violations(problem, schedule) == ()


def test_the_value_used_is_the_lowest_that_serves_all() -> None:
    problem = at_the_saw(Range(5, 9), Range(3, 7), Range(1, 6))
    schedule, _ = evaluate(problem, ("1", "0", "2"))
    assert values_of(schedule) == [Range(5, 5)] * 3


def test_a_value_is_kept_until_it_no_longer_serves() -> None:
    problem = at_the_saw(Range(1, 5), Range(4, 8), Range(7, 9), Range(8, 8))
    schedule, totals = evaluate(problem, ("0", "1", "2", "3"))
    assert [entry.changed for entry in schedule.entries] == [("height",), (), ("height",), ()]
    assert values_of(schedule) == [Range(4, 4)] * 2 + [Range(8, 8)] * 2
    assert totals.changeover == 20


def test_numbers_for_different_cutters_are_different_values() -> None:
    problem = at_the_saw(Range(27, 27, "dado set"), Range(20, None, "combination blade"))
    assert solve(problem).totals.changeover == changeover_bound(problem) == 20


def test_a_name_beside_ranges_is_a_value_of_its_own() -> None:
    problem = at_the_saw("off", Range(0, None), "off", rules="01 12")
    assert solve(problem).totals.changeover == changeover_bound(problem) == 30


def test_what_stands_at_the_start_need_not_be_set() -> None:
    standing = Range(40, 40, "combination blade")
    problem = at_the_saw(THROUGH_34, THROUGH_45, standing=standing)
    result = solve(problem)
    assert result.order == ("0", "1")
    assert values_of(result.schedule) == [standing, Range(48, 48, "combination blade")]
    assert (result.totals.changeover, result.proven) == (10, True)
    assert violations(problem, result) == ()


def test_a_name_that_stands_at_the_start_counts_too() -> None:
    blade = Axis("blade", 30, (("dado set", "rip", 80),))
    problem = Problem(
        (Station("saw", (blade,)),),
        (Task("rip", "saw", (("blade", "rip"),), 5),),
        standing=(("saw", "blade", "dado set"),),
    )
    assert solve(problem).totals.changeover == 80
    assert solve(replace(problem, standing=(("saw", "blade", "rip"),))).totals.changeover == 0
    assert solve(replace(problem, standing=())).totals.changeover == 30


def test_a_swap_is_not_forced_where_another_value_would_serve_later_work() -> None:
    """X goes with Y and W with Z; X with W alone would cost a change more."""
    problem = at_the_saw(Range(1, 2), Range(2, 3), Range(1, 1), Range(3, 3))
    assert solve(problem).totals.changeover == changeover_bound(problem) == 20


def test_chains_of_ranges_that_exclude_one_another_are_counted() -> None:
    through = Range(36, None, "blade")
    problem = at_the_saw(through, "dado", through, Range(48, None, "blade"), rules="01 12")
    assert changeover_bound(problem) == 30


@pytest.mark.parametrize(
    ("served", "kept"),
    [
        ((0, 0b01, 0b11), [2]),
        ((0, 0b11, 0b11), [1]),
        ((0, 0b01, 0b10), [1, 2]),
        ((0, 0b100, 0b001), [2]),
    ],
)
def test_values_that_serve_no_more_than_another_are_left_out(
    served: tuple[int, ...], kept: list[int]
) -> None:
    assert worthwhile(served, 0b110, 0b011) == kept


def test_a_stretch_keeps_what_serves_all_of_it() -> None:
    rows = stretches([((0, 0b0110),), ((0, 0b1100),), (), ((0, 0b0010),)], [0])
    assert rows == [{0: 0b0100}, {0: 0b0100}, {}, {0: 0b0010}]


def test_both_ends_of_a_range_will_do() -> None:
    numbers = [Fraction(n) for n in (1, 2, 3, 4)]
    assert [serves(("", n), Range(2, 3)) for n in numbers] == [False, True, True, False]
    assert not serves(("other", Fraction(2)), Range(2, 3))
    assert not serves("2", Range(2, 3))


@pytest.mark.parametrize(
    ("problem", "message"),
    [
        (at_the_saw(Range(3, 2)), "0: nothing lies between height 3 and 2"),
        (at_the_saw(Range(0.5, 2)), "0: height 0.5 is no exact number"),  # type: ignore[arg-type]
        (at_the_saw("a", standing=Range(1, 2)), "saw, height stands at one number"),
        (
            replace(at_the_saw("a"), standing=(("saw", "fence", "a"),)),
            "what stands at the start: no saw, fence",
        ),
        (
            replace(at_the_saw("a"), standing=(("saw", "height", "a"),) * 2),
            "standing saw, height occurs twice",
        ),
        (
            Problem(
                (Station("saw", (Axis("height", 10, (("a", "b", 5),)),)),),
                (Task("0", "saw", (("height", Range(1, 2)),), 5),),
            ),
            "height has ranges, so that all its changes must cost the same",
        ),
    ],
)
def test_a_range_that_cannot_be_is_refused(problem: Problem, message: str) -> None:
    with pytest.raises(Unsolvable, match=message):
        solve(problem)


@pytest.mark.parametrize(
    ("values", "found"),
    [
        ((("height", Range(36, 36, "combination blade")),), "0: height stands at"),
        ((("height", Range(37, 37, "dado set")),), "0: height stands at"),
        ((("height", Range(37, 40, "combination blade")),), "0: height stands at"),
        ((("height", "37"),), "0: height stands at"),
        ((), "0 names values of"),
        ((("height", Range(50, 50, "combination blade")),), "1: set-up should be"),
    ],
)
def test_the_checker_finds_a_value_that_will_not_do(
    values: tuple[tuple[str, Value], ...], found: str
) -> None:
    problem = at_the_saw(THROUGH_34, THROUGH_45)
    first, second = evaluate(problem, ("0", "1"))[0].entries
    messages = violations(problem, Schedule((replace(first, values=values), second)))
    assert any(message.startswith(found) for message in messages), messages
