"""Local search for less set-up and waiting, by moving stretches of an order.

A move takes some tasks later, or earlier, within a stretch; tasks that must follow, or precede,
go along, so that no precedence is ever broken. An order that is a little worse is accepted while
the search is young (threshold accepting), with less and less patience; the best order seen is
kept. All is counted and drawn from a private seeded generator, so a run can be repeated.
"""

import random
from dataclasses import dataclass
from math import isqrt

from dryfit.order.decoder import Progress, advance, elapsed, opening
from dryfit.order.instance import Instance
from dryfit.order.sets import bits, members
from dryfit.order.watching import Lookout, Order, Score

LONGEST_BLOCK = 6
EARLIER_CURES, REUNIONS = 0.15, 0.6  # shares of the kinds of moves, added up

CURES_COUNT = 10  # tenths that all cures must end earlier to outweigh a tenth of waiting


@dataclass(slots=True)
class _Track:
    """The present order, its price, and the shop before every `spacing`-th task."""

    order: Order
    price: int
    spacing: int
    before: list[Progress]
    end: Progress


def score(instance: Instance, order: Order, worth: int) -> Score:
    """What an order costs: `worth` * set-up + waiting; ties by what stands in `Score`."""
    progress = opening(instance)
    advance(instance, progress, order)
    return _score(instance, order, progress, worth)


def offer(instance: Instance, order: Order, lookout: Lookout) -> None:
    """Keep an order if it is the best so far."""
    progress = opening(instance)
    advance(instance, progress, order)
    _offer(instance, order, progress, lookout)


def improved(
    instance: Instance, order: Order, worth: int, proposals: int, lookout: Lookout
) -> tuple[Order, int]:
    """An order of no higher score after a number of proposals, and the tasks decoded for it.

    worth      minutes of waiting that a minute of set-up is worth
    proposals  moves tried
    lookout    counts the tasks decoded, and keeps what is best by its own worth
    """
    rng = random.Random(len(order))  # noqa: S311 - a search, not a secret
    track = _tracked(instance, order, worth)
    best = _score(instance, order, track.end, worth)
    patience = worth * _typical_change(instance)
    placed = 0
    for number in range(proposals):
        moved = _proposal(instance, track.order, rng)
        if moved is None:
            continue
        first, candidate = moved
        if instance.groups and not keeps_visits(instance, candidate):
            continue
        left = (proposals - number) / proposals
        limit = track.price + int(patience * left * left * rng.random())
        at = first // track.spacing
        progress = track.before[at].copy()
        placed += len(order) - at * track.spacing
        lookout.count(len(order) - at * track.spacing)
        if not advance(instance, progress, candidate[at * track.spacing :], worth, limit):
            continue
        if _price(instance, progress, worth) > limit:
            continue
        _retrack(instance, track, candidate, progress, at, worth)
        if worth * progress.setup + progress.waiting <= best[0]:
            best = min(best, _score(instance, candidate, progress, worth))
            if best[-1] is candidate:
                _offer(instance, candidate, progress, lookout)
    return best[-1], placed


def keeps_visits(instance: Instance, order: Order) -> bool:
    """Whether every together group lies within one visit."""
    visit: dict[int, int] = {}
    number, here = 0, -1
    for task in order:
        if instance.station[task] != here:
            here = instance.station[task]
            number += 1
        visit[task] = number
    return all(len({visit[task] for task in members(g.tasks)}) == 1 for g in instance.groups)


def _price(instance: Instance, progress: Progress, worth: int) -> int:
    """What guides the search: set-up, waiting, and a little for cures that begin late.

    Waiting falls by whole days where a cure no longer outlasts a night, and takes several moves
    to get there; the mean end of all cures shows the way.
    """
    price = worth * progress.setup + progress.waiting
    if instance.cured:
        ends = sum(instance.hours.work_at(progress.ends[task]) for task in instance.cured)
        price += ends // (len(instance.cured) * CURES_COUNT)
    return price


def _score(instance: Instance, order: Order, progress: Progress, worth: int) -> Score:
    cost = worth * progress.setup + progress.waiting
    return cost, elapsed(instance, progress), progress.setup, progress.walks, order


def _offer(instance: Instance, order: Order, progress: Progress, lookout: Lookout) -> None:
    lookout.take(instance, _score(instance, order, progress, lookout.worth), progress.waiting)


