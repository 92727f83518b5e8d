"""The chain of work, cures and nights that makes an order last, and what a move leaves of it.

The last task ends when it does because something before it was waited for, which ended when it did
for the like reason, and so on. In another order of the same tasks these precedences and the work
between them still count. So a move that leaves the chain as long as it is gains no time, which
shows without playing it.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import accumulate, pairwise

from dryfit.order.instance import Instance
from dryfit.order.resetting import Settings
from dryfit.order.track import Terms, Track, finish_of

Rank = tuple[int, int, int]
"""Cost, elapsed time and walks of an order; no walks are counted where they take no time."""


@dataclass(frozen=True, slots=True)
class Link:
    """A wait of the chain: for a cure, or only for the morning.

    before  the task whose end is waited for, -1 for the morning alone
    lag     clock time from its end
    task    the one that waits
    """

    before: int
    lag: int
    task: int


@dataclass(frozen=True, slots=True)
class Chain:
    """Why an order is done when it is done.

    links   in order of time
    last    the task that ends last, counting the unattended time after it
    after   that time
    busy    per place: set-up and work up to the end of its task
    members  all tasks named, `last` at the end
    walks   of the order
    ends    when `last` ends, where it was worked out: by what the members are reached after
    """

    links: tuple[Link, ...]
    last: int
    after: int
    busy: tuple[int, ...]
    members: tuple[int, ...]
    walks: int
    ends: dict[tuple[int, ...], int]


def chain_of(terms: Terms, track: Track) -> Chain:
    """The chain of an order; it begins after the last wait that it cannot tell the reason of."""
    last = _last(terms, track)
    links: list[Link] = []
    place = track.place[last]
    while True:
        while place >= 0 and not track.waited[place]:
            place -= 1
        link = _link(terms, track, place) if place >= 0 else None
        if link is None:
            break
        links.append(link)
        place = track.place[link.before] if link.before >= 0 else place - 1
    links.reverse()
    named = {task for link in links for task in (link.before, link.task)} - {-1, last}
    return Chain(
        links=tuple(links),
        last=last,
        after=terms.instance.problem.tasks[last].after,
        busy=tuple(track.works[at + 1] - idle for at, idle in enumerate(accumulate(track.waited))),
        members=(*sorted(named), last),
        walks=1 + _parted(terms.instance.station, track.order),
        ends={},
    )


def gains_nothing(
    terms: Terms, track: Track, chain: Chain, settings: Settings, worth: int, best: Rank
) -> bool:
    """Whether a move of which only the set-ups are known ranks no lower than the best so far."""
    busy = _busy(terms, track, chain, settings)
    end = chain.ends.get(busy)
    if end is None:
        end = chain.ends[busy] = _end(terms.instance, chain, busy)
    # What follows the last of the chain follows without a pause, at the least.
    waiting = end - busy[-1]
    cost = worth * settings.setup + waiting
    if cost != best[0]:
        return cost > best[0]
    finish = terms.instance.hours.clock_at_end(end) + chain.after
    if finish != best[1]:
        return finish > best[1]
    return chain.walks + _walks(terms, track, settings) >= best[2]


def _last(terms: Terms, track: Track) -> int:
    """The task after which everything is over."""
    hours, tasks = terms.instance.hours, terms.instance.problem.tasks
    finish = finish_of(terms, track)
    for task in terms.lasting:
        end = track.works[track.place[task] + 1]
        if terms.instance.works[task] and hours.clock_at_end(end) + tasks[task].after == finish:
            return task
    return track.order[-1]


def _link(terms: Terms, track: Track, place: int) -> Link | None:
    """The reason why the task at a place waits; None for what is held."""
    instance, hours = terms.instance, terms.instance.hours
    task = track.order[place]
    work = instance.works[task]
    begin = track.works[place + 1] - work
    whole = not instance.splittable[task]
    for before, lag in instance.lags[task]:
        over = hours.work_at(track.ends[before] + lag)
        if (hours.unbroken(over, work) if whole else over) == begin:
            return Link(before, lag, task)
    ready = begin - track.waited[place]
    return Link(-1, 0, task) if whole and hours.unbroken(ready, work) == begin else None


def _busy(terms: Terms, track: Track, chain: Chain, settings: Settings) -> tuple[int, ...]:
    """Set-up and work up to the end of each member of the chain, after a move."""
    first, changes = settings.first, settings.changes
    last = first + len(settings.stretch)
    passed = chain.busy[first - 1] if first else 0
    inside = passed
    within = {}
    durations, members = terms.instance.works, chain.members
    for task, setup in zip(settings.stretch, settings.setups, strict=True):
        inside += setup + durations[task]
        within[task] = inside
    later = inside - chain.busy[last - 1]
    found = []
    for task in members:
        place = track.place[task]
        if place < first:
            found.append(chain.busy[place])
        elif place < last:
            found.append(within[task])
        else:
            end = chain.busy[place] + later
            for at, change in changes:
                if at <= place:
                    end += change
            found.append(end)
    return tuple(found)


def _end(instance: Instance, chain: Chain, busy: tuple[int, ...]) -> int:
    """Work time at which the last of the chain ends at the earliest."""
    hours, durations = instance.hours, instance.works
    passed = dict(zip(chain.members, busy, strict=True))
    end, at = 0, -1
    for link in chain.links:
        work = durations[link.task]
        if link.before < 0:
            begin = _reached(passed, link.task, at, end) - work
        else:
            over = _reached(passed, link.before, at, end)
            ended = hours.clock_at_end if durations[link.before] else hours.clock_at_start
            begin = hours.work_at(ended(over) + link.lag)
        if not instance.splittable[link.task]:
            begin = hours.unbroken(begin, work)
        at, end = link.task, begin + work
    return _reached(passed, chain.last, at, end)


def _reached(passed: dict[int, int], task: int, at: int, end: int) -> int:
    """When a task ends at the earliest, if that `at` which another ends is done before it."""
    if task == at:
        return end
    if at >= 0 and passed[at] < passed[task]:
        return end + passed[task] - passed[at]
    return passed[task]


def _walks(terms: Terms, track: Track, settings: Settings) -> int:
    """Walks after a move."""
    first, stretch = settings.first, settings.stretch
    last = first + len(stretch)
    around = (max(0, first - 1), last + 1)
    before = track.order[around[0] : around[1]]
    after = [*track.order[around[0] : first], *stretch, *track.order[last : around[1]]]
    stations = terms.instance.station
    return _parted(stations, after) - _parted(stations, before)


def _parted(stations: Sequence[int], order: Sequence[int]) -> int:
    return sum(stations[left] != stations[right] for left, right in pairwise(order))
