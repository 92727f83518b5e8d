"""Local search for less set-up and waiting, by moving stretches of an order.

A move takes some tasks later, or earlier, within a stretch; tasks that must follow, or precede,
go along, so that no precedence is ever broken. An order that is a little worse is accepted while
the search is young (threshold accepting), with less and less patience; the best order seen is
kept. All is counted and drawn from a private seeded generator, so a run can be repeated.
"""

import random
from collections.abc import Sequence
from itertools import pairwise

from dryfit.order.decoder import Progress, advance, elapsed, opening
from dryfit.order.instance import Instance
from dryfit.order.sets import bits, members
from dryfit.order.shifting import company_of, shift, tears_a_visit
from dryfit.order.shuffling import typical_change
from dryfit.order.track import Terms, Track, finish_of, terms_of, untried
from dryfit.order.trying import Trial, take, tried
from dryfit.order.watching import Lookout, Order, Score

NO_LIMIT = 10**15
CURES_COUNT = 10  # tenths that all cures must end earlier to outweigh a tenth of waiting


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
    instance: Instance,
    order: Order,
    worth: int,
    proposals: int,
    lookout: Lookout,
    *,
    strict: bool = False,
) -> tuple[Order, int]:
    """An order of no higher score after a number of proposals, and the tasks decoded for it.

    worth      minutes of waiting that a minute of set-up is worth
    proposals  moves tried
    lookout    counts the tasks decoded, and keeps what is best by its own worth
    strict     accept nothing but less `worth` * set-up + waiting
    """
    rng = random.Random(len(order))  # noqa: S311 - a search, not a secret
    terms, company = terms_of(instance), company_of(instance)
    track = untried(terms, order)
    whole = tried(terms, track, 0, list(order), 0, NO_LIMIT)
    assert whole is not None, "nothing costs too much without a limit"
    take(terms, track, whole)
    price = _price(terms, track, worth, strict=strict)
    best = score(instance, order, worth)
    patience = worth * typical_change(instance)
    placed = 0
    for number in range(proposals):
        moved = shift(company, track, rng)
        if moved is None or (instance.groups and tears_a_visit(company, track, *moved)):
            continue
        left = (proposals - number) / proposals
        limit = price - 1 if strict else price + int(patience * left * left * rng.random())
        trial = tried(terms, track, *moved, worth, limit)
        played = len(moved[1]) if trial is None else len(trial.waited)
        placed += played
        lookout.count(played)
        if trial is None:
            continue
        candidate = _price(terms, trial, worth, strict=strict)
        if candidate > limit:
            continue
        take(terms, track, trial)
        price = candidate
        if _betters(terms, track, worth, best):
            best = _score_of(terms, track, worth)
            lookout.take(instance, _score_of(terms, track, lookout.worth), track.waiting)
    return best[-1], placed


def keeps_visits(instance: Instance, order: Sequence[int]) -> bool:
    """Whether every together group, as far as it is in the order, lies within one visit."""
    if not instance.groups:
        return True
    visit: dict[int, int] = {}
    number, here = 0, -1
    for task in order:
        if instance.station[task] != here:
            here = instance.station[task]
            number += 1
        visit[task] = number
    done = bits(order)
    return all(
        len({visit[task] for task in members(group.tasks & done)}) <= 1 for group in instance.groups
    )


def _betters(terms: Terms, track: Track, worth: int, best: Score) -> bool:
    """Whether a track scores below the best so far; dearer tests come last."""
    cost = worth * track.setup + track.waiting
    if cost != best[0]:
        return cost < best[0]
    now = finish_of(terms, track)
    if now != best[1]:
        return now < best[1]
    if track.setup != best[2]:
        return track.setup < best[2]
    return _score_of(terms, track, worth) < best


def _score_of(terms: Terms, track: Track, worth: int) -> Score:
    stations = [terms.instance.station[task] for task in track.order]
    walks = 1 + sum(left != right for left, right in pairwise(stations))
    cost = worth * track.setup + track.waiting
    return cost, finish_of(terms, track), track.setup, walks, tuple(track.order)


def _price(terms: Terms, played: Track | Trial, worth: int, *, strict: bool) -> int:
    """What guides the search: set-up, waiting, and unless strict a little for late cures.

    Waiting falls by whole days where a cure no longer outlasts a night, and takes several moves
    to get there; the mean end of all cures shows the way.
    """
    price = worth * played.setup + played.waiting
    cured = len(terms.instance.cured)
    return price if strict or not cured else price + played.cures // (cured * CURES_COUNT)


def _score(instance: Instance, order: Order, progress: Progress, worth: int) -> Score:
    cost = worth * progress.setup + progress.waiting
    return cost, elapsed(instance, progress), progress.setup, progress.walks, order


def _offer(instance: Instance, order: Order, progress: Progress, lookout: Lookout) -> None:
    lookout.take(instance, _score(instance, order, progress, lookout.worth), progress.waiting)
