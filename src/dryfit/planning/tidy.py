"""The order made natural where it costs nothing: parts as in the notes, equal frames by number.

The engine knows nothing of names; where two orders are equally good it may hand back either.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from dryfit.order import Problem, Schedule, Totals, evaluate
from dryfit.order.problem import Unsolvable
from dryfit.placing.model import Model


def tidied(
    schedule: Schedule, totals: Totals, problem: Problem, model: Model, worth: int
) -> tuple[Schedule, Totals]:
    """Return schedule and totals of the most natural order that is no worse than this one.

    `worth` is the engine's k: tenths of waiting that a tenth of set-up is worth.
    """
    best = tuple(entry.task for entry in schedule.entries)
    for first, second in _twins(model):
        swapped = _swapped(best, first, second)
        if swapped != best:
            best, schedule, totals = _better(problem, worth, (best, schedule, totals), swapped)
    natural = _natural(schedule, problem)
    _, schedule, totals = _better(problem, worth, (best, schedule, totals), natural)
    return schedule, totals


Found = tuple[tuple[str, ...], Schedule, Totals]


def _better(problem: Problem, worth: int, known: Found, order: tuple[str, ...]) -> Found:
    try:
        schedule, totals = evaluate(problem, order)
    except Unsolvable:
        return known
    return (order, schedule, totals) if _rank(totals, worth) <= _rank(known[2], worth) else known


def _rank(totals: Totals, worth: int) -> tuple[int, int, int]:
    return worth * totals.setup + totals.waiting, totals.elapsed, totals.walk


def _twins(model: Model) -> Iterator[tuple[str, str]]:
    """Yield pairs of glue-ups of one stage, lower number first."""
    for index, first in enumerate(model.assemblies):
        for second in model.assemblies[index + 1 :]:
            if first.stage == second.stage:
                yield first.name, second.name


def _swapped(order: Sequence[str], first: str, second: str) -> tuple[str, ...]:
    """Return the order with the two glue-ups' names exchanged, if the second is glued first."""
    glued = [f"{first} / glue up", f"{second} / glue up"]
    if order.index(glued[0]) < order.index(glued[1]):
        return tuple(order)
    names = {first: second, second: first}
    rows = (name.partition(" / ") for name in order)
    return tuple(f"{names.get(subject, subject)}{slash}{rest}" for subject, slash, rest in rows)


def _natural(schedule: Schedule, problem: Problem) -> tuple[str, ...]:
    """Return the order with the tasks of each run sorted as declared, precedences kept."""
    place = {task.id: index for index, task in enumerate(problem.tasks)}
    before: dict[str, set[str]] = {task.id: set() for task in problem.tasks}
    for edge in problem.precedences:
        before[edge.after].add(edge.before)
    order: list[str] = []
    run: list[str] = []
    station = ""
    for entry in schedule.entries:
        if run and (entry.changed or entry.waiting or entry.station != station):
            order += _sorted(run, place, before)
            run = []
        station = entry.station
        run.append(entry.task)
    return (*order, *_sorted(run, place, before))


def _sorted(run: list[str], place: dict[str, int], before: dict[str, set[str]]) -> list[str]:
    left, done = sorted(run, key=place.__getitem__), list[str]()
    while left:
        ready = next(name for name in left if before[name].isdisjoint(left))
        left.remove(ready)
        done.append(ready)
    return done
