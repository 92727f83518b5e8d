"""Three plans side by side: every figure is that of its plan."""

from __future__ import annotations

from dataclasses import replace

from tests.unit.planning.planned import plan_of

from dryfit.plan.compared_text import compared
from dryfit.plan.favour import WORTH
from dryfit.plan.plan import Plan


def plans() -> tuple[Plan, ...]:
    """One plan three times, with other figures: no search is needed to print them."""
    plan = plan_of("tool_tote")
    made = []
    for favour, changeover, waiting in (("setups", 600, 9000), ("balanced", 620, 8000),
                                        ("soonest", 700, 7990)):  # fmt: skip
        totals = replace(
            plan.totals, changeover=changeover, waiting=waiting, fewest=580, fewest_found=590
        )
        made.append(replace(plan, favour=favour, totals=totals))
    return tuple(made)


def cells(table: str, label: str) -> list[str]:
    line = next(line for line in table.splitlines() if line.strip().startswith(label))
    return [line[at : at + 15].strip() for at in range(20, 80, 15)]


def test_the_columns_are_the_plans_and_part_by_part() -> None:
    table = compared(plans())
    other = plans()[0].totals.part_by_part
    count = plans()[0].totals.changeovers
    assert cells(table, "favour") == [*WORTH, "part by part"]
    assert cells(table, "changes") == [
        f"{count}: 60 min",
        f"{count}: 62 min",
        f"{count}: 70 min",
        f"{other.changeovers}: {other.changeover / 10:g} min",
    ]
    assert cells(table, "waiting")[:3] == ["15 h 00 min", "13 h 20 min", "13 h 19 min"]
    assert cells(table, "last work ends")[0] == "day 4, 08:56"
    assert cells(table, "done")[0] == "day 5, 08:56"
    assert max(map(len, table.splitlines())) <= 80


def test_what_is_possible_is_said_once_for_all() -> None:
    words = " ".join(compared(plans()).split())
    assert "found for changes: 59 min, at most 2 % above the best possible (no order," in words
    proved = tuple(replace(p, totals=replace(p.totals, fewest=590)) for p in plans())
    assert "over the chosen methods: 59 min, proved." in " ".join(compared(proved).split())


def test_orders_that_are_the_same_are_called_so() -> None:
    first, second, third = plans()
    other = replace(third, steps=third.steps[::-1])
    words = " ".join(compared((first, second, other)).split())
    assert "The same order: setups and balanced." in words
    every = " ".join(compared((first, second, third)).split())
    assert "The same order: setups, balanced and soonest." in every
    assert every.count("The same order") == 1


def test_the_figures_of_a_column_add_up() -> None:
    """5 h 41.7 min + 3 h 27.7 min = 9 h 09.4 min; minutes alone made 5:42 + 3:28 = 9:09."""
    plan = plan_of("tool_tote")
    totals = replace(plan.totals, setup=2077, attended=5494)
    table = compared((replace(plan, totals=totals),))
    assert cells(table, "work")[0] == "5 h 41.7 min"
    assert cells(table, "setting up")[0] == "3 h 27.7 min"
    assert cells(table, "hands on")[0] == "9 h 09.4 min"
