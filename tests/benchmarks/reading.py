"""Readers of the instances in `instances/`; README.md there says what they hold."""

import json
from itertools import pairwise
from pathlib import Path

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

INSTANCES = Path(__file__).parent / "instances"
ORDERINGS = Path(__file__).parents[1] / "published" / "sop"


def read_shop(
    name: str, calendar: Calendar = ROUND_THE_CLOCK, walk: int = 0, folder: Path = INSTANCES
) -> Problem:
    """A generated workshop; task ids are the operations' numbers."""
    document = json.loads((folder / f"{name}.json").read_text(encoding="utf-8"))
    operations = document["operations"]
    return Problem(
        stations=tuple(
            Station(station, tuple(Axis(axis, tenths(cost)) for axis, cost in axes.items()))
            for station, axes in document["minutes_per_change"].items()
        ),
        tasks=tuple(
            Task(
                id=str(operation["id"]),
                station=operation["station"],
                demands=tuple(operation["settings"].items()),
                work=tenths(operation["work"]),
                after=tenths(operation["unattended_after"]),
                holds=tuple(
                    Hold(hold["clamp"], hold["count"], tenths(hold["for_minutes_after_work"]))
                    for hold in operation["holds"]
                ),
            )
            for operation in operations
        ),
        precedences=tuple(
            Precedence(
                str(before),
                str(operation["id"]),
                tenths(operations[before]["unattended_after"]),
                "as the instance says",
            )
            for operation in operations
            for before in operation["after"]
        ),
        resources=tuple(Resource(name, count) for name, count in document["clamps"].items()),
        calendar=calendar,
        walk=walk,
    )


def part_by_part(name: str, folder: Path = INSTANCES) -> tuple[str, ...]:
    """Parts in turn, every operation that precedence allows before the next part."""
    document = json.loads((folder / f"{name}.json").read_text(encoding="utf-8"))
    operations = document["operations"]
    before = {operation["id"]: set(operation["after"]) for operation in operations}
    of_part: dict[int, list[int]] = {}
    for operation in operations:
        of_part.setdefault(operation["part"], []).append(operation["id"])
    done: dict[int, None] = {}
    while len(done) < len(operations):
        for part in sorted(of_part):
            left = of_part[part]
            for number in tuple(left):
                if before[number] <= done.keys():
                    done[number] = None
                    left.remove(number)
    return tuple(str(number) for number in done)


def read_ordering(name: str, folder: Path = ORDERINGS) -> Problem:
    """A sequential ordering problem: one axis, one value per job, costs between all pairs.

    The first job is "not set", so it is no task. Every cost is raised by the largest one, so that
    no way round is cheaper than the direct one: each job is entered once, so all orders cost the
    same more, `raised` in all.
    """
    matrix = _matrix(name, folder)
    jobs, most = range(1, len(matrix)), max(map(max, matrix))
    axis = Axis(
        "job",
        2 * most,
        tuple(
            (str(old) if old else None, str(new), matrix[old][new] + most)
            for old in range(len(matrix))
            for new in jobs
            if old != new and matrix[old][new] >= 0
        ),
    )
    return Problem(
        stations=(Station("machine", (axis,)),),
        tasks=tuple(Task(str(job), "machine", (("job", str(job)),), 0) for job in jobs),
        precedences=tuple(
            Precedence(str(before), str(after), 0, "as the instance says")
            for after in jobs
            for before in jobs
            if matrix[after][before] < 0
        ),
    )


def raised(name: str, folder: Path = ORDERINGS) -> int:
    """What every order of `read_ordering` costs more than the instance says."""
    matrix = _matrix(name, folder)
    return (len(matrix) - 1) * max(map(max, matrix))


def length(name: str, order: tuple[str, ...], folder: Path = ORDERINGS) -> int:
    """Cost of an order of jobs by the instance's own matrix."""
    matrix = _matrix(name, folder)
    jobs = (0, *(int(job) for job in order))
    return sum(matrix[old][new] for old, new in pairwise(jobs))


def tenths(minutes: float) -> int:
    """Minutes with at most one decimal place in whole tenths."""
    return round(minutes * 10)


def _matrix(name: str, folder: Path) -> list[list[int]]:
    text = (folder / f"{name}.sop").read_text(encoding="ascii")
    size, *numbers = text.split("EDGE_WEIGHT_SECTION")[1].replace("EOF", "").split()
    width = int(size)
    return [[int(n) for n in numbers[row * width : (row + 1) * width]] for row in range(width)]
