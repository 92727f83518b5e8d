"""Combinations of options that were searched, what they came to, and what is known of others."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

from dryfit.order.picks import Picks, combinations, common, count, picked
from dryfit.order.problem import Problem, Unsolvable
from dryfit.order.proving import Proof
from dryfit.order.result import Result
from dryfit.order.watching import Glimpse, Lookout, Watch

FEW = 128
"""Combinations up to which each is bounded."""

NEVER = 10**18
"""A price, or changeover, that no order comes to."""

Solver = Callable[[Problem, int, Watch | None, Sequence[str]], Result]
"""Searches a plain problem with an effort; from an order of one a little different, if any."""

Bounder = Callable[[Problem], int]
"""Changeover that no order of a plain problem can go below."""

Prover = Callable[[Problem, int, int, Lookout], Proof]
"""What is proved of a plain problem with an effort, where an order of another has so little."""

Price = tuple[int, int, int]


@dataclass(frozen=True, slots=True)
class Tools:
    """What is done with plain problems."""

    solve: Solver
    bound: Bounder
    prove: Prover


class Attempts:
    """Combinations searched so far.

    best    per combination: its cheapest result
    bounds  per combination: changeover that none of its orders can go below
    least   changeover that no order of any combination can go below
    fewest  least changeover of any order come across; more than any at first
    lowest  the best price found; more than any at first
    effort  work counted in all searches
    """

    def __init__(self, problem: Problem, k: int, watch: Watch | None, tools: Tools) -> None:
        self.problem = problem
        self.k = k
        self.tools = tools
        self.few = count(problem) <= FEW
        self.best: dict[Picks, Result] = {}
        self.bounds = bounds_of(problem, tools.bound) if self.few else {}
        self.least = (
            min(self.bounds.values()) if self.few else least_of_common(problem, tools.bound)
        )
        self.fewest = self.lowest = NEVER
        self.effort = 0
        self._rough: dict[Picks, int] = {}
        self._least: dict[Picks, int] = {}
        self._watch = watch
        self._told: Glimpse | None = None
        self._told_price = NEVER

    def run(self, picks: Picks, effort: int, near: Sequence[str] = ()) -> None:
        """Search one combination, and keep what is cheapest of it."""
        plain = picked(self.problem, picks)
        result = self.tools.solve(plain, effort, self._forwarded(plain), near)
        self.effort += result.effort
        self.bounds[picks] = max(result.lower_bound, self.bounds.get(picks, 0))
        if self.few:
            self.least = min(self.bounds.values())
        self.fewest = min(self.fewest, result.fewest_found)
        self.lowest = min(self.lowest, self._price(result)[0])
        if picks not in self.best or self._price(result) < self._price(self.best[picks]):
            self.best[picks] = result
        if result.ended_early:
            raise KeyboardInterrupt

    def proof(self, plain: Problem, effort: int) -> Proof:
        """What is proved of a plain problem, up to the fewest changeovers known."""
        lookout = Lookout(self.k, self._watch, lambda: self._told)
        proof = self.tools.prove(plain, self.fewest, effort, lookout)
        self.effort += proof.made
        return proof

    def divided(self, picks: Picks, least: int) -> dict[Picks, int]:
        """The bounds of some picks with one more made, of the choice next to be made."""
        choice = self.problem.choices[len(picks)]
        bounds: dict[Picks, int] = {}
        for option in choice.options:
            more = (*picks, (choice.name, option.name))
            try:
                bounds[more] = max(least, self.tools.bound(common(self.problem, dict(more))))
            except Unsolvable:
                continue
        return bounds

    def cheapest(self) -> Picks:
        """The combination with the cheapest result; of equals the one tried first."""
        return min(self.best, key=lambda picks: self._price(self.best[picks]))

    def rough_price(self, picks: Picks) -> int:
        """What no order of a combination can cost less than, at a glance."""
        if picks not in self._rough:
            plain = picked(self.problem, picks)
            self._rough[picks] = least_price(plain, least_entries(plain), self.k)
        return self._rough[picks]

    def least_price(self, picks: Picks) -> int:
        """What no order of a combination can cost less than; `NEVER` if there is none."""
        if picks not in self._least:
            plain = picked(self.problem, picks)
            try:
                changeover = self.bounds[picks] if picks in self.bounds else self.tools.bound(plain)
                self._least[picks] = least_price(plain, changeover, self.k)
            except Unsolvable:
                self._least[picks] = NEVER
        return self._least[picks]

    def is_pointless(self, picks: Picks) -> bool:
        """Whether no order of a combination can be cheaper than the best found."""
        return self.least_price(picks) >= self.lowest

    def _price(self, result: Result) -> Price:
        """What results of different combinations are compared by."""
        totals = result.totals
        attended = totals.setup + totals.work
        return self.k * attended + totals.waiting, totals.elapsed, totals.setup

    def _forwarded(self, plain: Problem) -> Watch | None:
        """Tells the best of all picks so far, with a bound over all of them."""
        watch = self._watch
        if watch is None:
            return None
        work = sum(task.work for task in plain.tasks)

        def forward(glimpse: Glimpse) -> None:
            price = self.k * (glimpse.setup + work) + glimpse.waiting
            if self._told is None or price <= self._told_price:
                self._told, self._told_price = replace(glimpse, bound=self.least), price
            watch(self._told)

        return forward


def least_over_picks(problem: Problem, bound: Bounder) -> int:
    """Changeover that no order of any combination can go below.

    Raises
    ------
    Unsolvable
        no combination has a schedule; it says why the first one has none.
    """
    if count(problem) <= FEW:
        return min(bounds_of(problem, bound).values())
    return least_of_common(problem, bound)


def bounds_of(problem: Problem, bound: Bounder) -> dict[Picks, int]:
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


def least_of_common(problem: Problem, bound: Bounder) -> int:
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


def least_price(plain: Problem, changeover: int, k: int) -> int:
    """What no order can cost less than: the least set-up and the work, without any waiting."""
    walks = plain.walk * len({task.station for task in plain.tasks})
    setup = changeover + walks + sum(plain.trials.values())
    return k * (setup + sum(task.work for task in plain.tasks))


def least_entries(plain: Problem) -> int:
    """Changeover that no order can go below: each name and point demanded is set once, at least.

    Where a demand is of an axis that is not there, no order exists, and the demand does not count.
    """
    into = {(station.name, axis.name): axis for station in plain.stations for axis in station.axes}
    demanded = {
        (task.station, axis, value)
        for task in plain.tasks
        for axis, value in task.demands
        if (task.station, axis) in into and (isinstance(value, str) or value.low == value.high)
    }
    total = 0
    for station, name, value in demanded - set(plain.standing):
        axis = into[station, name]
        total += min((axis.change, *(cost for _, new, cost in axis.between if new == value)))
    return total
