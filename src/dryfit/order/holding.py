"""Counted pieces over time: from when a task can have all that it holds, and which it takes.

Pieces that serve in the place of others are taken only where those are not free.
"""

from dryfit.order.instance import Instance
from dryfit.order.pieces import Shortage, Taken, matched

Releases = tuple[tuple[int, int], ...]
"""Of one resource: (clock time, count) of everything held, in order of taking."""

NEVER = 10**12
"""A clock time that no plan comes to."""


def free_from(instance: Instance, releases: list[Releases], task: int, begin: int) -> int:
    """Clock time from which a task can be given all pieces that it holds.

    begin  work time at which it, or its first test cut, could begin otherwise
    """
    free = 0
    for resource, count, _ in instance.holds[task]:
        capacity = instance.problem.resources[resource].capacity
        free = max(free, _free_from(releases[resource], capacity - count))
    if not free or not instance.exchanging[task]:
        return free
    now = instance.hours.clock_at_start(begin)
    if free <= now:
        return free
    kinds = {kind for row in instance.holds[task] for kind in instance.serving[row[0]]}
    clocks = {clock for kind in kinds for clock, _ in releases[kind] if now < clock < free}
    for clock in (now, *sorted(clocks)):
        if not isinstance(_served(instance, releases, task, clock), Shortage):
            return clock
    return free


def take(
    instance: Instance, releases: list[Releases], task: int, clock: int, end: int
) -> tuple[Taken, ...]:
    """Hand out a task's pieces at a clock time; each comes back its hold's lag after the end.

    What is handed out comes back, where other kinds may serve: then that had to be chosen.
    """
    holds = instance.holds[task]
    taken: tuple[Taken, ...] = ()
    if instance.exchanging[task]:
        served = _served(instance, releases, task, clock)
        assert not isinstance(served, Shortage), "a task begins when its pieces are free"
        taken = served
    rows = taken or [(at, kind, count) for at, (kind, count, _) in enumerate(holds)]
    for hold, kind, count in rows:
        held = [item for item in releases[kind] if item[0] > clock]
        releases[kind] = (*held, (end + holds[hold][2], count))
    return taken


def _served(
    instance: Instance, releases: list[Releases], task: int, clock: int
) -> tuple[Taken, ...] | Shortage:
    """The pieces that a task could take at a clock time."""
    free = [
        resource.capacity - sum(count for release, count in row if release > clock)
        for resource, row in zip(instance.problem.resources, releases, strict=True)
    ]
    asked = [(resource, count) for resource, count, _ in instance.holds[task]]
    return matched(asked, instance.serving, free)


def _free_from(releases: Releases, others: int) -> int:
    """Clock time from which at most `others` pieces are held; never, if that is below nothing."""
    held = sum(count for _, count in releases)
    clock = 0
    for release, count in sorted(releases):
        if held <= others:
            break
        clock = release
        held -= count
    return clock if held <= others else NEVER
