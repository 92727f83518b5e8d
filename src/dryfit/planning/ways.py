"""Which way each mating group is made: weighed with all settings that it shares (DESIGN 5).

A way is priced by what no order of the whole piece saves: its work, the changes of settings that
the precedences force (the engine's bound), test cuts, and one walk to every station.  Measured
over all examples and test pieces (tests/benchmarks/test_ways_compared.py), that finds what a whole
search would take, in a hundredth of its time; a search as short as that is misled by chance.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace

from dryfit.operations import GROUPS
from dryfit.order import Unsolvable, changeover_bound
from dryfit.plan.operation import Alternative, Takes, WorkList, ways_of
from dryfit.planning.problem_of import problem_of
from dryfit.shop.shop import Shop

Again = Callable[[Mapping[str, str]], WorkList | None]
"""Makes the work list with a way, by mating group, in place of the rule's."""


def best_ways(work: WorkList, again: Again, shop: Shop) -> WorkList:
    """Return the work list with the ways that take the least, one group after the other.

    Only what the rule leaves open is weighed; of equals the rule's way stays.
    """
    for group in dict.fromkeys(row.group for row in work.alternatives if row.weigh):
        taken = ways_of(work.alternatives)
        best, least = work, _hands_on(work, shop)
        for row in work.alternatives:
            if row.group == group and row.weigh and least is not None:
                other = again({**taken, group: row.method})
                took = _hands_on(other, shop)
                if other is not None and took is not None and took < least:
                    best, least = other, took
        work = best
    return work


def priced(
    alternatives: tuple[Alternative, ...], again: Again, shop: Shop
) -> tuple[Alternative, ...]:
    """Return the ways of each mating group with what the whole piece takes with each.

    All other groups stay as they are taken.  It is worked out for what is printed only.
    """
    taken = ways_of(alternatives)
    several = {row.group for row in alternatives if not row.chosen and row.group in GROUPS}
    now = taken_by(again(taken), shop) if several else None

    def takes(row: Alternative) -> Takes | None:
        if row.chosen:
            return now
        return taken_by(again({**taken, row.group: row.method}), shop)

    return tuple(
        replace(row, takes=takes(row)) if row.group in several else row for row in alternatives
    )


def taken_by(work: WorkList | None, shop: Shop) -> Takes | None:
    """Return the set-up and the work that no order saves; None where there is no order."""
    if work is None:
        return None
    problem = problem_of(work, shop)
    try:
        changes = changeover_bound(problem)
    except Unsolvable:
        return None
    walks = problem.walk * len(problem.stations)
    return Takes(
        changes + sum(problem.trials.values()) + walks, sum(task.work for task in problem.tasks)
    )


def _hands_on(work: WorkList | None, shop: Shop) -> int | None:
    takes = taken_by(work, shop)
    return takes.hands_on if takes is not None else None
