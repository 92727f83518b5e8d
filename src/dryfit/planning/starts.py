"""When a step starts: setting up counts, idle hours before it do not."""

from __future__ import annotations

from dryfit.order import Entry
from dryfit.order.hours import hours_of
from dryfit.planning.problem_of import calendar_of
from dryfit.planning.waits import Waiting
from dryfit.shop.shop import Shop


def start_of(entry: Entry, waiting: Waiting, shop: Shop) -> int:
    """Return the clock tenths at which the maker begins: with the set-up, if no wait follows it.

    Never before a cure that the operation waits for is over.
    """
    if entry.waiting:
        return entry.start
    hours = hours_of(calendar_of(shop))
    ready = hours.clock_at_start(hours.work_at(entry.ready))
    released = max(
        (
            waiting.end_of[rule.before] + rule.lag
            for rule in waiting.work.rules
            if rule.after == entry.task
        ),
        default=0,
    )
    return min(entry.start, max(ready, released))
