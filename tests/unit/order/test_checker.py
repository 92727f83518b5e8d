"""The checker finds every kind of mistake when one is planted."""

from dataclasses import replace
from typing import Any

import pytest
from tests.unit.order.shops import bench_problem

from dryfit.order import (
    Hold,
    Precedence,
    Problem,
    Resource,
    Result,
    Schedule,
    Task,
    Totals,
    evaluate,
    solve,
    violations,
)


def framed() -> Problem:
    """Two frames, cut, glued in the same clamps and levelled; goes into a second day."""
    stage = (Hold("clamp", 4, 600),)
    frames = (
        Task("frame 1", "glue bench", (), 300, splittable=False, holds=stage),
        Task("frame 2", "glue bench", (), 300, splittable=False, holds=stage),
    )
    return bench_problem(
        Task("post lap", "saw", (("blade", "dado"), ("height", "27")), 90, together="laps"),
        Task("rail lap", "saw", (("blade", "dado"), ("height", "27")), 90, together="laps"),
        Task("mark", "bench", (), 60, trial="test laps"),
        *frames,
        Task("level", "bench", (), 4000),
        precedences=(
            Precedence("post lap", "frame 1", 0, "laps before glue"),
            Precedence("rail lap", "frame 2", 0, "laps before glue"),
            Precedence("frame 1", "level", 900, "the glue is dry"),
        ),
        walk=10,
    )


@pytest.fixture(name="result", scope="module")
def _result() -> Result:
    return solve(framed())


def test_what_test_cuts_hold_too_early_is_found() -> None:
    problem = bench_problem(
        Task("coat", "bench", (), 100, holds=(Hold("clamp", 1, 600),)),
        Task("saw laps", "saw", (), 50, holds=(Hold("clamp", 4, 0),), trial="test laps"),
        clamps=4,
    )
    coat, laps = evaluate(problem, ("coat", "saw laps"))[0].entries
    early = replace(laps, start=700, end=750, waiting=585)
    assert violations(problem, Schedule((coat, early))) == ("5 of clamp are held at 685, of 4",)


def altered(result: Result, task: str, changes: dict[str, Any]) -> Schedule:
    """The schedule with one entry changed; a change may be a number to add."""
    entries = list(result.schedule.entries)
    at = result.order.index(task)
    old = entries[at]
    new = {
        name: getattr(old, name) + value if isinstance(value, int) else value
        for name, value in changes.items()
    }
    entries[at] = replace(old, **new)
    return Schedule(tuple(entries))


def test_nothing_is_wrong_with_a_right_answer(result: Result) -> None:
    assert violations(framed(), result) == ()
    assert violations(framed(), result.schedule) == ()
    assert violations(framed(), result.order) == ()


@pytest.mark.parametrize(
    ("order", "found"),
    [
        ("post lap, rail lap, mark, frame 1, frame 2", "level is missing"),
        ("post lap, rail lap, mark, frame 1, frame 2, level, level", "level is once too often"),
        ("post lap, rail lap, mark, frame 1, frame 2, level, drill", "drill is once too often"),
        (
            "frame 1, post lap, rail lap, mark, frame 2, level",
            "frame 1 stands before post lap (laps before glue)",
        ),
        ("post lap, mark, rail lap, frame 1, frame 2, level", "laps is not done in one visit"),
    ],
)
def test_an_order_that_breaks_a_rule_is_found(order: str, found: str) -> None:
    assert violations(framed(), order.split(", ")) == (found,)


@pytest.mark.parametrize(
    ("task", "changes", "found"),
    [
        ("post lap", {"changeover": 10, "waiting": -10}, "post lap: set-up should be"),
        ("post lap", {"changed": ()}, "post lap: set-up should be"),
        ("mark", {"walk": 10, "waiting": -10}, "mark: set-up should be"),
        ("mark", {"trial": -15, "waiting": 15}, "mark: set-up should be"),
        ("mark", {"station": "saw"}, "mark: set-up should be"),
        ("mark", {"ready": 1}, "mark: the worker is free at"),
        ("mark", {"waiting": 1}, "before it, but set-up"),
        ("mark", {"start": 1}, "60 of work do not lie between"),
        ("frame 1", {"start": -200, "end": -200}, "starts at"),
        ("frame 1", {"start": 14_400, "end": 14_400}, "starts at"),
        ("level", {"start": -200, "end": -200}, "after frame 1, not 900 (the glue is dry)"),
    ],
)
def test_an_entry_that_is_wrong_is_found(
    result: Result, task: str, changes: dict[str, Any], found: str
) -> None:
    messages = violations(framed(), altered(result, task, changes))
    assert any(found in message for message in messages), messages


