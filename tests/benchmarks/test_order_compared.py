"""Measured by hand: `pytest -m benchmark -s tests/benchmarks/test_order_compared.py`.

All ways of ordering side by side, in one run. Changeover in minutes; seconds are processor time.
DRYFIT_SHOPS and DRYFIT_ORDERINGS name folders with more instances than stand beside this file.
"""

import os
import resource
import time
from pathlib import Path

import networkx as nx
import pytest
from tests.benchmarks.reading import (
    INSTANCES,
    ORDERINGS,
    length,
    part_by_part,
    raised,
    read_ordering,
    read_shop,
)
from tests.unit.order.shops import EIGHT_TO_FOUR

from dryfit.order import ROUND_THE_CLOCK, Problem, Totals, evaluate, solve, violations
from dryfit.order.beam import Beam, search
from dryfit.order.bound import bound_of
from dryfit.order.instance import compiled

SHOPS = Path(os.environ.get("DRYFIT_SHOPS", INSTANCES))
MORE_ORDERINGS = Path(os.environ.get("DRYFIT_ORDERINGS", ORDERINGS))
GREEDY = Beam(width=1, moves=1, weight=0, walking=False)
TIMED = ("s1_5", "s1_11", "s1_18", "s1_28")
SECONDS = (1, 10, 60)
UNITS = 11_000
"""Moves tried in a second, about: effort times tasks (of 300 at most)."""

ORDERING_EFFORT = 1000
"""Published orderings of up to 254 jobs take up to half a minute with it."""

BEST_KNOWN = {
    "ESC07": 2125,
    "ESC11": 2075,
    "ESC12": 1675,
    "ESC25": 1681,
    "ESC78": 18230,
    "br17.10": 55,
    "br17.12": 55,
    "ft53.1": 7531,
    "ft53.3": 10262,
    "ft70.1": 39313,
    "p43.4": 83005,
    "rbg048a": 351,
    "rbg109a": 1038,
    "rbg253a": 2950,
    "ry48p.2": 16666,
}


def sorted_topologically(problem: Problem) -> tuple[str, ...]:
    """Of what may be done, always what is declared first."""
    place = {task.id: i for i, task in enumerate(problem.tasks)}
    graph: nx.DiGraph[str] = nx.DiGraph()
    graph.add_nodes_from(place)
    graph.add_edges_from((edge.before, edge.after) for edge in problem.precedences)
    return tuple(nx.lexicographical_topological_sort(graph, key=place.__getitem__))


def show(capsys: pytest.CaptureFixture[str], line: str) -> None:
    with capsys.disabled():
        print(line, flush=True)  # noqa: T201


@pytest.mark.benchmark
def test_changeover_side_by_side(capsys: pytest.CaptureFixture[str]) -> None:
    columns = "part by part  sorted  greedy  |  1 s  10 s  60 s  bound  fewest found  status"
    show(capsys, f"\nname  tasks  {columns}  seconds  MB")
    names = sorted(path.stem for path in SHOPS.glob("s*.json"))
    for name in sorted(names, key=lambda name: len(read_shop(name, folder=SHOPS).tasks)):
        problem = read_shop(name, folder=SHOPS)
        count = len(problem.tasks)
        plain = evaluate(problem, part_by_part(name, SHOPS))[1].changeover
        topological = evaluate(problem, sorted_topologically(problem))[1].changeover
        instance = compiled(problem)
        greedy = search(instance, bound_of(instance), GREEDY).spent
        ours, spent = [], []
        for seconds in SECONDS:
            begun = time.process_time()
            effort = max(1, seconds * UNITS // min(count, 300))
            result = solve(problem, k=100, effort=effort)
            spent.append(f"{time.process_time() - begun:.1f}")
            assert violations(problem, result) == ()
            ours.append(result.fewest_found)
            if result.fewest_proven:
                break
        figures = (plain, topological, greedy, *ours, *ours[-1:] * (len(SECONDS) - len(ours)))
        row = "  ".join(f"{tenths / 10:7.1f}" for tenths in (*figures, result.lower_bound))
        over = 100 * (result.fewest_found - result.lower_bound) / result.lower_bound
        status = "proved" if result.fewest_proven else f"at most {over:.1f} % above"
        memory = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss // 1024
        show(capsys, f"{name:7} {count:5}  {row}  {status}  {' / '.join(spent)} s  {memory}")
        assert result.lower_bound <= result.fewest_found <= plain


@pytest.mark.benchmark
@pytest.mark.parametrize("name", TIMED)
def test_time_side_by_side(name: str, capsys: pytest.CaptureFixture[str]) -> None:
    if not (SHOPS / f"{name}.json").exists():
        pytest.skip("no such instance here")
    show(capsys, f"\n{name}: set-up, waiting, elapsed minutes, weighted 4 to 1, seconds")
    for hours, calendar, walk in (("24 h", ROUND_THE_CLOCK, 0), ("8-16", EIGHT_TO_FOUR, 10)):
        problem = read_shop(name, calendar, walk, SHOPS)
        show(capsys, _line(hours, "part by part", evaluate(problem, part_by_part(name, SHOPS))[1]))
        for k in (100, 10, 4, 2, 1):
            begun = time.process_time()
            result = solve(problem, k=k)
            seconds = time.process_time() - begun
            show(capsys, f"{_line(hours, f'k = {k}', result.totals)}  {seconds:6.2f}")
            assert violations(problem, result) == ()


@pytest.mark.benchmark
def test_sequential_ordering(capsys: pytest.CaptureFixture[str]) -> None:
    show(capsys, "\nname  jobs  best known  found  above  bound  seconds  MB")
    for path in sorted(MORE_ORDERINGS.glob("*.sop")):
        name = path.stem
        problem = read_ordering(name, MORE_ORDERINGS)
        begun = time.process_time()
        result = solve(problem, k=100, effort=ORDERING_EFFORT)
        seconds = time.process_time() - begun
        found, best = length(name, result.order, MORE_ORDERINGS), BEST_KNOWN[name]
        bound = result.lower_bound - raised(name, MORE_ORDERINGS)
        memory = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss // 1024
        row = f"{name:8} {len(problem.tasks) + 1:4} {best:6} {found:6} "
        row += f"{100 * (found - best) / best:5.2f} % {bound:6} {seconds:5.1f} {memory:4}"
        show(capsys, row)
        assert violations(problem, result) == ()
        assert bound <= best <= found


def _line(hours: str, way: str, totals: Totals) -> str:
    weighted = 4 * totals.setup + totals.waiting
    minutes = (totals.setup, totals.waiting, totals.elapsed, weighted)
    figures = "  ".join(f"{tenths / 10:8.1f}" for tenths in minutes)
    return f"  {hours}  {way:12}  {figures}"
