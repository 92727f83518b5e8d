"""Blocks of an order at other places: rows worked by hand, and all places tried one by one."""

from dataclasses import replace
from itertools import combinations

import pytest
from tests.unit.order.shops import bench_problem, random_problem, seeded

from dryfit.order import (
    Choice,
    Move,
    Option,
    Precedence,
    Problem,
    Task,
    Unsolvable,
    evaluate,
    laid,
    moved,
    room,
    schedule_of,
    solve,
    violations,
)

RIP = Task("rip", "saw", (("blade", "rip"), ("height", "30")), 50)
LAP = Task("lap", "saw", (("blade", "dado"), ("height", "30")), 40)
TRIM = Task("trim", "saw", (("blade", "rip"),), 20)
MARK = Task("mark", "bench", (), 10)


def test_a_change_that_is_made_twice_is_the_price_of_another_place() -> None:
    # trim shares the blade with rip; after lap that blade goes in once more: 30
    row = laid(bench_problem(RIP, TRIM, LAP), (("rip",), ("trim",), ("lap",)))
    found = room(row, 1)
    assert (found.after, found.until) == ((), ())
    assert [(move.before, move.setup, move.order) for move in (*found.earlier, *found.later)] == [
        (0, 0, ("trim", "rip", "lap")),
        (3, 30, ("rip", "lap", "trim")),
    ]
    changes = [entry.changed for entry in schedule_of(row, found.later[0]).entries]
    assert changes == [("blade", "height"), ("blade",), ("blade",)]


def test_a_precedence_holds_a_block_with_its_reason() -> None:
    rule = Precedence("lap", "trim", 0, "the lap shows where")
    problem = bench_problem(RIP, LAP, TRIM, MARK, precedences=(rule,))
    row = laid(problem, (("rip",), ("lap", "trim"), ("mark",)))
    assert room(row, 1).after == ()
    row = laid(problem, (("rip",), ("lap",), ("trim",), ("mark",)))
    assert (room(row, 2).earlier, room(row, 2).after) == ((), (rule,))
    assert (room(row, 1).later, room(row, 1).until) == ((), (rule,))
    # Before rip the lap comes along: then dado goes in first, rip serves both others.
    along = moved(row, 2, 0)
    assert along is not None
    assert along.along == (1,)
    assert along.order == ("lap", "trim", "rip", "mark")
    assert along.setup == -30


def test_what_fills_a_cure_costs_waiting_elsewhere() -> None:
    cure = Precedence("glue", "level", 600, "the glue has to hold")
    problem = bench_problem(
        Task("glue", "glue bench", (), 10),
        Task("mark", "bench", (), 100),
        Task("level", "bench", (), 10),
        precedences=(cure,),
    )
    row = laid(problem, (("glue",), ("mark",), ("level",)))
    first, last = room(row, 1).earlier[0], room(row, 1).later[0]
    # Done while the glue holds it takes 100 of the 600 tenths of waiting.
    assert (first.waiting, first.elapsed) == (100, 100)
    assert (last.waiting, last.elapsed) == (100, 100)
    assert last.price(4) == (100, 100)


def test_a_visit_is_not_parted() -> None:
    pair = [Task(f"lap {side}", "saw", (), 10, together="laps") for side in "AB"]
    row = laid(bench_problem(*pair, MARK), (("lap A",), ("lap B",), ("mark",)))
    assert [move.before for move in room(row, 0).later] == [2]
    assert [move.before for move in room(row, 2).earlier] == [0]
    assert moved(row, 2, 1) is None


def test_a_task_that_a_visit_waits_for_is_told_with_the_visit() -> None:
    pair = [Task(f"lap {side}", "saw", (), 10, together="laps") for side in "AB"]
    rule = Precedence("mark", "lap B", 0, "marked first")
    row = laid(bench_problem(*pair, MARK, precedences=(rule,)), (("mark",), ("lap A",), ("lap B",)))
    assert room(row, 1).after == (Precedence("mark", "lap A", 0, "one visit: laps"),)
    assert room(row, 2).after == (rule,)