def test_clamps_taken_twice_are_found(result: Result) -> None:
    fewer = replace(framed(), resources=(replace(framed().resources[0], capacity=3),))
    messages = violations(fewer, result.schedule)
    assert sum("of clamp are held at" in message for message in messages) == 2


def test_work_by_night_and_interruptions_are_found(result: Result) -> None:
    hours = framed().calendar
    later = replace(framed(), calendar=replace(hours, closes=hours.opens + 1000))
    messages = " ".join(violations(later, result.schedule))
    assert "outside working hours" in messages
    whole = tuple(
        replace(task, splittable=False) if task.id == "level" else task for task in framed().tasks
    )
    interrupted = violations(replace(framed(), tasks=whole), result.schedule)
    assert interrupted == ("level is interrupted",)


def lent() -> tuple[Problem, Schedule]:
    """Two frames in the clamps at once, the second with a bar in place of a clamp."""
    stage = (Hold("clamp", 2, 600),)
    frames = tuple(Task(f"frame {n}", "glue bench", (), 300, holds=stage) for n in (1, 2))
    kinds = (Resource("clamp", 3, ("bar",)), Resource("bar", 1), Resource("weight", 9))
    problem = replace(bench_problem(*frames), resources=kinds)
    return problem, evaluate(problem, ("frame 1", "frame 2"))[0]


@pytest.mark.parametrize(
    ("entry", "instead", "found"),
    [
        (1, (("clamp", "weight", 1),), "frame 2 takes weight, which does not serve for clamp"),
        (1, (("bar", "clamp", 1),), "frame 2 takes clamp, which does not serve for bar"),
        (1, (("clamp", "bar", 3),), "frame 2 takes 3 of bar for clamp, more than it holds"),
        (1, (("clamp", "bar", 2),), "2 of bar are held at 300, of 1"),
        (1, (("clamp", "bar", -1),), "frame 2 takes -1 of bar for clamp, more than it holds"),
        (1, (), "4 of clamp are held at 300, of 3"),
        (0, (("clamp", "bar", 1),), "2 of bar are held at 300, of 1"),
    ],
)
def test_pieces_that_cannot_serve_are_found(
    entry: int, instead: tuple[tuple[str, str, int], ...], found: str
) -> None:
    problem, schedule = lent()
    assert violations(problem, schedule) == ()
    assert schedule.entries[1].instead == (("clamp", "bar", 1),)
    rows = list(schedule.entries)
    rows[entry] = replace(rows[entry], instead=instead)
    assert found in violations(problem, Schedule(tuple(rows)))


def test_work_on_a_holiday_is_found(result: Result) -> None:
    holiday = replace(framed().calendar, closed=frozenset({1}))
    messages = violations(replace(framed(), calendar=holiday), result.schedule)
    assert "level ends outside working hours" in messages


def test_too_few_hands_are_found(result: Result) -> None:
    mark, *others = (replace(task, workers=1 + (task.id == "mark")) for task in framed().tasks)
    asking = replace(framed(), tasks=(mark, *others))
    assert violations(replace(asking, workers=2), result.schedule) == ()
    assert violations(asking, result.schedule) == ("mark takes 2 workers, there are 1",)


@pytest.mark.parametrize("field", list(Totals.__slots__))
def test_a_wrong_sum_is_found(result: Result, field: str) -> None:
    wrong = replace(result.totals, **{field: getattr(result.totals, field) + 1})
    messages = violations(framed(), replace(result, totals=wrong))
    assert any(message.startswith(f"{field} is ") for message in messages)


def test_a_wrong_claim_is_found(result: Result) -> None:
    assert violations(framed(), replace(result, lower_bound=41))
    assert violations(framed(), replace(result, fewest_found=result.totals.changeover + 5))
    assert violations(framed(), replace(result, picks_bound=result.totals.changeover + 1))
    assert violations(framed(), replace(result, proven=not result.proven))
    assert violations(framed(), replace(result, order=result.order[::-1]))
