"""The way from a problem to a result."""

from collections.abc import Sequence
from dataclasses import replace
from functools import partial

from dryfit.order.attempts import NEVER, Tools, least_over_picks
from dryfit.order.bound import Bound, bound_of, least_changeover
from dryfit.order.calm import bettered, over_picks, told_picks
from dryfit.order.choosing import solved
from dryfit.order.decoder import decoded
from dryfit.order.first_orders import first_orders
from dryfit.order.improve import keeps_visits, offer
from dryfit.order.instance import Instance, compiled
from dryfit.order.picks import picked, picks_of, require_choices
from dryfit.order.problem import Problem, Unsolvable
from dryfit.order.proving import Proof, proved
from dryfit.order.refining import refined
from dryfit.order.repairing import repaired
from dryfit.order.result import Result, Schedule, Totals, gap_percent
from dryfit.order.validity import require_solvable
from dryfit.order.watching import Lookout, Order, Watch


def solve(
    problem: Problem,
    *,
    k: int = 4,
    effort: int = 100,
    watch: Watch | None = None,
    previous: Sequence[str] = (),
) -> Result:
    """The best order found: least `k` * (set-up + work) + waiting.

    Ties go to the plan that is done sooner, then to less set-up, fewer walks, and the order of
    `problem.tasks`.

    k       tenths of waiting that a tenth of set-up is worth, 0 or more
    effort  moves that the improvement tries per task (of more than 300 tasks as much work as for
            300), and the measure of the search before it; 0 is a quick first answer. Work is
            counted, not timed, so the same input gives the same result
    watch   called with the best so far, from the first order on, at intervals of counted work
    previous  an order that the maker has, of this problem or of one a little different. Tasks that
            are gone are dropped from it, new ones put where they cost least; it is left only for
            strict gains, so that solving again from the result changes nothing. Where it tells
            the option of each choice, it is kept; where it can't be mended, it is passed over

    A `KeyboardInterrupt`, from outside or from `watch`, ends the search: what comes back is the
    best order so far, and `Result.ended_early` says so. Before there is one it passes through.

    The lower bound holds for the changeover of every valid order, whatever `k` is; where there are
    choices, of every combination of options (`Result.over`).

    Raises
    ------
    Unsolvable
        as `require_solvable` in `validity`, or `k` or `effort` is negative.
    """
    if k < 0 or effort < 0:
        raise Unsolvable("neither k nor effort may be below nothing")
    if problem.choices:
        require_choices(problem)
        picks = told_picks(problem, previous) if previous else None
        if picks is not None:
            result = _again(k, picked(problem, picks), effort, watch, previous)
            return over_picks(problem, picks, result, least_over_picks(problem, changeover_bound))
        tools = Tools(partial(_solved, k), changeover_bound, _proved)
        return solved(problem, k, effort, watch, tools)
    if previous:
        return _again(k, problem, effort, watch, previous)
    return _solved(k, problem, effort, watch)


def _again(
    k: int, problem: Problem, effort: int, watch: Watch | None, previous: Sequence[str]
) -> Result:
    """The previous order of a problem without choices, mended and left for strict gains alone."""
    require_solvable(problem)
    instance = compiled(problem)
    mended = repaired(instance, previous, k)
    if mended is None:
        return _solved(k, problem, effort, watch)
    lookout = Lookout(k, watch)
    bound = bound_of(instance)
    lookout.bound = least_changeover(instance, bound)
    offer(instance, mended, lookout)
    try:
        order, played = bettered(instance, mended, k, effort, lookout)
        fewest = decoded(instance, order)[1].changeover
        proof = proved(instance, bound, (lookout.bound, fewest), effort, lookout)
    except KeyboardInterrupt:
        return _interrupted(lookout)
    return _result(instance, order, replace(proof, made=proof.made + played))


