"""The search over choices: which option of each makes the cheapest plan.

Picks made, a problem is a plain one, and everything else in this library sees only such. What no
order of a combination can cost less than is known before any search: the work, the walks and
test cuts that it needs at least, and the bound of its changeover. Combinations are searched with
little effort, those with the lowest least price first, and not at all where that is no lower than
a price already found; the cheapest go on to searches with more effort.
"""

from collections.abc import Callable
from dataclasses import replace

from dryfit.order.picks import Picks, changed, combinations, common, count, picked
from dryfit.order.problem import Problem, Unsolvable
from dryfit.order.result import Result, gap_percent
from dryfit.order.watching import Glimpse, Watch

FEW = 128
"""Combinations up to which each is bounded; of more, single picks are changed."""

FIRST = (16, 24)
ROUNDS = ((4, 4), (1, 1))
"""Shares of the effort that a combination gets, and how many of the cheapest get it."""

MOST = 48
"""Combinations searched where there are more than a few."""

UNSOLVABLE = 10**18

Solver = Callable[[Problem, int, Watch | None], Result]
"""Searches a plain problem with an effort."""

Bounder = Callable[[Problem], int]
"""Changeover that no order of a plain problem can go below."""

Price = tuple[int, int, int]


def solved(
    problem: Problem, k: int, effort: int, watch: Watch | None, solve: Solver, bound: Bounder
) -> Result:
    """The best order found of all combinations: least `k` * (set-up + work) + waiting.

    Raises
    ------
    Unsolvable
        no combination has a schedule; it says why the first one has none.
    """
    trials = _Trials(problem, k, watch, solve)
    quick = max(1, effort // FIRST[0])
    try:
        if count(problem) <= FEW:
            _try_all(trials, bound, quick)
        else:
            _try_changes(trials, bound, quick)
        for share, cheapest in ROUNDS:
            for picks in trials.cheapest(cheapest):
                trials.run(picks, max(1, effort // share))
    except KeyboardInterrupt:
        if not trials.best:
            raise
        return replace(_result(trials), ended_early=True)
    return _result(trials)


def least_over_picks(problem: Problem, bound: Bounder) -> int:
    """Changeover that no order of any combination can go below.

    Raises
    ------
    Unsolvable
        as `solved`.
    """
    if count(problem) <= FEW:
        return min(_bounds(problem, bound).values())
    return _least_of_common(problem, bound)


class _Trials:
    """Combinations searched so far.

    best    per combination: its cheapest result
    bounds  per combination: changeover that none of its orders can go below
    least   changeover that no order of any combination can go below, where not all are bounded
    effort  work counted in all searches
    """

    def __init__(self, problem: Problem, k: int, watch: Watch | None, solve: Solver) -> None:
        self.problem = problem
        self.k = k
        self.best: dict[Picks, Result] = {}
        self.bounds: dict[Picks, int] = {}
        self.least = 0
        self.effort = 0
        self._watch = watch
        self._solve = solve
        self._told: int | None = None

    def run(self, picks: Picks, effort: int) -> None:
        """Search one combination, and keep what is cheapest of it."""
        plain = picked(self.problem, picks)
        result = self._solve(plain, effort, self._forwarded(plain))
        self.effort += result.effort
        self.bounds[picks] = max(result.lower_bound, self.bounds.get(picks, 0))
        if picks not in self.best or self.price(result) < self.price(self.best[picks]):
            self.best[picks] = result
        if result.ended_early:
            raise KeyboardInterrupt

    def price(self, result: Result) -> Price:
        """What results of different combinations are compared by."""
        totals = result.totals
        attended = totals.setup + totals.work
        return self.k * attended + totals.waiting, totals.elapsed, totals.setup

    def cheapest(self, number: int) -> list[Picks]:
        """The combinations with the cheapest results; of equals the one tried first."""
        return sorted(self.best, key=lambda picks: self.price(self.best[picks]))[:number]

    def is_pointless(self, least: int) -> bool:
        """Whether a combination that costs at least so much cannot be cheaper than the best."""
        return bool(self.best) and least >= self.price(self.best[self.cheapest(1)[0]])[0]

    def _forwarded(self, plain: Problem) -> Watch | None:
        """Lets pass what is better than all glimpses before, with a bound over all picks."""
        watch = self._watch
        if watch is None:
            return None
        work = sum(task.work for task in plain.tasks)

        def forward(glimpse: Glimpse) -> None:
            price = self.k * (glimpse.setup + work) + glimpse.waiting
            if self._told is None or price <= self._told:
                self._told = price
                watch(replace(glimpse, bound=self.least))

        return forward


def _try_all(trials: _Trials, bound: Bounder, effort: int) -> None:
    """Search combinations, those that may be cheapest first, until none can be cheaper."""
    problem = trials.problem
    trials.bounds = _bounds(problem, bound)
    trials.least = min(trials.bounds.values())
    least = {
        picks: _least_price(picked(problem, picks), changeover, trials.k)
        for picks, changeover in trials.bounds.items()
    }
    for picks in sorted(least, key=least.__getitem__)[: FIRST[1]]:
        if trials.is_pointless(least[picks]):
            break
        trials.run(picks, effort)


def _try_changes(trials: _Trials, bound: Bounder, effort: int) -> None:
    """Change picks of the best combination, until no such change makes it cheaper.

    Of all changes those with the lowest least price are tried first.
    """
    problem = trials.problem
    trials.least = _least_of_common(problem, bound)
    trials.run(_first_solvable(problem, bound), effort)
    price_from: dict[Picks, int] = {}
    left = MOST
    best: Picks = ()
    while left and best != trials.cheapest(1)[0]:
        best = trials.cheapest(1)[0]
        near = changed(problem, best)
        for picks in near:
            if picks not in trials.bounds and picks not in price_from:
                price_from[picks] = _bounded_price(picked(problem, picks), bound, trials.k)
        untried = [picks for picks in near if picks not in trials.bounds]
        for picks in sorted(untried, key=price_from.__getitem__)[:left]:
            if trials.is_pointless(price_from[picks]):
                break
            left -= 1
            trials.run(picks, effort)
            if trials.cheapest(1)[0] == picks:
                break


def _bounded_price(plain: Problem, bound: Bounder, k: int) -> int:
    """What no order can cost less than; more than anything if there is none."""
    try:
        return _least_price(plain, bound(plain), k)
    except Unsolvable:
        return UNSOLVABLE


def _bounds(problem: Problem, bound: Bounder) -> dict[Picks, int]:
    """The bound of every combination that has a schedule."""
    bounds: dict[Picks, int] = {}
    fault: Unsolvable | None = None
    for picks in combinations(problem):
        try:
            bounds[picks] = bound(picked(problem, picks))
        except Unsolvable as reason:
            fault = fault or reason
    if not bounds and fault is not None:
        raise fault
    return bounds


def _least_of_common(problem: Problem, bound: Bounder) -> int:
    """The bound of the tasks that all combinations share, or share with each option of a choice.

    To leave a task out of an order, and what precedences say of it, never makes changes dearer,
    so that what holds for fewer tasks holds for all.
    """
    least = bound(common(problem, {}))
    for choice in problem.choices:
        found: list[int] = []
        fault: Unsolvable | None = None
        for option in choice.options:
            try:
                found.append(bound(common(problem, {choice.name: option.name})))
            except Unsolvable as reason:
                fault = fault or reason
        if not found and fault is not None:
            raise fault
        least = max(least, min(found))
    return least


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


def _least_price(plain: Problem, changeover: int, k: int) -> int:
    """What no order can cost less than: the least set-up and the work, without any waiting."""
    walks = plain.walk * len({task.station for task in plain.tasks})
    setup = changeover + walks + sum(plain.trials.values())
    return k * (setup + sum(task.work for task in plain.tasks))


def _result(trials: _Trials) -> Result:
    """The cheapest result, with what is known over all combinations."""
    picks = trials.cheapest(1)[0]
    result = trials.best[picks]
    few = count(trials.problem) <= FEW
    least = min(trials.bounds.values()) if few else trials.least
    changeover = result.totals.changeover
    return replace(
        result,
        lower_bound=least,
        fewest_found=min(found.fewest_found for found in trials.best.values()),
        proven=changeover == least,
        gap_percent=gap_percent(changeover, least),
        effort=trials.effort,
        picks=picks,
        over="every pick" if few else "common tasks",
    )
