"""Small problems for the tests of the build order."""

import random
from dataclasses import replace

from dryfit.order import (
    ROUND_THE_CLOCK,
    Axis,
    Calendar,
    Hold,
    Precedence,
    Problem,
    Resource,
    Station,
    Task,
)

EIGHT_TO_FOUR = Calendar(opens=4800, closes=9600, days_off=frozenset({5, 6}))


def bench_problem(
    *tasks: Task,
    precedences: tuple[Precedence, ...] = (),
    calendar: Calendar = EIGHT_TO_FOUR,
    walk: int = 0,
    clamps: int = 6,
) -> Problem:
    """Tasks at a saw (blade 30, height 10), a bench and a glue bench without axes."""
    return Problem(
        stations=(
            Station("saw", (Axis("blade", 30), Axis("height", 10))),
            Station("bench"),
            Station("glue bench"),
        ),
        tasks=tasks,
        precedences=precedences,
        resources=(Resource("clamp", clamps),),
        calendar=calendar,
        walk=walk,
        trials={"test laps": 15},
    )


def seeded(seed: int) -> random.Random:
    """A private generator of lots."""
    return random.Random(seed)  # noqa: S311 - lots, not secrets


def random_problem(seed: int, *, groups: bool = True) -> Problem:
    """Two to seven tasks with everything that a problem can have."""
    rng = seeded(seed)
    stations = tuple(
        Station(f"station {s}", tuple(_axis(rng, a) for a in range(rng.randint(0, 3))))
        for s in range(rng.randint(1, 3))
    )
    count = rng.randint(2, 7)
    tasks = [_task(rng, number, rng.choice(stations), groups=groups) for number in range(count)]
    precedences = tuple(
        Precedence(f"task {i}", f"task {j}", rng.choice((0, 0, 300, 6000, 20000)), "by lot")
        for i in range(count)
        for j in range(i + 1, count)
        if rng.random() < 0.25
    )
    rng.shuffle(tasks)
    opens = 4800
    calendar = Calendar(
        opens,
        opens + rng.choice((1200, 2400, 4800)),
        frozenset(rng.sample(range(7), rng.randint(0, 4))),
        rng.randint(0, 6),
    )
    problem = Problem(
        stations=stations,
        tasks=tuple(tasks),
        precedences=precedences,
        resources=(Resource("clamp", 3),),
        calendar=rng.choice((calendar, ROUND_THE_CLOCK)),
        walk=rng.choice((0, 10)),
        trials={"first trial": 15, "second trial": 30},
    )
    return with_longer_clamps(problem, seeded(10**8 + seed))


def with_longer_clamps(problem: Problem, rng: random.Random) -> Problem:
    """The problem with two kinds of longer clamps, single days off, and tasks for two."""
    kinds = (
        Resource("clamp", 3, rng.choice(((), ("bar",), ("bar", "long bar"), ("long bar",)))),
        Resource("bar", rng.randint(0, 2), rng.choice(((), ("long bar",)))),
        Resource("long bar", rng.randint(1, 2)),
    )
    tasks = tuple(
        replace(task, holds=_holds(rng), workers=rng.choice((1, 1, 2)))
        if task.holds and rng.random() < 0.7
        else task
        for task in problem.tasks
    )
    closed = frozenset(rng.sample(range(1, 9), rng.choice((0, 0, 1, 3))))
    calendar = replace(problem.calendar, closed=closed)
    return replace(problem, tasks=tasks, resources=kinds, calendar=calendar, workers=2)


def _holds(rng: random.Random) -> tuple[Hold, ...]:
    """One or two holds that the kinds of `with_longer_clamps` can always serve."""
    few = Hold("clamp", rng.randint(1, 3), rng.choice((0, 600, 9000)))
    long = Hold("long bar", 1, rng.choice((0, 600, 9000)))
    return rng.choice(((few,), (few, long), (long,)))


def _axis(rng: random.Random, number: int) -> Axis:
    between: dict[tuple[str | None, str], int] = {}
    if rng.random() < 0.3:
        for _ in range(rng.randint(1, 5)):
            old, new = rng.choice((None, *"abcd")), rng.choice("abcd")
            if old != new:
                between[old, new] = rng.randint(0, 30)
    overrides = tuple((old, new, cost) for (old, new), cost in between.items())
    return Axis(f"axis {number}", rng.randint(0, 30), overrides)


def _task(rng: random.Random, number: int, station: Station, *, groups: bool) -> Task:
    hold = Hold("clamp", rng.randint(1, 3), rng.choice((0, 600, 9000)))
    return Task(
        id=f"task {number}",
        station=station.name,
        demands=tuple(
            (axis.name, rng.choice("abc")) for axis in station.axes if rng.random() < 0.7
        ),
        work=rng.choice((0, 5, 50, 500, 1200)),
        after=rng.choice((0, 0, 3000)),
        splittable=rng.random() < 0.6,
        holds=(hold,) if rng.random() < 0.3 else (),
        trial=rng.choice((None, None, "first trial", "second trial")),
        together=f"{station.name} {rng.choice('gh')}" if groups and rng.random() < 0.35 else None,
    )
