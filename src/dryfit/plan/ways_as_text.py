"""The ways of cutting that were weighed against one another, for the terminal and the booklet."""

from __future__ import annotations

from collections.abc import Iterable

from dryfit.plan.operation import Alternative, Takes
from dryfit.plan.totals_text import exactly


def weighed_ways(alternatives: Iterable[Alternative]) -> tuple[str, ...]:
    """Return a sentence for each mating group that could be made in another way.

    ``laps and housings: dado set; single blade in passes takes 57 min more work and 18 min less
    setting up: 39 min more in all``.  Ways whose time was not worked out are told with the rule
    that chose.
    """
    groups: dict[tuple[object, ...], list[Alternative]] = {}
    for row in alternatives:
        groups.setdefault((row.group, row.operations), []).append(row)
    return tuple(_sentence(rows) for rows in groups.values() if len(rows) > 1)


def _sentence(rows: list[Alternative]) -> str:
    taken = next(row for row in rows if row.chosen)
    others = [row for row in rows if not row.chosen]
    start = f"{taken.group}: {taken.method}"
    known = [(row.method, row.takes) for row in others if row.takes is not None]
    if taken.takes is None or len(known) < len(others):
        return f"{start}, not {' or '.join(row.method for row in others)} ({taken.reason})"
    now = taken.takes
    return f"{start}; " + "; ".join(f"{method} {_against(takes, now)}" for method, takes in known)


def _against(other: Takes, now: Takes) -> str:
    """Return how much longer another way takes: work, setting up, and both together."""
    more, setup = other.hands_on - now.hands_on, other.setup - now.setup
    work = more - setup
    if not work or not setup:
        kind = "work" if work else "setting up"
        return f"takes {_minutes(more)} {kind}" if more else "takes as long"
    parts = f"takes {_minutes(work)} work and {_minutes(setup)} setting up"
    return f"{parts}: {_minutes(more) if more else 'as long'} in all"


def _minutes(tenths: int) -> str:
    return f"{exactly(abs(tenths))} {'more' if tenths > 0 else 'less'}"
