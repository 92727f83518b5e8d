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

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

from dryfit.order.picks import Picks, changed, combinations, common, count, picked
from dryfit.order.problem import Problem, Unsolvable
from dryfit.order.proving import Proof
from dryfit.order.result import Result, gap_percent
from dryfit.order.watching import Glimpse, Watch

FEW = 128
"""Combinations up to which each is bounded."""

STARTS, SHARE_OF_STARTS = 3, 8
"""Combinations with a low least price, and the share of the effort that each gets: an eighth."""

CHANGES, SHARE_OF_CHANGES = 24, 16
"""Orders made by changing picks, and the share of the effort that each gets."""

PROOFS, SHARE_OF_PROOFS = 16, 4
"""Combinations whose bound is raised at the end, and the share of the effort that each gets."""

UNSOLVABLE = 10**18
"""The least price of a combination without a schedule."""

Solver = Callable[[Problem, int, Watch | None, Sequence[str]], Result]
"""Searches a plain problem with an effort; from an order of one a little different, if any."""

Bounder = Callable[[Problem], int]
"""Changeover that no order of a plain problem can go below."""

Prover = Callable[[Problem, int, int], Proof]
"""What is proved of a plain problem with an effort, where an order of another has so little."""

Price = tuple[int, int, int]


@dataclass(frozen=True, slots=True)
class Tools:
    """What is done with plain problems."""

    solve: Solver
    bound: Bounder
    prove: Prover


def solved(problem: Problem, k: int, effort: int, watch: Watch | None, tools: Tools) -> Result:
    """The best order found of all combinations: least `k` * (set-up + work) + waiting.

    Raises
    ------
    Unsolvable
        no combination has a schedule; it says why the first one has none.
    """
    trials = _Trials(problem, k, watch, tools)
    try:
        first = _first_solvable(problem, tools.bound)
        trials.run(first, effort)
        for picks in _starts(trials, first):
            if not trials.is_pointless(picks):
                trials.run(picks, max(1, effort // SHARE_OF_STARTS))
        _change_picks(trials, max(1, effort // SHARE_OF_CHANGES))
        if trials.cheapest() != first:
            trials.run(trials.cheapest(), effort)
        _prove(trials, max(1, effort // SHARE_OF_PROOFS))
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
    least   changeover that no order of any combination can go below
    fewest  least changeover of any order come across
    effort  work counted in all searches
    """

    def __init__(self, problem: Problem, k: int, watch: Watch | None, tools: Tools) -> None:
        self.problem = problem
        self.k = k
        self.tools = tools
        self.few = count(problem) <= FEW
        self.best: dict[Picks, Result] = {}
        self.bounds = _bounds(problem, tools.bound) if self.few else {}
        self.least = (
            min(self.bounds.values()) if self.few else _least_of_common(problem, tools.bound)
        )
        self.fewest: int | None = None
        self.effort = 0
        self._prices: dict[Picks, int] = {}
        self._watch = watch
        self._told: int | None = None

    def run(self, picks: Picks, effort: int, near: Sequence[str] = ()) -> None:
        """Search one combination, and keep what is cheapest of it."""
        plain = picked(self.problem, picks)
        result = self.tools.solve(plain, effort, self._forwarded(plain), near)
        self.effort += result.effort
        self.bounds[picks] = max(result.lower_bound, self.bounds.get(picks, 0))
        if self.few:
            self.least = min(self.bounds.values())
        if self.fewest is None or result.fewest_found < self.fewest:
            self.fewest = result.fewest_found
        if picks not in self.best or self._price(result) < self._price(self.best[picks]):
            self.best[picks] = result
        if result.ended_early:
            raise KeyboardInterrupt

    def prove(self, plain: Problem, effort: int) -> int:
        """Changeover that no order of a combination can go below, up to the fewest known."""
        assert self.fewest is not None, "something was searched"
        proof = self.tools.prove(plain, self.fewest, effort)
        self.effort += proof.made
        self.fewest = min(self.fewest, proof.fewest)
        return proof.least

    def cheapest(self) -> Picks:
        """The combination with the cheapest result; of equals the one tried first."""
        return min(self.best, key=lambda picks: self._price(self.best[picks]))

    def least_price(self, picks: Picks) -> int:
        """What no order of a combination can cost less than."""
        if picks not in self._prices:
            plain = picked(self.problem, picks)
            try:
                changeover = self.bounds[picks] if picks in self.bounds else self.tools.bound(plain)
                self._prices[picks] = _least_price(plain, changeover, self.k)
            except Unsolvable:
                self._prices[picks] = UNSOLVABLE
        return self._prices[picks]

    def is_pointless(self, picks: Picks) -> bool:
        """Whether no order of a combination can be cheaper than the best found."""
        least = self.least_price(picks)
        if not self.best:
            return least == UNSOLVABLE
        return least >= self._price(self.best[self.cheapest()])[0]

    def _price(self, result: Result) -> Price:
        """What results of different combinations are compared by."""
        totals = result.totals
        attended = totals.setup + totals.work
        return self.k * attended + totals.waiting, totals.elapsed, totals.setup

    def _forwarded(self, plain: Problem) -> Watch | None:
        """Lets pass what is no worse than all glimpses before, with a bound over all picks."""
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


def _starts(trials: _Trials, first: Picks) -> list[Picks]:
    """Combinations with a low least price: of a few the lowest.

    Of many it is the lowest that is come to from the first one by changes of picks.
    """
    problem = trials.problem
    if trials.few:
        by_price = sorted(trials.bounds, key=trials.least_price)
        return [picks for picks in by_price if picks != first][:STARTS]
    lower, now = first, None
    while lower != now:
        now = lower
        lower = min((now, *changed(problem, now)), key=trials.least_price)
    return [] if lower == first else [lower]


def _change_picks(trials: _Trials, effort: int) -> None:
    """Change picks of the best combination, until no such change makes it cheaper.

    Of all changes those with the lowest least price are tried first.
    """
    left = CHANGES
    tried: set[tuple[Picks, Picks]] = set()
    best: Picks | None = None
    while left and best != trials.cheapest():
        best = trials.cheapest()
        for picks in sorted(changed(trials.problem, best), key=trials.least_price):
            if not left or trials.is_pointless(picks):
                break
            if (best, picks) in tried:
                continue
            tried.add((best, picks))
            left -= 1
            trials.run(picks, effort, trials.best[best].order)
            if trials.cheapest() == picks:
                break


def _prove(trials: _Trials, effort: int) -> None:
    """Raise the least changeover of all combinations towards the fewest found.

    Of a few it is the one with the lowest bound that holds it down; of many, what they share.
    """
    if not trials.few:
        shared = trials.prove(common(trials.problem, {}), effort)
        trials.least = max(trials.least, shared)
        return
    for _ in range(PROOFS):
        lowest = min(trials.bounds, key=trials.bounds.__getitem__)
        plain = picked(trials.problem, lowest)
        proved = trials.prove(plain, effort)
        if proved <= trials.least:
            break
        trials.bounds[lowest] = proved
        trials.least = min(trials.bounds.values())


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
    picks = trials.cheapest()
    result = trials.best[picks]
    assert trials.fewest is not None, "something was searched"
    return replace(
        result,
        lower_bound=trials.least,
        fewest_found=trials.fewest,
        proven=result.totals.changeover == trials.least,
        gap_percent=gap_percent(result.totals.changeover, trials.least),
        effort=trials.effort,
        picks=picks,
        picks_bound=trials.bounds[picks],
        over="every pick" if trials.few else "common tasks",
    )
