"""The stage: work list -> Plan, by the order engine."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction
from functools import partial

from dryfit.diagnostics import Diagnostic, Findings, Severity
from dryfit.order import Cut, Problem, Result, Schedule, Unsolvable, Watch, settled, solve
from dryfit.order import Totals as OrderTotals
from dryfit.placing.model import Model
from dryfit.plan.favour import USUAL, WORTH
from dryfit.plan.operation import WorkList
from dryfit.plan.plan import PartByPart, Plan, Totals
from dryfit.plan.totals_text import ENDED_IN_WORDS
from dryfit.planning.cutters import accessories_of, cutters_of
from dryfit.planning.moments import moment
from dryfit.planning.no_order import no_order
from dryfit.planning.part_by_part import part_by_part
from dryfit.planning.problem_of import problem_of
from dryfit.planning.steps import step_lengths, steps_of
from dryfit.planning.tidy import tidied
from dryfit.shop.days import full_name
from dryfit.shop.shop import Shop

EFFORT = 60
ENDED_EARLY = Diagnostic("search-ended-early", Severity.NOTICE, ENDED_IN_WORDS, None)


def make_plan(
    model: Model,
    shop: Shop,
    work: WorkList,
    *,
    favour: str = USUAL,
    effort: int = EFFORT,
    watch: Watch | None = None,
    previous: Sequence[str] = (),
) -> tuple[Plan | None, Findings]:
    """Return the plan, or None with the reason why there is no order.

    `favour` is setups, balanced or soonest; `effort`, `watch` and `previous`, operations in the
    order to begin with, as in `dryfit.order.solve`.
    Findings: ``search-ended-early`` when `watch` ended the search; ``no-order`` (H81) when rules
    and common visits contradict one another, or when a glue-up is longer than the working day.
    """
    problem = problem_of(work, shop)
    cut = partial(step_lengths, work=work, shop=shop)
    try:
        result, schedule, totals = ordered(problem, model, cut, favour, effort, watch, previous)
    except Unsolvable as reason:
        return None, (no_order(reason, model, work, shop),)
    done = moment(totals.elapsed, shop)
    return (
        Plan(
            shop=shop.name,
            shop_sha256=shop.sha256,
            favour=favour,
            steps=steps_of(schedule, work, shop),
            totals=_totals(result, totals, part_by_part(problem, work, shop)),
            alternatives=work.alternatives,
            cutters=cutters_of(work, shop),
            accessories=accessories_of(work, shop),
            done=done,
            done_on=full_name(shop, done.day),
            workers=shop.workers,
            ended_early=result.ended_early,
            boards=work.boards,
            lacking=work.lacking,
        ),
        (ENDED_EARLY,) if result.ended_early else (),
    )


def ordered(
    problem: Problem,
    model: Model,
    cut: Cut,
    favour: str,
    effort: int,
    watch: Watch | None,
    previous: Sequence[str] = (),
) -> tuple[Result, Schedule, OrderTotals]:
    """Return the engine's result, and the schedule that is printed, with its sums.

    `cut` cuts a schedule into steps: none of them alone stands better at another place of the one
    that comes back.  Raises Unsolvable.  Every test looks at it with the checker of `order`.
    """
    worth = WORTH[favour]
    result = solve(problem, k=worth, effort=effort, watch=watch, previous=previous)
    schedule, totals = tidied(result.schedule, result.totals, problem, model, worth)
    while True:  # each time strictly better, so it ends
        order = tuple(entry.task for entry in schedule.entries)
        better = settled(problem, order, worth, cut)
        if better is None:
            break
        schedule, totals = tidied(*better, problem, model, worth)
    # The last moves may have come upon fewer changes than the search did.
    fewest = min(result.fewest_found, totals.changeover)
    return replace(result, fewest_found=fewest), schedule, totals


def _totals(result: Result, totals: OrderTotals, parts: PartByPart) -> Totals:
    over = totals.changeover - result.lower_bound
    gap = Fraction(100 * over, result.lower_bound) if result.lower_bound else Fraction(100 * over)
    return Totals(
        changeovers=totals.changeovers,
        changeover=totals.changeover,
        walk=totals.walk,
        tests=totals.trial,
        setup=totals.setup,
        work=totals.work,
        attended=totals.attended,
        waiting=totals.waiting,
        elapsed=totals.elapsed,
        fewest=result.lower_bound,
        over="the chosen methods",
        proven=over == 0,
        gap_percent=Fraction(round(10 * gap), 10),
        part_by_part=parts,
        fewest_found=result.fewest_found,
    )
