import hashlib
import os
import subprocess
import sys
from dataclasses import replace

import pytest
from tests.unit.order.shops import bench_problem, random_problem, seeded

from dryfit.order import (
    Hold,
    Precedence,
    Problem,
    Task,
    Unsolvable,
    evaluate,
    solve,
    violations,
)


def glued_panel() -> Problem:
    """A glue-up whose cure is long enough for saw work that shares no setting with itself."""
    return bench_problem(
        Task("rip slats", "saw", (("height", "36"),), 300),
        Task("rip staves", "saw", (("height", "36"),), 60),
        Task("glue panel", "glue bench", (), 100, splittable=False),
        Task("flatten panel", "bench", (), 100),
        precedences=(
            Precedence("rip staves", "glue panel", 0, "staves have their width"),
            Precedence("glue panel", "flatten panel", 300, "out of clamps"),
        ),
        walk=10,
    )


def test_waiting_is_filled_with_other_work() -> None:
    result = solve(glued_panel(), k=1)
    assert result.order == ("rip staves", "glue panel", "rip slats", "flatten panel")
    assert result.totals.waiting == 0


def test_set_up_counts_for_more_with_a_higher_k() -> None:
    few_walks = solve(glued_panel(), k=100)
    assert few_walks.totals.walk == 30
    assert few_walks.totals.waiting > 0


def test_the_result_says_what_it_proves() -> None:
    result = solve(glued_panel())
    assert (result.totals.changeover, result.lower_bound) == (10, 10)
    assert (result.proven, result.gap_percent) == (True, 0.0)


def test_no_tasks_give_an_empty_plan() -> None:
    result = solve(bench_problem())
    assert result.order == ()
    assert (result.totals.elapsed, result.proven, result.gap_percent) == (0, True, 0.0)


def test_no_effort_still_gives_a_valid_order() -> None:
    problem = glued_panel()
    result = solve(problem, effort=0)
    assert violations(problem, result) == ()
    assert result.effort < solve(problem).effort


@pytest.mark.parametrize("k", [-1, 0, 1, 4, 100])
def test_k_is_nothing_or_more(k: int) -> None:
    if k < 0:
        with pytest.raises(Unsolvable, match="below nothing"):
            solve(glued_panel(), k=k)
    else:
        assert violations(glued_panel(), solve(glued_panel(), k=k)) == ()


def test_more_effort_is_never_worse_than_none() -> None:
    for seed in range(30):
        problem = random_problem(seed, groups=False)
        quick, long = solve(problem, effort=0).totals, solve(problem, effort=40).totals
        assert 4 * long.setup + long.waiting <= 4 * quick.setup + quick.waiting


@pytest.mark.parametrize(
    ("order", "message"),
    [
        (("glue panel", "rip staves", "rip slats", "flatten panel"), "glue panel comes before"),
        (("rip staves", "glue panel"), "must name every task once"),
        (("rip staves", "rip staves", "glue panel", "flatten panel"), "must name every task once"),
    ],
)
def test_an_order_that_cannot_be_is_not_scheduled(order: tuple[str, ...], message: str) -> None:
    with pytest.raises(Unsolvable, match=message):
        evaluate(glued_panel(), order)


def test_a_torn_visit_is_not_scheduled() -> None:
    problem = bench_problem(
        Task("a", "saw", (), 1, together="laps"),
        Task("b", "saw", (), 1, together="laps"),
        Task("c", "bench", (), 1),
    )
    with pytest.raises(Unsolvable, match="one visit"):
        evaluate(problem, ("a", "c", "b"))
    assert evaluate(problem, ("c", "b", "a"))[1].work == 3


def test_solve_and_evaluate_agree() -> None:
    problem = glued_panel()
    result = solve(problem)
    assert evaluate(problem, result.order) == (result.schedule, result.totals)


def test_clamps_are_shared_out_over_the_day() -> None:
    """Two frames in the same clamps: the sanding goes between them."""
    stage = (Hold("clamp", 4, 600),)
    problem = bench_problem(
        Task("frame 1", "glue bench", (), 200, splittable=False, holds=stage),
        Task("frame 2", "glue bench", (), 200, splittable=False, holds=stage),
        Task("sand top", "bench", (), 700),
        walk=10,
    )
    result = solve(problem)
    assert result.order[1] == "sand top"
    assert result.totals.waiting == 0


def shuffled(problem: Problem, seed: int) -> Problem:
    precedences = list(problem.precedences)
    seeded(seed).shuffle(precedences)
    return replace(problem, precedences=tuple(precedences))


def test_the_order_of_the_precedences_does_not_matter() -> None:
    for seed in range(20):
        problem = random_problem(seed, groups=False)
        result = solve(problem, effort=20)
        assert solve(shuffled(problem, seed), effort=20) == result


SCRIPT = """
import hashlib
from dryfit.order import solve
from dryfit.order.guide import spans_of
from dryfit.order.instance import compiled
from dryfit.order.projecting import ancestors_of
from dryfit.order.station_bound import bounded
from tests.property.test_order_station_bound import busy_saw
from tests.unit.order.shops import random_problem, seeded
from tests.benchmarks.reading import read_ordering, read_shop
digest = hashlib.sha256()
for seed in (1, 2, 3, 5, 8):
    problem = random_problem(seed, groups=False)
    digest.update(repr(solve(problem, effort=40)).encode())
saw = compiled(busy_saw(seeded(3)))
for limit in (20, 10**6):
    found = bounded(saw, ancestors_of(saw), spans_of(saw)[0], limit)
    digest.update(repr((found.lift.least, found.made, list(found.lift.reached.items()))).encode())
for problem in (read_shop("s11_3"), read_ordering("ESC07")):
    first = solve(problem, effort=10)
    digest.update(repr((first, solve(problem, effort=10, previous=first.order))).encode())
print(digest.hexdigest())
"""


def test_processes_with_different_hash_seeds_agree() -> None:
    answers = {
        subprocess.run(
            [sys.executable, "-c", SCRIPT],
            env=os.environ | {"PYTHONHASHSEED": seed, "PYTHONPATH": os.pathsep.join(sys.path)},
            capture_output=True,
            check=True,
            text=True,
        ).stdout.strip()
        for seed in ("0", "1", "77")
    }
    assert len(answers) == 1
    assert len(answers.pop()) == hashlib.sha256().digest_size * 2
