"""Why a step stands where it stands: rows worked by hand, and every claim about two examples."""

from dataclasses import replace
from fractions import Fraction
from functools import cache

import pytest
from tests.unit.operations.worked import listed, piece, shipped_shop
from tests.unit.planning.planned import plan_of

from dryfit.order import Problem, Totals, evaluate, violations
from dryfit.plan.operation import Operation, Rule, WorkList
from dryfit.plan.plan import Plan, Step
from dryfit.plan.reasons import Bar, Elsewhere, Shared, StepReasons
from dryfit.plan.setting import Setting
from dryfit.planning.problem_of import problem_of
from dryfit.planning.reasons import Reasoned, reasoned, reasons_of
from dryfit.planning.steps import steps_of

PIECES = ("boot_bench", "step_stool")


def operation(name: str, station: str, after: int = 0, **settings: int) -> Operation:
    row = tuple(Setting(axis, Fraction(value)) for axis, value in settings.items())
    return Operation(name, "cut", station, name, row, (), 100, "", after_tenths=after)


def by_hand(operations: tuple[Operation, ...], rules: tuple[Rule, ...]) -> tuple[Plan, Reasoned]:
    """The plan of operations in the order in which they stand here."""
    work, shop = WorkList(operations, rules, ()), shipped_shop()
    schedule, _ = evaluate(problem_of(work, shop), [each.id for each in operations])
    steps = steps_of(schedule, work, shop)
    plan = replace(plan_of("step_stool"), steps=steps)
    return plan, reasoned(plan, work, shop)


def test_a_job_between_two_steps_of_a_machine_costs_the_walk_back() -> None:
    # The shipped shop: a walk 1 min, the planer's thickness 0.5 min.  Marked between its two
    # steps, the planer is walked to twice; which of the two comes first does not matter.
    rule = Rule("thin", "mark", "it is marked when it is thin")
    plan, known = by_hand(
        (
            operation("thin", "planer", thickness=20),
            operation("thick", "planer", thickness=30),
            operation("mark", "bench"),
        ),
        (rule,),
    )
    first, second, third = (reasons_of(step, known) for step in plan.steps)
    assert third.held == Bar(1, "thin", ("it is marked when it is thin",))
    assert (third.until, third.later) == (None, None)
    assert third.earlier == Elsewhere(2, "before", 10, 0, 10, ("walk",))
    assert first.until == Bar(3, "mark", ("it is marked when it is thin",))
    assert (first.ties_before, first.ties_after) == ((), (2,))
    assert (second.ties_before, second.ties_after) == ((1,), ())
    assert second.later == Elsewhere(3, "after", 10, 0, 10, ("walk",))


def test_what_stays_set_is_told_for_both_neighbours() -> None:
    plan, known = by_hand(
        (
            operation("groove", "table saw", height=9, fence=12),
            operation("widen", "table saw", height=9, fence=18),
        ),
        (),
    )
    first, second = (reasons_of(step, known) for step in plan.steps)
    assert (first.before, first.after) == (None, Shared(2, ("height",)))
    assert (second.before, second.after) == (Shared(1, ("height",)), None)


def test_a_job_that_fills_a_cure_says_so() -> None:
    # 60 min of glue, 10 of them filled: done later they are lost.
    cure = Rule("glue", "level", "the glue has to hold", 600)
    plan, known = by_hand(
        (
            operation("glue", "glue bench", after=600),
            operation("file", "bench"),
            operation("level", "bench"),
        ),
        (cure,),
    )
    assert [step.id for step in plan.steps] == ["glue", "file", "level"]
    file = reasons_of(plan.steps[1], known)
    assert file.fills == 3
    # Setting up is the same; the walk to the bench then lies in the wait.
    assert file.later == Elsewhere(3, "after", 0, 100, 100, ())


@cache
def known_of(name: str) -> tuple[Reasoned, Problem, dict[int, StepReasons]]:
    work, _ = listed(piece(name))
    plan = plan_of(name)
    known = reasoned(plan, work, shipped_shop())
    return (
        known,
        problem_of(work, shipped_shop()),
        {step.number: reasons_of(step, known) for step in plan.steps},
    )


def order(steps: list[Step]) -> list[str]:
    return [operation.id for step in steps for operation in step.operations]


def put(steps: tuple[Step, ...], number: int, beside: int, side: str) -> list[Step]:
    left = [step for step in steps if step.number != number]
    at = next(i for i, step in enumerate(left) if step.number == beside)
    left.insert(at + (side == "after"), steps[number - 1])
    return left


def added(new: Totals, old: Totals) -> tuple[int, int, int]:
    return new.setup - old.setup, new.waiting - old.waiting, new.elapsed - old.elapsed


@pytest.mark.parametrize("name", PIECES)
def test_every_price_is_that_of_the_order_it_makes(name: str) -> None:
    known, problem, reasons = known_of(name)
    steps = known.plan.steps
    _, now = evaluate(problem, order(list(steps)))
    for why in reasons.values():
        places = [(place, False) for place in (why.earlier, why.later) if place]
        ties = [(before, "before") for before in why.ties_before]
        ties += [(after, "after") for after in why.ties_after]
        for place, _ in places:
            _, then = evaluate(problem, order(put(steps, why.step, place.step, place.side)))
            assert added(then, now) == (place.setup, place.waiting, place.elapsed)
        for beside, side in ties:
            _, then = evaluate(problem, order(put(steps, why.step, beside, side)))
            assert added(then, now) == (0, 0, 0)


@pytest.mark.parametrize("name", PIECES)
def test_what_holds_a_step_is_the_nearest_that_it_cannot_pass(name: str) -> None:
    known, problem, reasons = known_of(name)
    steps = known.plan.steps
    for why in reasons.values():
        for bar, side in ((why.held, "before"), (why.until, "after")):
            if bar is None:
                continue
            past = order(put(steps, why.step, bar.step, side))
            told = [each for each in violations(problem, past) if "one visit" not in each]
            assert any(reason in each for reason in bar.reasons for each in told)
            step = steps[bar.step - 1]
            assert bar.operation in {operation.id for operation in step.operations}
            # All that stands between could be passed, were it not for visits.
            nearer = bar.step + 1 if side == "before" else bar.step - 1
            if nearer != why.step:
                near = order(put(steps, why.step, nearer, side))
                assert all("one visit" in each for each in violations(problem, near))
