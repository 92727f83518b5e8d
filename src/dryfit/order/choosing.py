"""The search over choices: which option of each makes the cheapest plan.

Picks made, a problem is a plain one, and everything else in this library sees only such. What no
order of a combination can cost less than is known before any search: the work, the walks and
test cuts that it needs at least, and the bound of its changeover. The first options are searched
with all effort, so that no choice makes a plan dearer than if it had not been offered; a few
combinations with a low least price a little. From the best order on picks are changed: an order
of other picks is made from it by leaving out and putting in, and improved a little, so that what
a change of picks is worth is not lost in what a search finds by chance. No combination is looked
at whose least price is no lower than the best price found.
"""

from dataclasses import replace

from dryfit.order.attempts import FEW, Attempts, Bounder, Tools
from dryfit.order.picks import Picks, changed, combinations, common, picked
from dryfit.order.problem import Problem, Unsolvable
from dryfit.order.result import Result, gap_percent
from dryfit.order.watching import Watch

STARTS, SHARE_OF_STARTS = 3, 8
"""Combinations with a low least price, and the share of the effort that each gets: an eighth."""

CHANGES, SHARE_OF_CHANGES = 24, 16
"""Orders made by changing picks, and the share of the effort that each gets."""

PROOFS, SHARE_OF_PROOFS = 10, 4
"""Sets of combinations searched for a bound at the end, and the share of the effort of each."""


def solved(problem: Problem, k: int, effort: int, watch: Watch | None, tools: Tools) -> Result:
    """The best order found of all combinations: least `k` * (set-up + work) + waiting.

    Raises
    ------
    Unsolvable
        no combination has a schedule; it says why the first one has none.
    """
    attempts = Attempts(problem, k, watch, tools)
    try:
        first = _first_solvable(problem, tools.bound)
        attempts.run(first, effort)
        for picks in _starts(attempts, first):
            if not attempts.is_pointless(picks):
                attempts.run(picks, max(1, effort // SHARE_OF_STARTS))
        _change_picks(attempts, max(1, effort // SHARE_OF_CHANGES))
        if attempts.cheapest() != first:
            attempts.run(attempts.cheapest(), effort)
        _prove(attempts, max(1, effort // SHARE_OF_PROOFS))
    except KeyboardInterrupt:
        if not attempts.best:
            raise
        return replace(_result(attempts), ended_early=True)
    return _result(attempts)


def _starts(attempts: Attempts, first: Picks) -> list[Picks]:
    """Combinations with a low least price: of a few the lowest.

    Of many it is the lowest that is come to from the first one by changes of picks.
    """
    problem = attempts.problem
    if attempts.few:
        by_price = sorted(attempts.bounds, key=attempts.least_price)
        return [picks for picks in by_price if picks != first][:STARTS]
    lower, now = first, None
    while lower != now:
        now = lower
        lower = min((now, *changed(problem, now)), key=attempts.rough_price)
    return [] if lower == first else [lower]


def _change_picks(attempts: Attempts, effort: int) -> None:
    """Change picks of the best combination, until no such change makes it cheaper.

    Of all changes those with the lowest rough price are tried first.
    """
    left = CHANGES
    tried: set[tuple[Picks, Picks]] = set()
    best: Picks | None = None
    while left and best != attempts.cheapest():
        best = attempts.cheapest()
        for picks in sorted(changed(attempts.problem, best), key=attempts.rough_price):
            if not left or attempts.rough_price(picks) >= attempts.lowest:
                break
            if (best, picks) in tried or attempts.is_pointless(picks):
                continue
            tried.add((best, picks))
            left -= 1
            attempts.run(picks, effort, attempts.best[best].order)
            if attempts.cheapest() == picks:
                break


def _prove(attempts: Attempts, effort: int) -> None:
    """Raise the least changeover of all combinations towards the fewest found.

    Combinations stand together as long as they have the picks made so far in common, and what
    holds for the tasks that these picks leave to all of them holds for each. The set with the
    lowest bound holds the least down: it is searched, and where that does not raise it, divided
    by one more choice.
    """
    problem = attempts.problem
    bounds: dict[Picks, int] = dict(attempts.bounds) if attempts.few else {(): attempts.least}
    searched: set[Picks] = set()
    while bounds and len(searched) < PROOFS:
        lowest = min(bounds, key=bounds.__getitem__)
        if bounds[lowest] >= attempts.fewest:
            break
        if lowest not in searched:
            searched.add(lowest)
            proof = attempts.proof(common(problem, dict(lowest)), effort)
            if len(lowest) == len(problem.choices):
                attempts.fewest = min(attempts.fewest, proof.fewest)
            if proof.least > bounds[lowest]:
                bounds[lowest] = proof.least
                continue
        if len(lowest) == len(problem.choices):
            break
        bounds |= attempts.divided(lowest, bounds.pop(lowest))
    attempts.least = max(attempts.least, min(bounds.values(), default=0))


def _first_solvable(problem: Problem, bound: Bounder) -> Picks:
    """A combination that has a schedule: the first one, or the first of a few that has."""
    fault: Unsolvable | None = None
    for picks, _ in zip(combinations(problem), range(FEW), strict=False):
        try:
            bound(picked(problem, picks))
        except Unsolvable as reason:
            fault = fault or reason
        else:
            return picks
    assert fault is not None, "a problem has a combination"
    raise fault


def _result(attempts: Attempts) -> Result:
    """The cheapest result, with what is known over all combinations."""
    picks = attempts.cheapest()
    result = attempts.best[picks]
    return replace(
        result,
        lower_bound=attempts.least,
        fewest_found=attempts.fewest,
        proven=result.totals.changeover == attempts.least,
        gap_percent=gap_percent(result.totals.changeover, attempts.least),
        effort=attempts.effort,
        picks=picks,
        picks_bound=max(attempts.least, attempts.bounds[picks]),
        over="every pick" if attempts.few else "common tasks",
    )
