"""The saw work of a bench, typed from a table of operations that was worked by hand.

Source: TRADE I1, rows 15 to 29, its comparison of the batched order with part by part, and its
lists of legal and illegal orders. What is read how stands in `boot_bench_block.json`.
"""

import json
from dataclasses import replace
from itertools import pairwise
from pathlib import Path
from typing import Any

import pytest

from dryfit.order import (
    Axis,
    Choice,
    Option,
    Precedence,
    Problem,
    Range,
    Result,
    Station,
    Task,
    Unsolvable,
    Value,
    evaluate,
    solve,
    violations,
)

BLOCK: dict[str, Any] = json.loads(
    (Path(__file__).parent / "boot_bench_block.json").read_text(encoding="utf-8")
)
LAPS = ("26 posts", "26 rails", "27")
LAYING_OUT = 130
"""Tenths for row 23 and the walk there, which the printed minutes leave out."""


def tenths(minutes: float) -> int:
    return round(10 * minutes)


def block(*, one_each: bool = False) -> Problem:
    """The rows as a problem; with `one_each` every change costs the same, so that they count."""
    return Problem(
        stations=tuple(
            Station(
                row["name"],
                tuple(Axis(a, 10 if one_each else tenths(cost)) for a, cost in row["axes"].items()),
            )
            for row in BLOCK["stations"]
        ),
        tasks=tuple(
            Task(
                id=row["id"],
                station=row["station"],
                demands=tuple(row["demands"].items()),
                work=tenths(row["run"]),
                trial=row.get("trial"),
                together=row.get("together"),
            )
            for row in BLOCK["tasks"]
        ),
        precedences=tuple(
            Precedence(before, after, 0, "column 'after'") for before, after in BLOCK["precedences"]
        ),
        walk=tenths(BLOCK["walk"]),
        trials={name: tenths(cost) for name, cost in BLOCK["trials"].items()},
        standing=tuple((station, axis, value) for station, axis, value in BLOCK["standing"]),
    )


def with_intervals() -> Problem:
    """TRADE E2 and J11: through the wood is thickness + 3 or more, on the sled 12 higher."""
    blade = "combination blade"
    least = {"15": 33, "16": 21, "17": 25, "20": 45, "21": 45, "22": 37}

    def height(task: Task, axis: str, value: Value) -> Value:
        if axis != "height":
            return value
        through = least.get(task.id.split()[0])
        number = through or round(float(str(value)))
        return Range(number, None if through else number, str(dict(task.demands)["cutter"]))

    tasks = tuple(
        replace(task, demands=tuple((a, height(task, a, value)) for a, value in task.demands))
        for task in block().tasks
    )
    standing = (("table saw", "height", Range(36, 36, blade)),)
    others = tuple(row for row in block().standing if row[1] != "height")
    return replace(block(), tasks=tasks, standing=(*others, *standing))


def is_one_visit(result: Result, tasks: tuple[str, ...]) -> bool:
    """Whether no other station is gone to between the first and the last of some tasks."""
    places = [result.order.index(task) for task in tasks]
    stretch = result.schedule.entries[min(places) : max(places) + 1]
    return all(first.station == second.station for first, second in pairwise(stretch))


def test_the_printed_order_has_the_printed_figures() -> None:
    schedule, totals = evaluate(block(), BLOCK["order"])
    assert violations(block(), schedule) == ()
    assert totals.changeovers == BLOCK["figures"]["changes"]
    assert totals.attended - LAYING_OUT == tenths(BLOCK["figures"]["minutes"])
    assert (totals.changeover, totals.walk, totals.trial) == (365, 40, 75)