def _solved(
    k: int, problem: Problem, effort: int, watch: Watch | None, near: Sequence[str] = ()
) -> Result:
    """The best order found of a problem without choices.

    near  an order of a problem a little different: the search starts from there, and proves no
          more than the bound of the first state
    """
    require_solvable(problem)
    instance = compiled(problem)
    lookout = Lookout(k, watch)
    try:
        mended = repaired(instance, near, k) if near else None
        if mended is None:
            found, proof = _searched(instance, bound_of(instance), effort, lookout)
        else:
            found = (mended,)
            proof = Proof(least_changeover(instance, bound_of(instance)), NEVER, None, 0)
            offer(instance, mended, lookout)
        order, placed = refined(instance, found, k, effort, lookout)
    except KeyboardInterrupt:
        if lookout.kept is None:
            raise
        return _interrupted(lookout)
    return _result(instance, order, replace(proof, made=proof.made + placed))


def _proved(problem: Problem, fewest: int, effort: int, lookout: Lookout) -> Proof:
    """What is proved of a problem without choices, up to a changeover that need not be beaten."""
    require_solvable(problem)
    instance = compiled(problem)
    bound = bound_of(instance)
    least = min(least_changeover(instance, bound), fewest)
    return proved(instance, bound, (least, fewest), effort, lookout)


def evaluate(problem: Problem, order: Sequence[str]) -> tuple[Schedule, Totals]:
    """Schedule and totals of a given order: every task as early as its turn allows.

    order  ids of all tasks, each once; where there are choices, those of one option of each

    Raises
    ------
    Unsolvable
        as `require_solvable`; or the order is not of all tasks, breaks a precedence, or leaves a
        station within a together group.
    """
    if problem.choices:
        require_choices(problem)
        problem = picked(problem, picks_of(problem, order))
    require_solvable(problem)
    instance = compiled(problem)
    index = {task.id: i for i, task in enumerate(problem.tasks)}
    if len(order) != len(index) or set(order) != set(index):
        raise Unsolvable("the order must name every task once")
    numbers = tuple(index[name] for name in order)
    done = 0
    for task in numbers:
        if instance.predecessors[task] & ~done:
            name = problem.tasks[task].id
            raise Unsolvable(f"{name} comes before a task that it depends on", (name,))
        done |= 1 << task
    if not keeps_visits(instance, numbers):
        raise Unsolvable("a together group is not done in one visit")
    return decoded(instance, numbers)


def changeover_bound(problem: Problem) -> int:
    """Changeover, in tenths of a minute, that no valid order can go below.

    Raises
    ------
    Unsolvable
        as `require_solvable`.
    """
    if problem.choices:
        require_choices(problem)
        return least_over_picks(problem, changeover_bound)
    require_solvable(problem)
    instance = compiled(problem)
    return least_changeover(instance, bound_of(instance))


def _searched(
    instance: Instance, bound: Bound, effort: int, lookout: Lookout
) -> tuple[tuple[Order, ...], Proof]:
    """Orders worth improving, and what is proved of the fewest changeovers."""
    lookout.bound = least_changeover(instance, bound)
    orders, fewest, opened = first_orders(instance, bound, effort, lookout)
    proof = proved(instance, bound, (lookout.bound, fewest), effort, lookout)
    lookout.bound = proof.least
    if proof.order is not None:
        offer(instance, proof.order, lookout)
        orders.append(proof.order)
    return tuple(orders), replace(proof, made=opened + proof.made)


def _interrupted(lookout: Lookout) -> Result:
    """The best order so far of a search that was ended early."""
    kept = lookout.kept
    assert kept is not None, "there is an order to give back"
    result = _result(kept.instance, kept.score[-1], Proof(lookout.bound, NEVER, None, 0))
    return replace(result, ended_early=True)


def _result(instance: Instance, order: Order, proof: Proof) -> Result:
    schedule, totals = decoded(instance, order)
    return Result(
        order=tuple(entry.task for entry in schedule.entries),
        schedule=schedule,
        totals=totals,
        lower_bound=proof.least,
        fewest_found=min(proof.fewest, totals.changeover),
        proven=totals.changeover == proof.least,
        gap_percent=gap_percent(totals.changeover, proof.least),
        effort=proof.made,
        picks_bound=proof.least,
    )