def _tracked(instance: Instance, order: Order, worth: int) -> _Track:
    spacing = max(4, isqrt(len(order)))
    start = opening(instance)
    track = _Track(order, 0, spacing, [start] * (len(order) // spacing + 1), start)
    _retrack(instance, track, order, start, 0, worth)
    track.end = track.before[-1].copy()
    advance(instance, track.end, order[(len(track.before) - 1) * spacing :])
    track.price = _price(instance, track.end, worth)
    return track


def _retrack(
    instance: Instance, track: _Track, order: Order, end: Progress, at: int, worth: int
) -> None:
    """Take an order that is the present one up to the checkpoint `at`."""
    track.order, track.end = order, end
    track.price = _price(instance, end, worth)
    for number in range(at + 1, len(track.before)):
        progress = track.before[number - 1].copy()
        stretch = order[(number - 1) * track.spacing : number * track.spacing]
        advance(instance, progress, stretch)
        track.before[number] = progress


def _typical_change(instance: Instance) -> int:
    """The middle one of all costs of entering a value, and at least a walk."""
    entries = sorted(cost for table in instance.axes for cost in table.entry[1:])
    return max(instance.problem.walk, entries[len(entries) // 2] if entries else 0, 1)


def _proposal(instance: Instance, order: Order, rng: random.Random) -> tuple[int, Order] | None:
    """The order after a random move, and the first position that differs; None if none."""
    kind = rng.random()
    if kind < EARLIER_CURES:
        first, middle, last = _earlier_cure(instance, order, rng)
    elif kind < REUNIONS:
        first, middle, last = _reunion(instance, order, rng)
    else:
        first, middle, last = _neighbours(instance, order, rng)
    if not first < middle < last:
        return None
    stretch = order[first:last]
    if kind < EARLIER_CURES or rng.random() < 0.5:
        moved = _taken_earlier(instance, stretch, bits(order[middle:last]))
    else:
        moved = _taken_later(instance, stretch, bits(order[first:middle]))
    if moved == stretch:
        return None
    return first, order[:first] + moved + order[last:]


def _earlier_cure(instance: Instance, order: Order, rng: random.Random) -> tuple[int, int, int]:
    """A task that others must wait for after its end, and some of what stands before it."""
    if not instance.cured:
        return 0, 0, 0
    place = order.index(instance.cured[int(rng.random() * len(instance.cured))])
    return int(rng.random() * place), place, place + 1


def _neighbours(instance: Instance, order: Order, rng: random.Random) -> tuple[int, int, int]:
    """Two blocks side by side."""
    first = int(rng.random() * len(order))
    middle = _block_end(instance, order, first, rng)
    return first, middle, _block_end(instance, order, middle, rng)


def _block_end(instance: Instance, order: Order, first: int, rng: random.Random) -> int:
    """End of a block: of a few tasks, or of what is left of a visit."""
    if first >= len(order) or rng.random() < 0.5:
        return min(len(order), first + 1 + int(rng.random() * LONGEST_BLOCK))
    station = instance.station[order[first]]
    end = first + 1
    while end < len(order) and instance.station[order[end]] == station:
        end += 1
    return end


def _reunion(instance: Instance, order: Order, rng: random.Random) -> tuple[int, int, int]:
    """A block and all that stands between it and a task that would share its station or value."""
    place = int(rng.random() * len(order))
    task = order[place]
    sharing = (*instance.mates[task], instance.at_station[instance.station[task]])
    mates = sharing[int(rng.random() * len(sharing))]
    places = [at for at, other in enumerate(order) if mates >> other & 1]
    target = places[int(rng.random() * len(places))]
    if target < place:
        return target + 1, place, _block_end(instance, order, place, rng)
    return place, _block_end(instance, order, place, rng), target


def _taken_later(instance: Instance, stretch: Order, late: int) -> Order:
    """The stretch with the late tasks (bits) and all that depend on them at its end."""
    early_part, late_part = [], []
    for task in stretch:
        if late >> task & 1 or instance.predecessors[task] & late:
            late |= 1 << task
            late_part.append(task)
        else:
            early_part.append(task)
    return (*early_part, *late_part)


def _taken_earlier(instance: Instance, stretch: Order, early: int) -> Order:
    """The stretch with the early tasks (bits) and all that they depend on at its beginning."""
    needed = 0
    early_part, late_part = [], []
    for task in reversed(stretch):
        if early >> task & 1 or needed >> task & 1:
            needed |= instance.predecessors[task]
            early_part.append(task)
        else:
            late_part.append(task)
    return (*reversed(early_part), *reversed(late_part))