def test_the_part_by_part_order_has_the_printed_figures() -> None:
    """It tears the laps apart and marks each part out by itself, so its rules are left out."""
    free = replace(
        block(),
        tasks=tuple(replace(task, together=None) for task in block().tasks if task.id != "23"),
        precedences=(),
    )
    schedule, totals = evaluate(free, BLOCK["part_by_part"])
    assert violations(free, schedule) == ()
    assert totals.changeovers == BLOCK["figures"]["part_by_part_changes"]
    proved_twice = totals.attended + tenths(BLOCK["trials"]["laps"])
    assert abs(proved_twice - tenths(BLOCK["figures"]["part_by_part_minutes"])) <= 3


@pytest.mark.parametrize("problem", [block(), block(one_each=True), with_intervals()])
@pytest.mark.parametrize("k", [1, 4, 100])
def test_no_order_has_fewer_changes_than_the_printed_one(problem: Problem, k: int) -> None:
    result = solve(problem, k=k)
    assert violations(problem, result) == ()
    assert result.proven
    assert result.totals.changeovers == BLOCK["figures"]["changes"]
    assert result.totals.setup == evaluate(problem, BLOCK["order"])[1].setup
    assert is_one_visit(result, LAPS)
    place = result.order.index
    assert all(place(cut) < place(lap) for cut in ("20", "21", "22") for lap in LAPS)


def test_heights_that_will_do_are_kept_and_are_no_higher_than_need_be() -> None:
    problem = with_intervals()
    heights = {
        entry.task: dict(entry.values)["height"]
        for entry in solve(problem).schedule.entries
        if entry.station == "table saw"
    }
    blade = "combination blade"
    assert {heights[rip] for rip in ("15 posts", "15 rails", "16", "17")} == {Range(36, 36, blade)}
    assert {heights[cut] for cut in ("20", "21", "22")} == {Range(45, 45, blade)}


def test_what_is_told_to_be_legal_is_and_what_is_not_is_not() -> None:
    tenons_first = [*BLOCK["order"][:-5], "28", "29", *LAPS]
    assert violations(block(), tenons_first) == ()
    assert evaluate(block(), tenons_first)[1].changeovers == BLOCK["figures"]["changes"]
    laps_before_cuts = [name for name in BLOCK["order"] if name not in LAPS]
    laps_before_cuts[laps_before_cuts.index("20") : laps_before_cuts.index("20")] = LAPS
    assert violations(block(), laps_before_cuts)
    with pytest.raises(Unsolvable, match="comes before a task that it depends on"):
        evaluate(block(), laps_before_cuts)


@pytest.mark.parametrize(("passes_of_a_lap", "way"), [(15, "dado set"), (4, "blade")])
def test_a_dado_set_is_put_in_where_it_saves_more_than_it_costs(
    passes_of_a_lap: int, way: str
) -> None:
    """TRADE I1: 16 laps of 15 passes with the blade, 3 with the dado set, 0.25 min a pass.

    Laps and tenons are all cut one way or the other. Were a lap only 4 passes of the blade, the
    dado set would not be worth the 8 min that it takes to put in.
    """
    dado = [task for task in block().tasks if ("cutter", "dado set 20") in task.demands]
    names = {task.id for task in dado}
    blade = [
        replace(
            task,
            id=f"{task.id} blade",
            demands=tuple(
                (axis, "combination blade" if axis == "cutter" else value)
                for axis, value in task.demands
            ),
            work=task.work * passes_of_a_lap // 3,
            trial=None,
            together=None,
        )
        for task in dado
    ]
    rules = [
        replace(
            rule,
            before=f"{rule.before} blade" if rule.before in names else rule.before,
            after=f"{rule.after} blade",
        )
        for rule in block().precedences
        if rule.after in names
    ]
    problem = replace(
        block(),
        tasks=(*block().tasks, *blade),
        precedences=(*block().precedences, *rules),
        choices=(
            Choice(
                "laps and tenons",
                (
                    Option("dado set", tuple(task.id for task in dado)),
                    Option("blade", tuple(task.id for task in blade)),
                ),
            ),
        ),
    )
    result = solve(problem)
    assert violations(problem, result) == ()
    assert result.picks == (("laps and tenons", way),)
