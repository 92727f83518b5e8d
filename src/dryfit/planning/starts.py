"""When a step starts: setting up counts, idle hours before it do not."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from dryfit.order import Entry
from dryfit.order.hours import hours_of
from dryfit.plan.operation import WorkList
from dryfit.planning.problem_of import calendar_of
from dryfit.shop.shop import Shop


def released_at(entries: Iterable[Entry], work: WorkList) -> dict[str, int]:
    """Return, by operation, the clock tenths at which the last cure that it waits for is over."""
    row = tuple(entries)
    end_of = {entry.task: entry.end for entry in row}
    released = {entry.task: 0 for entry in row}
    for rule in work.rules:
        if rule.lag > 0:
            released[rule.after] = max(released[rule.after], end_of[rule.before] + rule.lag)
    return released


def start_of(entry: Entry, released: Mapping[str, int], shop: Shop) -> int:
    """Return the clock tenths at which the maker begins: with the set-up, if no wait follows it.

    Where one does, with the test cuts, which wait for clean air as the work does.  Never before a
    cure that the operation waits for is over, and never at night.
    """
    hours = hours_of(calendar_of(shop))
    free = max(hours.work_at(entry.ready), hours.work_at(released[entry.task]))
    if entry.waiting:
        free = max(free, hours.work_at(entry.start) - entry.trial)
    return min(entry.start, hours.clock_at_start(free))
