"""Tiny order problems by lot, with everything that a problem can have."""

import random
from fractions import Fraction

from dryfit.order import (
    ROUND_THE_CLOCK,
    Axis,
    Calendar,
    Choice,
    Hold,
    Option,
    Precedence,
    Problem,
    Range,
    Resource,
    Station,
    Task,
    Value,
)

GRID = 5
"""Numbers of ranges are whole, from 0 up to this."""


def lot(seed: int) -> Problem:
    """Four to eight tasks at one to three stations; at most two axes of a station have ranges."""
    rng = random.Random(seed)  # noqa: S311 - lots, not secrets
    stations = tuple(_station(rng, s) for s in range(rng.choice((1, 1, 2, 3))))
    count = rng.choice((4, 5, 5, 6, 6, 7, 8))
    tasks = [_task(rng, f"task {n}", rng.choice(stations)) for n in range(count)]
    dense = 0.15 if count < 6 else 0.3 if count < 8 else 0.45
    precedences = tuple(
        Precedence(f"task {i}", f"task {j}", rng.choice((0, 0, 0, 300, 6000)), "by lot")
        for j in range(count)
        for i in range(j)
        if rng.random() < dense
    )
    rng.shuffle(tasks)
    return Problem(
        stations=stations,
        tasks=tuple(tasks),
        precedences=precedences,
        resources=(Resource("clamp", 3),),
        calendar=_calendar(rng),
        walk=rng.choice((0, 10)),
        trials={"first trial": 15, "second trial": 30},
        standing=tuple(
            (station.name, axis.name, _standing(rng, axis))
            for station in stations
            for axis in station.axes
            if rng.random() < 0.15
        ),
        choices=_choices(rng, [task.id for task in tasks]) if rng.random() < 0.4 else (),
    )


def _choices(rng: random.Random, tasks: list[str]) -> tuple[Choice, ...]:
    """One or two choices of two or three options; an option may be empty or share a task."""
    choices = []
    for name in ("first choice", "second choice")[: rng.randint(1, 2)]:
        own, tasks = tasks[:3], tasks[3:]
        options = tuple(
            Option(f"option {number}", tuple(sorted(rng.sample(own, rng.randint(0, len(own))))))
            for number in range(rng.randint(2, 3))
        )
        choices.append(Choice(name, options))
    return tuple(choices)


def _station(rng: random.Random, number: int) -> Station:
    """Up to three axes: a cutter, perhaps with a matrix; a height that it unsets; a fence."""
    between = {}
    if rng.random() < 0.4:
        for _ in range(rng.randint(1, 4)):
            old, new = rng.choice((None, *"abc")), rng.choice("abc")
            if old != new:
                between[old, new] = rng.randint(0, 30)
    rows = tuple((old, new, cost) for (old, new), cost in between.items())
    axes = (
        Axis("cutter", rng.randint(0, 30), rows),
        Axis("height", rng.randint(1, 30)),
        Axis("fence", rng.randint(1, 30)),
    )
    kept = rng.choice(((), (0,), (1,), (1,), (2,), (0, 1), (0, 1), (1, 2), (0, 1, 2)))
    return Station(f"station {number}", tuple(axes[i] for i in kept))


def _task(rng: random.Random, name: str, station: Station) -> Task:
    cutter = rng.choice("abc")
    demands: list[tuple[str, Value]] = []
    for axis in station.axes:
        if rng.random() < 0.8:
            of = cutter if station.axes[0].name == "cutter" and axis.name == "height" else ""
            demands.append((axis.name, cutter if axis.name == "cutter" else _number(rng, of)))
    hold = Hold("clamp", rng.randint(1, 3), rng.choice((0, 600, 9000)))
    return Task(
        id=name,
        station=station.name,
        demands=tuple(demands),
        work=rng.choice((0, 5, 50, 500, 1200)),
        after=rng.choice((0, 0, 3000)),
        splittable=rng.random() < 0.6,
        holds=(hold,) if rng.random() < 0.3 else (),
        trial=rng.choice((None, None, None, "first trial", "second trial")),
        together=f"{station.name} {rng.choice('gh')}" if rng.random() < 0.3 else None,
    )


def _number(rng: random.Random, of: str) -> Value:
    """A name, a point, a stretch, or anything from somewhere on."""
    low = rng.randint(0, GRID)
    points = (Range(low, low, of), Range(Fraction(low), low, of))
    stretches = (Range(low, min(low + 1, GRID), of), Range(low, rng.randint(low, GRID), of))
    return rng.choice(("off", *points, *stretches, *stretches, Range(low, None, of)))


def _standing(rng: random.Random, axis: Axis) -> Value:
    if axis.name == "cutter":
        return rng.choice("abc")
    number = rng.randint(0, GRID)
    return rng.choice(("off", Range(number, number), Range(number, number, rng.choice("abc"))))


def _calendar(rng: random.Random) -> Calendar:
    if rng.random() < 0.5:
        return ROUND_THE_CLOCK
    closes = 4800 + rng.choice((1200, 2400, 4800))
    return Calendar(
        4800, closes, frozenset(rng.sample(range(7), rng.randint(0, 4))), rng.randint(0, 6)
    )