def test_of_a_choice_the_tasks_that_are_done_are_moved() -> None:
    problem = bench_problem(RIP, TRIM, LAP, MARK)
    ways = Choice("shoulder", (Option("sawn", ("lap",)), Option("by hand", ("mark",))))
    row = laid(replace(problem, choices=(ways,)), (("rip",), ("trim",), ("mark",)))
    assert [move.order for move in room(row, 1).later] == [("rip", "mark", "trim")]


def blocks_of(order: tuple[str, ...], seed: int) -> tuple[tuple[str, ...], ...]:
    rng = seeded(seed)
    blocks: list[list[str]] = []
    for name in order:
        if blocks and rng.random() < 0.3:
            blocks[-1].append(name)
        else:
            blocks.append([name])
    return tuple(map(tuple, blocks))


def flat(blocks: list[tuple[str, ...]]) -> tuple[str, ...]:
    return tuple(name for block in blocks for name in block)


def put(blocks: tuple[tuple[str, ...], ...], at: int, before: int, along: set[int]) -> list[str]:
    """The order with a block and those along before another block, written down plainly."""
    gone = {at, *along}
    left = [n for n in range(len(blocks)) if n not in gone]
    # What stays in between ends up behind what goes earlier, and before what goes later.
    cut = [n for n in left if n < before]
    rest = [n for n in left if n >= before]
    return list(flat([blocks[n] for n in (*cut, *sorted(gone), *rest)]))


def difference(problem: Problem, old: tuple[str, ...], new: list[str]) -> tuple[int, int, int]:
    a, b = evaluate(problem, old)[1], evaluate(problem, new)[1]
    return b.setup - a.setup, b.waiting - a.waiting, b.elapsed - a.elapsed


def as_row(move: Move) -> tuple[int, tuple[int, int, int], tuple[str, ...]]:
    return move.before, (move.setup, move.waiting, move.elapsed), move.order


@pytest.mark.parametrize("seed", range(120))
def test_every_place_that_trying_finds_is_told_with_its_price(seed: int) -> None:
    problem = random_problem(seed)
    try:
        order = solve(problem, effort=0).order
    except Unsolvable:
        return
    blocks = blocks_of(order, seed)
    row = laid(problem, blocks)
    for at in range(len(blocks)):
        found = room(row, at)
        told = {move.before: move for move in (*found.earlier, *found.later)}
        for before in (n for n in range(len(blocks) + 1) if n not in {at, at + 1}):
            candidate = put(blocks, at, before, set())
            if violations(problem, candidate):
                assert before not in told
                continue
            prices = difference(problem, order, candidate)
            assert as_row(told[before]) == (before, prices, tuple(candidate))
            assert moved(row, at, before) == told[before]
        assert list(told) == [
            *sorted((n for n in told if n < at), reverse=True),
            *sorted(n for n in told if n > at),
        ]


@pytest.mark.parametrize("seed", range(60))
def test_no_more_goes_along_than_must(seed: int) -> None:
    problem = random_problem(seed, groups=False)
    try:
        order = solve(problem, effort=0).order
    except Unsolvable:
        return
    blocks = blocks_of(order, seed)
    row = laid(problem, blocks)
    for at in range(len(blocks)):
        for before in (n for n in range(len(blocks) + 1) if n not in {at, at + 1}):
            between = range(before, at) if before < at else range(at + 1, before)
            sets = (set(s) for size in range(len(between) + 1) for s in combinations(between, size))
            least = next(s for s in sets if not violations(problem, put(blocks, at, before, s)))
            move = moved(row, at, before)
            if least == set(between):
                assert move is None
                continue
            assert move is not None
            candidate = put(blocks, at, before, least)
            assert move.along == tuple(sorted(least))
            assert as_row(move) == (before, difference(problem, order, candidate), tuple(candidate))
