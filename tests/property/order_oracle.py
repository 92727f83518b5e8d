"""The best there is, by trying everything: no rule of the engine is used, and none of its code.

Changeover: every task is tried next, from every state, at every whole number of its ranges. Time:
the same once more, task by task with its clock, leaving out only what already costs more than the
best so far, the changeover that is still needed by the first search included.
"""

from bisect import bisect_right
from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import cache
from itertools import product

from tests.property.order_lots import GRID

from dryfit.order import Axis, Calendar, Problem, Range, Task, Value

NEVER = 10**9
DAY = 14_400
DAYS = 400

Standing = tuple[tuple[tuple[str, str], Value], ...]
Prices = dict[tuple[Value | None, Value], int]


def alternatives(problem: Problem) -> Iterator[Problem]:
    """What is left of a problem, by every way to pick one option of each choice."""
    optional = {task for choice in problem.choices for o in choice.options for task in o.tasks}
    for options in product(*(choice.options for choice in problem.choices)):
        gone = optional - {task for option in options for task in option.tasks}
        yield replace(
            problem,
            tasks=tuple(task for task in problem.tasks if task.id not in gone),
            precedences=tuple(
                rule for rule in problem.precedences if not {rule.before, rule.after} & gone
            ),
            choices=(),
        )


@dataclass(frozen=True)
class Shop:
    """The shop between two tasks. Times are in tenths that it was open; ends by the clock."""

    done: frozenset[str]
    standing: Standing
    here: str
    time: int
    tried: frozenset[str]
    ends: tuple[tuple[str, int], ...]
    held: tuple[tuple[str, int, int], ...]


class Oracle:
    """Searches one problem without choices."""

    def __init__(self, problem: Problem) -> None:
        self.problem = problem
        self.before = {
            task.id: {rule.before for rule in problem.precedences if rule.after == task.id}
            for task in problem.tasks
        }
        self.prices = {
            (station.name, axis.name): prices(problem, station.name, axis)
            for station in problem.stations
            for axis in station.axes
        }
        self.rules = sorted(problem.precedences, key=lambda rule: rule.lag)
        self.days = open_hours(problem.calendar)
        self.opened = [0]
        for opens, closes in self.days:
            self.opened.append(self.opened[-1] + closes - opens)
        self.rest = cache(self._rest)
        self.reached: dict[Shop, int] = {}
        self.standing = tuple(
            sorted((((s, a), value) for s, a, value in problem.standing), key=repr)
        )

    def fewest(self) -> int:
        """Least changeover of any valid order; NEVER if there is none."""
        return self.rest(frozenset(), self.standing, "")

    def cheapest(self, k: int, below: int) -> int:
        """Least k * (set-up + work) + waiting of any valid order, if it is less than `below`."""
        start = Shop(frozenset(), self.standing, "", 0, frozenset(), (), ())
        self.reached.clear()
        return self._cheapest(k, below, start, 0)

    def _rest(self, done: frozenset[str], standing: Standing, here: str) -> int:
        if len(done) == len(self.problem.tasks):
            return 0
        best = NEVER
        for task in self._next(done, here):
            for after, cost in self._settings(task, standing):
                if cost < best:
                    best = min(best, cost + self.rest(done | {task.id}, after, task.station))
        return best

    def _next(self, done: frozenset[str], here: str) -> Iterator[Task]:
        """Tasks that may be done now: after what they wait for, interrupting no visit."""
        tasks = self.problem.tasks
        begun = {task.together for task in tasks if task.id in done} - {None}
        bound = {t.station for t in tasks if t.id not in done and t.together in begun}
        for task in tasks:
            interrupts = bound and not bound == {task.station} == {here}
            if task.id not in done and self.before[task.id] <= done and not interrupts:
                yield task

    @cache  # noqa: B019 - an oracle lives as long as its test
    def _settings(self, task: Task, standing: Standing) -> tuple[tuple[Standing, int], ...]:
        """What may stand when a task is done, and what that costs: all ways to meet its demands."""
        ways = [(dict(standing), 0)]
        for axis, demanded in task.demands:
            key = task.station, axis
            ways = [
                ({**after, key: value}, cost + self.prices[key][after.get(key), value])
                for after, cost in ways
                for value in possible(demanded)
            ]
        return tuple((tuple(sorted(after.items(), key=repr)), cost) for after, cost in ways)

    def _cheapest(self, k: int, below: int, shop: Shop, spent: int) -> int:
        if len(shop.done) == len(self.problem.tasks):
            return min(below, spent)
        if self.reached.get(shop, NEVER) <= spent:
            return below
        self.reached[shop] = spent
        for task in self._next(shop.done, shop.here):
            for after, cost in self._settings(task, shop.standing):
                done = shop.done | {task.id}
                if spent + k * (cost + self.rest(done, after, task.station)) >= below:
                    continue
                later, paid = self._done(task, after, cost, shop, k)
                if spent + paid + k * self.rest(done, after, task.station) < below:
                    below = self._cheapest(k, below, later, spent + paid)
        return below

    def _done(
        self, task: Task, standing: Standing, cost: int, shop: Shop, k: int
    ) -> tuple[Shop, int]:
        """The shop after a task, and what the task costs."""
        trial = 0
        if task.trial is not None and task.trial not in shop.tried:
            trial = self.problem.trials[task.trial]
        setup = cost + trial + (self.problem.walk if task.station != shop.here else 0)
        ready = shop.time + setup
        begin = self._begin(task, ready, trial, shop)
        end = self._clock(begin + task.work, closing=task.work > 0)
        done = shop.done | {task.id}
        now = self._clock(begin + task.work, closing=False)
        waits = {rule.before: rule.lag for rule in self.rules if rule.after not in done}
        later = Shop(
            done=done,
            standing=standing,
            here=task.station,
            time=begin + task.work,
            tried=shop.tried | ({task.trial} if task.trial else set()),
            ends=tuple(
                (name, time)
                for name, time in (*shop.ends, (task.id, end))
                if time + waits.get(name, 0) > now
            ),
            held=tuple(
                sorted(
                    hold
                    for hold in (
                        *shop.held,
                        *((h.resource, h.count, end + h.lag) for h in task.holds),
                    )
                    if hold[-1] > now
                )
            ),
        )
        return later, k * (setup + task.work) + begin - ready

    def _begin(self, task: Task, ready: int, trial: int, shop: Shop) -> int:
        """Earliest open time at which a task can begin."""
        begin, ends = ready, dict(shop.ends)
        for rule in self.rules:
            if rule.after == task.id and rule.before in ends:
                begin = max(begin, self._open(ends[rule.before] + rule.lag))
        moments = {begin}
        if task.holds:
            moments |= {self._open(until) + trial for _, _, until in shop.held}
        first = min(m for m in moments if m >= begin and self._is_free(task, m - trial, shop))
        return first if task.splittable or not task.work else self._unbroken(task.work, first)

    def _is_free(self, task: Task, time: int, shop: Shop) -> bool:
        """Whether what a task holds can be taken at an open time."""
        taken = self._clock(time, closing=False)
        for hold in task.holds:
            held = sum(n for name, n, until in shop.held if name == hold.resource and until > taken)
            capacity = next(r.capacity for r in self.problem.resources if r.name == hold.resource)
            if held + hold.count > capacity:
                return False
        return True

    def _unbroken(self, work: int, begin: int) -> int:
        """The first open time from `begin` on at which work is not cut by a closing."""
        for morning in (begin, *self.opened[bisect_right(self.opened, begin) :]):
            closed = self._clock(morning + work, closing=True) - self._clock(morning, closing=False)
            if closed == work:
                return morning
        raise AssertionError

    def _open(self, clock: int) -> int:
        """Open time that has passed at a clock time."""
        place = bisect_right(self.days, (clock, NEVER)) - 1
        if place < 0:
            return 0
        opens, closes = self.days[place]
        return self.opened[place] + min(clock, closes) - opens

    def _clock(self, time: int, *, closing: bool) -> int:
        """Clock time of an open time; between two days the closing of one or the next opening."""
        place = max(bisect_right(self.opened, time - closing) - 1, 0)
        return self.days[place][0] + time - self.opened[place]


