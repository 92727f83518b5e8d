"""Measured by hand: `pytest -m benchmark -s tests/benchmarks/test_order_compared.py`.

All ways of ordering side by side, in one run. Changeover in minutes; seconds are processor time.
"""

import time
from dataclasses import dataclass

import pytest
from tests.benchmarks.reading import part_by_part, read_shop
from tests.unit.order.shops import EIGHT_TO_FOUR

from dryfit.order import ROUND_THE_CLOCK, Totals, evaluate, solve, violations
from dryfit.order.beam import Beam, search
from dryfit.order.bound import bound_of, least_changeover
from dryfit.order.instance import compiled

NAMES = ("s13_3", "s11_3", "s13_5", "s1_5", "s11_5", "s1_11", "s1_28")
GREEDY = Beam(width=1, moves=1, weight=0, walking=False)
ONE = Beam(width=1, moves=6, weight=10, walking=False)
FOUR = Beam(width=4, moves=6, weight=10, walking=False)
WIDE = Beam(width=64, moves=None, weight=10, walking=False)


@dataclass(frozen=True, slots=True)
class Row:
    """Changeovers of one instance, tenths, and the processor time of the wide beam."""

    name: str
    tasks: int
    plain: int
    greedy: int
    one: int
    four: int
    wide: int
    bound: int
    seconds: float


def measured(name: str) -> Row:
    problem = read_shop(name)
    instance = compiled(problem)
    bound = bound_of(instance)
    begun = time.process_time()
    wide = search(instance, bound, WIDE).spent
    seconds = time.process_time() - begun
    return Row(
        name,
        len(problem.tasks),
        evaluate(problem, part_by_part(name))[1].changeover,
        search(instance, bound, GREEDY).spent,
        search(instance, bound, ONE).spent,
        search(instance, bound, FOUR).spent,
        wide,
        least_changeover(instance, bound),
        seconds,
    )


@pytest.mark.benchmark
def test_changeover_side_by_side(capsys: pytest.CaptureFixture[str]) -> None:
    rows = [measured(name) for name in NAMES]
    with capsys.disabled():
        print("\nname    tasks  part by part  greedy  beam 1  beam 4  beam 64  bound  seconds")  # noqa: T201
        for row in rows:
            minutes = [row.plain, row.greedy, row.one, row.four, row.wide, row.bound]
            figures = "  ".join(f"{tenths / 10:7.1f}" for tenths in minutes)
            print(f"{row.name:7} {row.tasks:5}  {figures}  {row.seconds:6.2f}")  # noqa: T201
    for row in rows:
        assert row.bound <= row.wide <= row.plain


@pytest.mark.benchmark
@pytest.mark.parametrize("name", NAMES)
def test_time_side_by_side(name: str, capsys: pytest.CaptureFixture[str]) -> None:
    lines = []
    for hours, calendar, walk in (("24 h", ROUND_THE_CLOCK, 0), ("8-16", EIGHT_TO_FOUR, 10)):
        problem = read_shop(name, calendar, walk)
        lines.append(_line(hours, "part by part", evaluate(problem, part_by_part(name))[1], 0.0))
        for k in (100, 4, 1):
            begun = time.process_time()
            result = solve(problem, k=k)
            lines.append(_line(hours, f"k = {k}", result.totals, time.process_time() - begun))
            assert violations(problem, result) == ()
    with capsys.disabled():
        print(f"\n{name}: set-up, waiting, elapsed minutes, weighted 4 to 1, seconds")  # noqa: T201
        print("\n".join(lines))  # noqa: T201


def _line(hours: str, way: str, totals: Totals, seconds: float) -> str:
    weighted = 4 * totals.setup + totals.waiting
    minutes = (totals.setup, totals.waiting, totals.elapsed, weighted)
    figures = "  ".join(f"{tenths / 10:8.1f}" for tenths in minutes)
    return f"  {hours}  {way:12}  {figures}  {seconds:6.2f}"
