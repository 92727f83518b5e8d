"""Local search for little set-up alone, however long it takes.

The moves are those of the search for set-up and waiting, but times are not played, so that a move
costs no more than the stretch it permutes. A little more set-up is accepted while the search is
young (threshold accepting); the best order seen is kept.
"""

import random

from dryfit.order.instance import Instance
from dryfit.order.resetting import reset, take_settings
from dryfit.order.shifting import company_of, shift, tears_a_visit
from dryfit.order.track import terms_of, untried
from dryfit.order.watching import Lookout, Order

LOTS = 1000
"""What keeps the seeds of different lots apart."""


def shuffled(
    instance: Instance, order: Order, proposals: int, lookout: Lookout, lot: int = 0
) -> tuple[Order, int]:
    """An order of no more set-up after a number of proposals, and the tasks played for it.

    lot  number of the run: each draws other moves
    """
    rng = random.Random(len(order) + LOTS * lot)  # noqa: S311 - a search, not a secret
    terms, company = terms_of(instance), company_of(instance)
    track = untried(terms, order)
    take_settings(terms, track, reset(terms, track, 0, list(order)))
    best, kept = track.setup, order
    patience = typical_change(instance)
    played = 0
    for number in range(proposals):
        moved = shift(company, track, rng)
        if moved is None or (instance.groups and tears_a_visit(company, track, *moved)):
            continue
        settings = reset(terms, track, *moved)
        played += len(moved[1])
        lookout.count(len(moved[1]))
        left = (proposals - number) / proposals
        if settings.setup > track.setup + int(patience * left * left * rng.random()):
            continue
        take_settings(terms, track, settings)
        if track.setup < best:
            best, kept = track.setup, tuple(track.order)
    return kept, played


def typical_change(instance: Instance) -> int:
    """The middle one of all costs of entering a value, and at least a walk."""
    entries = sorted(cost for table in instance.axes for cost in table.entry[1:])
    return max(instance.problem.walk, entries[len(entries) // 2] if entries else 0, 1)
