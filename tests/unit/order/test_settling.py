"""Orders from which no single block is moved with gain."""

from itertools import groupby

import pytest
from tests.unit.order.shops import bench_problem, random_problem

from dryfit.order import Precedence, Schedule, Task, evaluate, laid, moved, settled, solve

RIP = Task("rip", "saw", (("blade", "rip"), ("height", "30")), 50)
LAP = Task("lap", "saw", (("blade", "dado"), ("height", "30")), 40)
TRIM = Task("trim", "saw", (("blade", "rip"),), 20)


def singly(schedule: Schedule) -> tuple[int, ...]:
    return (1,) * len(schedule.entries)


def by_visit(schedule: Schedule) -> tuple[int, ...]:
    return tuple(len(list(row)) for _, row in groupby(schedule.entries, lambda e: e.station))


def test_a_blade_set_twice_is_set_once() -> None:
    # rip, lap, trim: rip blade 30 and height 10, dado 30, rip blade 30. With trim before lap one
    # change of 30 is saved.
    found = settled(bench_problem(RIP, LAP, TRIM), ("rip", "lap", "trim"), 4, singly)
    assert found is not None
    schedule, totals = found
    assert [entry.task for entry in schedule.entries] in (
        ["trim", "rip", "lap"],
        ["rip", "trim", "lap"],
        ["lap", "rip", "trim"],
        ["lap", "trim", "rip"],
    )
    assert totals.setup == 70


def test_a_task_that_lengthens_the_way_to_a_cure_is_done_while_it_lasts() -> None:
    # Done first, mark keeps the glue waiting for 100; while it holds for 600 there is time.
    cure = Precedence("glue", "level", 600, "the glue has to hold")
    problem = bench_problem(
        Task("mark", "bench", (), 100),
        Task("glue", "glue bench", (), 10),
        Task("level", "bench", (), 10),
        precedences=(cure,),
    )
    found = settled(problem, ("mark", "glue", "level"), 4, singly)
    assert found is not None
    assert [entry.task for entry in found[0].entries] == ["glue", "mark", "level"]
    assert found[1].waiting == 500
    assert settled(problem, ("glue", "mark", "level"), 4, singly) is None


@pytest.mark.parametrize("seed", range(150))
def test_no_block_moved_alone_betters_what_comes_out(seed: int) -> None:
    problem, worth = random_problem(seed), 1 + seed % 5
    order = solve(problem, effort=0).order
    schedule, totals = evaluate(problem, order)
    cut = by_visit if seed % 2 else singly
    better = settled(problem, order, worth, cut)
    if better is not None:
        after, sums = better
        assert evaluate(problem, [entry.task for entry in after.entries]) == better
        costs = [(worth * t.setup + t.waiting, t.elapsed, t.walk) for t in (totals, sums)]
        assert costs[1] < costs[0]
        schedule = after
    rows = iter(entry.task for entry in schedule.entries)
    blocks = [tuple(next(rows) for _ in range(length)) for length in cut(schedule)]
    row = laid(problem, blocks)
    moves = (moved(row, at, to) for at in range(len(blocks)) for to in range(len(blocks) + 1))
    assert all(move is None or move.price(worth) >= (0, 0) for move in moves)