def open_hours(calendar: Calendar) -> list[tuple[int, int]]:
    """Clock times between which the shop is open, from the opening of day 1."""
    if calendar.closes - calendar.opens == DAY and not calendar.days_off:
        return [(0, DAY * DAYS)]
    weekday = calendar.first_weekday
    while weekday in calendar.days_off:
        weekday = (weekday + 1) % 7
    length = calendar.closes - calendar.opens
    days = (day for day in range(DAYS) if (weekday + day) % 7 not in calendar.days_off)
    return [(day * DAY, day * DAY + length) for day in days]


def possible(demanded: Value) -> tuple[Value, ...]:
    """All values that meet a demand, of numbers the whole ones."""
    if isinstance(demanded, str):
        return (demanded,)
    high = GRID if demanded.high is None else int(demanded.high)
    return tuple(Range(n, n, demanded.of) for n in range(int(demanded.low), high + 1))


def prices(problem: Problem, station: str, axis: Axis) -> Prices:
    """Cheapest way between any two values of an axis, by way of any names, by trying all ways."""
    exact = {(old, new): cost for old, new, cost in axis.between}
    values = [value for s, a, value in problem.standing if (s, a) == (station, axis.name)]
    for task in problem.tasks:
        for name, demanded in task.demands:
            if (task.station, name) == (station, axis.name):
                values += possible(demanded)
    values += [value for pair in exact for value in pair if value is not None]
    names = frozenset(value for value in values if isinstance(value, str))

    def way(now: str | None, new: str, left: frozenset[str]) -> int:
        found = [exact.get((now, new), axis.change)]
        found += [exact.get((now, via), axis.change) + way(via, new, left - {via}) for via in left]
        return min(found)

    table: Prices = {}
    for new in values:
        for old in (None, *values):
            table[old, new] = axis.change
            if isinstance(new, str) and not isinstance(old, Range):
                table[old, new] = way(old, new, names - {old, new})
            if old == new:
                table[old, new] = 0
    return table
