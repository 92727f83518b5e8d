"""An order left for strict gains until no block of it stands better at another place.

The blocks are those of `moving`: the steps that are printed, and the visits to a station. Every
place is tried, as there; what must go along goes along. Of all gains the largest is made, the order
is cut into blocks anew, and so on: what comes out is an order that no such move betters. Moves are
played as in the local search, only as far as they make a difference.
"""

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby

from dryfit.order.critical import Rank, chain_of, gains_nothing
from dryfit.order.decoder import decoded
from dryfit.order.improve import NO_LIMIT, keeps_visits, score
from dryfit.order.instance import Instance, compiled
from dryfit.order.picks import picked, picks_of
from dryfit.order.problem import Problem
from dryfit.order.resetting import reset
from dryfit.order.result import Schedule, Totals
from dryfit.order.sets import bits
from dryfit.order.track import Terms, Track, terms_of, untried
from dryfit.order.trying import played, take, tried

MOST_GAINS = 200
"""Far more than were ever made of one order."""

Cut = Callable[[Schedule], Sequence[int]]
"""How many tasks each block of a schedule has, in order."""
Block = tuple[int, ...]
Change = tuple[int, list[int]]
"""The first place that differs, and the tasks from there on."""


@dataclass(frozen=True, slots=True)
class _Blocks:
    """Blocks in order: their tasks, those as bits, and what must be done before (bits)."""

    tasks: tuple[Block, ...]
    own: tuple[int, ...]
    needs: tuple[int, ...]
    first: tuple[int, ...]


def settled(
    problem: Problem, order: Sequence[str], worth: int, cut: Cut
) -> tuple[Schedule, Totals] | None:
    """The order after all strict gains of single blocks and visits; None if there is none.

    Gains are of `worth` * set-up + waiting, then of elapsed time, then of walks.

    order  one that `evaluate` would take
    cut    blocks of a schedule; asked again after every gain
    """
    if problem.choices:
        problem = picked(problem, picks_of(problem, order))
    instance = compiled(problem)
    index = {task.id: i for i, task in enumerate(problem.tasks)}
    terms = terms_of(instance)
    track = untried(terms, tuple(index[name] for name in order))
    _make(terms, track, (0, list(track.order)))
    for gains in range(MOST_GAINS):
        schedule, totals = decoded(instance, tuple(track.order))
        change = _best(terms, track, worth, cut(schedule))
        if change is None:
            return (schedule, totals) if gains else None
        _make(terms, track, change)
    return decoded(instance, tuple(track.order))


def _make(terms: Terms, track: Track, change: Change) -> None:
    trial = tried(terms, track, *change, 0, NO_LIMIT)
    assert trial is not None, "nothing costs too much without a limit"
    take(terms, track, trial)


def _best(terms: Terms, track: Track, worth: int, lengths: Iterable[int]) -> Change | None:
    """The change with the largest gain, of several the first; None if nothing gains."""
    instance = terms.instance
    best: Change | None = None
    rank = _rank(instance, track.order, worth)
    chain = chain_of(terms, track)
    for change in _changes(instance, track, lengths):
        first, stretch = change
        settings = reset(terms, track, first, stretch)
        if gains_nothing(terms, track, chain, settings, worth, rank):
            continue
        if played(terms, track, settings, worth, rank[0]) is None:
            continue
        order = [*track.order[:first], *stretch, *track.order[first + len(stretch) :]]
        found = _rank(instance, order, worth)
        if found < rank and (not instance.groups or keeps_visits(instance, tuple(order))):
            best, rank = change, found
    return best


def _rank(instance: Instance, order: Sequence[int], worth: int) -> Rank:
    cost, elapsed, _, walks, _ = score(instance, tuple(order), worth)
    return cost, elapsed, walks if instance.problem.walk else 0


def _changes(instance: Instance, track: Track, lengths: Iterable[int]) -> Iterator[Change]:
    """Every block, and every visit, at every other place."""
    blocks = _blocks(instance, _split(track.order, lengths))
    visits = _split(
        track.order,
        (len(list(visit)) for _, visit in groupby(track.order, instance.station.__getitem__)),
    )
    for at in range(len(blocks.tasks)):
        yield from _earlier(blocks, at)
        yield from _later(blocks, at)
    long = _blocks(instance, visits)
    known = set(blocks.tasks)
    for at, visit in enumerate(visits):
        if visit not in known:
            yield from _earlier(long, at)
            yield from _later(long, at)


def _split(order: Sequence[int], lengths: Iterable[int]) -> tuple[Block, ...]:
    rest = iter(order)
    return tuple(tuple(next(rest) for _ in range(length)) for length in lengths)


def _blocks(instance: Instance, rows: tuple[Block, ...]) -> _Blocks:
    needs, first, count = [], [], 0
    for row in rows:
        needed = 0
        for task in row:
            needed |= instance.predecessors[task]
        needs.append(needed)
        first.append(count)
        count += len(row)
    return _Blocks(rows, tuple(map(bits, rows)), tuple(needs), tuple(first))


def _earlier(blocks: _Blocks, at: int) -> Iterator[Change]:
    """A block before each earlier one, with those between that it cannot do without."""
    needs, along, between = blocks.needs[at], list(blocks.tasks[at]), list[int]()
    for before in range(at - 1, -1, -1):
        if needs & blocks.own[before]:
            needs |= blocks.needs[before]
            along = [*blocks.tasks[before], *along]
        else:
            between = [*blocks.tasks[before], *between]
            yield blocks.first[before], along + between


def _later(blocks: _Blocks, at: int) -> Iterator[Change]:
    """A block after each later one, with those between that cannot do without it."""
    own, along, between = blocks.own[at], list(blocks.tasks[at]), list[int]()
    for behind in range(at + 1, len(blocks.tasks)):
        if blocks.needs[behind] & own:
            own |= blocks.own[behind]
            along += blocks.tasks[behind]
        else:
            between += blocks.tasks[behind]
            if behind > at + 1:  # to pass one block is for that one to be done earlier
                yield blocks.first[at], between + along
