"""Measured by hand: `pytest -m benchmark -s tests/benchmarks/test_ways_compared.py`.

For every example and test piece: the ways chosen beforehand by the family rules against those that
the order chooses, both searched with the same effort.  Minutes; seconds are processor time.
"""

import time
from dataclasses import replace
from pathlib import Path
from types import MappingProxyType

import pytest
from tests.pieces.reading import FILES

from dryfit import workshop
from dryfit.diagnostics import Source
from dryfit.operations import GROUPS, work_list
from dryfit.order import Totals, solve
from dryfit.placing.drift import with_drifts
from dryfit.plan.operation import WorkList
from dryfit.planning import best_ways
from dryfit.planning.problem_of import problem_of
from dryfit.shop.shop import Shop
from dryfit.workshop import Checked

EFFORT = 60


@pytest.mark.benchmark
def test_rules_and_ways_side_by_side(capsys: pytest.CaptureFixture[str]) -> None:
    sums = [0, 0]
    seconds = 0.0
    lines = []
    for name in sorted(FILES):
        row = _compared(FILES[name])
        if row is None:
            continue
        before, after, spent = row
        seconds += spent
        if after != before:
            hands_on = after.attended - before.attended
            waiting = after.waiting - before.waiting
            sums = [sums[0] + hands_on, sums[1] + waiting]
            lines.append(
                f"{name:20} set-up {before.setup / 10:6.1f} -> {after.setup / 10:6.1f}  "
                f"work {before.work / 10:6.1f} -> {after.work / 10:6.1f}  "
                f"hands on {hands_on / 10:+6.1f}  waiting {waiting / 10:+6.1f}"
            )
    with capsys.disabled():
        print("\n" + "\n".join(lines))  # noqa: T201
        print(f"in sum: hands on {sums[0] / 10:+.1f}, waiting {sums[1] / 10:+.1f}, {seconds:.2f} s")  # noqa: T201
    assert sums[0] <= 0


def _compared(path: Path) -> tuple[Totals, Totals, float] | None:
    """Totals by the rules and by the order, and the seconds that the weighing took."""
    checked = _checked(path)
    if checked.failed or checked.model is None or checked.shop is None:
        return None
    shop, model = checked.shop, with_drifts(checked.model, checked.declared, checked.shop)
    work, _ = work_list(model, shop)
    assert work is not None
    begun = time.process_time()
    best = best_ways(work, lambda ways: work_list(model, shop, ways)[0], shop)
    spent = time.process_time() - begun
    before = solve(problem_of(work, shop), effort=EFFORT).totals
    if best.operations == work.operations:
        return before, before, spent
    return before, solve(problem_of(best, shop), effort=EFFORT).totals, spent


@pytest.mark.benchmark
def test_every_other_way_side_by_side(capsys: pytest.CaptureFixture[str]) -> None:
    """Each way that a rule did not choose, forced; and mortises in a shop without a mortiser."""
    lines = []
    for name in sorted(FILES):
        checked = _checked(FILES[name])
        if checked.failed or checked.model is None or checked.shop is None:
            continue
        shop, model = checked.shop, with_drifts(checked.model, checked.declared, checked.shop)
        work, _ = work_list(model, shop)
        assert work is not None
        now = solve(problem_of(work, shop), effort=EFFORT).totals
        trials: list[tuple[str, WorkList | None, Shop]] = [
            (f"{row.group}: {row.method}", work_list(model, shop, {row.group: row.method})[0], shop)
            for row in work.alternatives
            if not row.chosen and row.group in GROUPS
        ]
        if any(op.station == "mortiser" for op in work.operations):
            stations = {key: row for key, row in shop.stations.items() if key != "mortiser"}
            without = replace(shop, stations=MappingProxyType(stations))
            trials.append(("no mortiser", work_list(model, without)[0], without))
        for way, other, there in trials:
            if other is not None and other.operations != work.operations:
                then = solve(problem_of(other, there), effort=EFFORT).totals
                lines.append(
                    f"{name:18} {way:64} set-up {(then.setup - now.setup) / 10:+6.1f}  "
                    f"work {(then.work - now.work) / 10:+6.1f}  "
                    f"waiting {(then.waiting - now.waiting) / 10:+7.1f}"
                )
    with capsys.disabled():
        print("\n" + "\n".join(lines))  # noqa: T201
    assert lines


def _checked(path: Path) -> Checked:
    return workshop.check(Source(path.name, path.read_text(encoding="utf-8")), None, {})
