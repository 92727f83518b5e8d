"""Changes of a setting by station and axis, counted again from what the operations ask for."""

from __future__ import annotations

from collections import Counter

import pytest
from tests.unit.operations.worked import listed, piece, shipped_shop
from tests.unit.planning.planned import plan_of

from dryfit.plan.changes import Changes, changes_of, set_often, set_once
from dryfit.plan.changes_text import changes_figure
from dryfit.planning.part_by_part import order_part_by_part
from dryfit.planning.problem_of import problem_of

ROWS = (
    Changes("mitre saw", "angle", 1, 1),
    Changes("mitre saw", "stop", 1, 1),
    Changes("table saw", "cutter", 2, 5),
    Changes("table saw", "height", 4, 3),
    Changes("table saw", "tilt", 1, 1),
)


def test_the_bars_are_as_long_as_the_counts() -> None:
    assert list(changes_figure(ROWS)) == [
        "Changes of a setting, by station and what is set",
        "  station    set     here  part by part",
        "  table saw  cutter     2     5  ##---",
        "             height     4     3  ###+",
        "  #: in this order; -: so many more part by part; +: so many more in this order",
        "  Set once either way: mitre saw (angle, stop), table saw (tilt)",
    ]


def test_long_bars_are_drawn_smaller_and_none_vanishes() -> None:
    rows = (Changes("table saw", "height", 100, 200), Changes("table saw", "cutter", 1, 2))
    figure = list(changes_figure(rows))
    assert figure[2].endswith("  100   200  " + 18 * "#" + 18 * "-")
    assert figure[3].endswith("    1     2  #")
    assert max(map(len, figure)) <= 80


def test_nothing_is_said_where_nothing_is_set() -> None:
    assert list(changes_figure(())) == []
    assert (set_often(ROWS[:2]), set_once(ROWS[2:3])) == ((), "")


@pytest.mark.parametrize("name", ["boot_bench", "tool_tote"])
def test_the_counts_are_those_of_the_two_orders(name: str) -> None:
    plan = plan_of(name)
    work, _ = listed(piece(name))
    rows = changes_of(plan)
    assert sum(row.here for row in rows) == plan.totals.changeovers
    found = Counter({(row.station, row.axis): row.part_by_part for row in rows})
    tasks = {task.id: task for task in problem_of(work, shipped_shop()).tasks}
    counted: Counter[tuple[str, str]] = Counter()
    standing: dict[tuple[str, str], str] = {}
    chosen = set[tuple[str, str]]()
    for task in (tasks[name] for name in order_part_by_part(work)):
        for axis, value in task.demands:
            if not isinstance(value, str):
                chosen.add((task.station, axis))  # any of several values: not to be counted here
            elif standing.get((task.station, axis)) != value:
                counted[task.station, axis] += 1
                standing[task.station, axis] = value
    plain = {key: count for key, count in found.items() if key not in chosen}
    assert plain == {key: count for key, count in counted.items() if key not in chosen}
    assert len(plain) > len(chosen)
    shop = shipped_shop()
    places = [
        (list(shop.stations).index(row.station),
         [axis.name for axis in shop.stations[row.station].axes].index(row.axis))
        for row in rows
    ]  # fmt: skip
    assert places == sorted(places)
