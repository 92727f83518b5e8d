"""A step wished elsewhere costs no more than the order as it is with that step moved alone."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.pieces.reading import FILES

from dryfit import workshop
from dryfit.diagnostics import Source
from dryfit.plan.favour import price_of
from dryfit.plan.move_text import move_text
from dryfit.plan.plan import Plan
from dryfit.planning.reasons import reasoned, reasons_of
from dryfit.workshop import Checked

TEXT = FILES["step_stool"].read_text(encoding="utf-8")


def planned(text: str) -> tuple[Checked, Plan]:
    checked = workshop.check(Source("stool.dryfit", text), None, {})
    plan, findings = workshop.plan(checked, lambda _: None)
    assert plan is not None, findings
    return checked, plan


@pytest.fixture(scope="module")
def stool() -> tuple[Checked, Plan]:
    return planned(TEXT)


@pytest.mark.parametrize("station", ["band saw", "table saw"])
def test_a_wish_is_no_dearer_than_the_move_that_why_prices(
    station: str, stool: tuple[Checked, Plan]
) -> None:
    checked, plan = stool
    work = workshop._work_of(checked, plan)
    assert work is not None
    assert checked.shop is not None
    known = reasoned(plan, work, checked.shop)
    step = next(
        step
        for step in plan.steps
        if step.station == station and reasons_of(step, known).later is not None
    )
    later = reasons_of(step, known).later
    assert later is not None
    wished = workshop.wished(checked, plan, plan.steps[later.step - 1], step)
    assert wished is not None
    assert wished.plan is not None
    moved = known.worth * later.setup + later.waiting, later.elapsed
    best = price_of(wished.plan)[0] - price_of(plan)[0]
    assert (best, wished.plan.totals.elapsed - plan.totals.elapsed) <= moved


def test_the_line_that_is_offered_costs_what_is_told_of_it(stool: tuple[Checked, Plan]) -> None:
    checked, plan = stool
    seat, leg = plan.step_of("seat / width"), plan.step_of("leg / width")
    first, then = (seat, leg) if seat.number > leg.number else (leg, seat)
    wished = workshop.wished(checked, plan, first, then)
    assert wished is not None
    assert wished.line is not None
    assert wished.with_line is not None
    assert planned(f"{TEXT}\n{wished.line}\n")[1].totals == wished.with_line.totals


@pytest.mark.parametrize(("less", "said"), [(10, True), (0, False), (-10, False)])
def test_a_wish_that_makes_the_plan_better_is_told_so(
    less: int, said: bool, stool: tuple[Checked, Plan]
) -> None:
    _, plan = stool
    totals = replace(plan.totals, setup=plan.totals.setup - less)
    told = move_text(plan.steps[1], plan.steps[0], plan, replace(plan, totals=totals), None, None)
    assert ("the wish makes the plan better" in " ".join(told.split())) is said
