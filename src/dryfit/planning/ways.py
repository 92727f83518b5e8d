"""Which way each mating group is made: weighed with all settings that it shares (DESIGN 5).

A way is priced by what no order of the whole piece saves: its work, the changes of settings that
the precedences force (the engine's bound), test cuts, and one walk to every station.  Measured
over all examples and test pieces (tests/benchmarks/test_ways_compared.py), that finds what a whole
search would take, in a hundredth of its time; a search as short as that is misled by chance.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace

from dryfit.order import Unsolvable, changeover_bound
from dryfit.plan.operation import Alternative, WorkList, ways_of
from dryfit.planning.problem_of import problem_of
from dryfit.shop.shop import Shop

Again = Callable[[Mapping[str, str]], WorkList | None]
"""Makes the work list with a way, by mating group, in place of the rule's."""


def best_ways(work: WorkList, again: Again, shop: Shop) -> WorkList:
    """Return the work list with the ways that take the least, each group weighed by itself.

    Of equals the rule's stay.  The rows of what was weighed say what each takes.
    """
    for group in dict.fromkeys(row.group for row in work.alternatives if row.weigh):
        work = _weighed(work, group, again, shop)
    return work


def least_hands_on(work: WorkList, shop: Shop) -> int | None:
    """Return the tenths of work and set-up that no order saves; None where there is no order."""
    problem = problem_of(work, shop)
    try:
        changes = changeover_bound(problem)
    except Unsolvable:
        return None
    walks = problem.walk * len(problem.stations)
    return changes + sum(problem.trials.values()) + walks + sum(t.work for t in problem.tasks)


def _weighed(work: WorkList, group: str, again: Again, shop: Shop) -> WorkList:
    least = least_hands_on(work, shop)
    if least is None:
        return work
    taken = ways_of(work.alternatives)
    found = {taken[group]: least}
    best = work
    for row in work.alternatives:
        if row.group == group and row.weigh:
            other = again({**taken, group: row.method})
            took = least_hands_on(other, shop) if other is not None else None
            if other is None or took is None:
                continue
            found[row.method] = took
            if took < least:
                best, least = other, took
    earlier = {(row.group, row.method): row.least for row in work.alternatives}
    rows = tuple(
        replace(
            row,
            least=found.get(row.method) if row.group == group else earlier.get(_key(row)),
        )
        for row in best.alternatives
    )
    return replace(best, alternatives=rows)


def _key(row: Alternative) -> tuple[str, str]:
    return row.group, row.method
