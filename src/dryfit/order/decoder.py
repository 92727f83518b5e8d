"""From an order to a schedule: each task as early as its turn allows.

The worker sets up as soon as the task before is finished, also while something cures. The task
starts when he is ready, the lags of its predecessors are over, what it holds is free, and, if it
may not be interrupted, the rest of the day is long enough. Test cuts wait for what it holds, too.
"""

from collections.abc import Iterable
from dataclasses import dataclass

from dryfit.order.axes import Demands
from dryfit.order.holding import Releases, free_from, take
from dryfit.order.instance import Instance
from dryfit.order.picking import used
from dryfit.order.pieces import Taken
from dryfit.order.result import Entry, Schedule, Totals


@dataclass(slots=True)
class Progress:
    """The shop after some tasks of an order.

    work      work time that has passed, tenths of a minute
    waiting   how much of it nothing was done
    setup     how much of it went into set-up
    walks     number of walks
    station   where the worker stands, -1 at the start
    current   value of every axis, 0 for "not set"; of an axis with ranges all values (bits) that
              serve since it was last changed
    tried     trial groups paid (bits)
    ends      per task: clock time of its end, of timed tasks only
    releases  per resource: (clock time, count) of everything held, in order of taking
    finish    clock time when the unattended time after all tasks is over
    taken     pieces that the last task with holds took, where another kind may serve
    """

    work: int
    waiting: int
    setup: int
    walks: int
    station: int
    current: list[int]
    tried: int
    ends: list[int]
    releases: list[Releases]
    finish: int
    taken: tuple[Taken, ...] = ()

    def copy(self) -> "Progress":
        """The same, independent of this one."""
        return Progress(
            self.work,
            self.waiting,
            self.setup,
            self.walks,
            self.station,
            self.current.copy(),
            self.tried,
            self.ends.copy(),
            self.releases.copy(),
            self.finish,
        )


def opening(instance: Instance) -> Progress:
    """The shop at the opening of day 1."""
    return Progress(
        work=0,
        waiting=0,
        setup=0,
        walks=0,
        station=-1,
        current=[
            1 << value if value and table.ranged else value
            for table, value in zip(instance.axes, instance.standing, strict=True)
        ],
        tried=0,
        ends=[0] * len(instance.station),
        releases=[()] * len(instance.problem.resources),
        finish=0,
    )


def advance(
    instance: Instance,
    progress: Progress,
    tasks: Iterable[int],
    worth: int = 0,
    limit: int | None = None,
) -> bool:
    """Do tasks in this order; `progress` moves on, and the answer is True.

    As soon as `worth` times set-up plus waiting exceeds the limit the answer is False and
    `progress` is of no use any more.
    """
    stations, demands, works = instance.station, instance.demands, instance.works
    axes, clocked, trials = instance.axes, instance.clocked, instance.trials
    choices = instance.choices
    walk = instance.problem.walk
    current = progress.current
    work, waiting, spent = progress.work, progress.waiting, progress.setup
    for task in tasks:
        setup = trial = 0
        if stations[task] != progress.station:
            progress.station = stations[task]
            progress.walks += 1
            setup = walk
        for axis, value in demands[task]:
            now = current[axis]
            if now != value:
                setup += axes[axis].costs[now][value]
                current[axis] = value
        if choices:
            for axis, acceptable in choices[task]:
                common = current[axis] & acceptable
                if not common:
                    setup += axes[axis].entry[1]
                current[axis] = common or acceptable
        group = trials[task]
        if group >= 0 and not progress.tried >> group & 1:
            progress.tried |= 1 << group
            trial = instance.trial_costs[group]
            setup += trial
        work += setup
        spent += setup
        if clocked[task]:
            begin = _begin(instance, progress, task, work, trial)
            waiting += begin - work
            work = begin
        work += works[task]
        if limit is not None and worth * spent + waiting > limit:
            return False
    progress.work, progress.waiting, progress.setup = work, waiting, spent
    return True


def decoded(instance: Instance, order: tuple[int, ...]) -> tuple[Schedule, Totals]:
    """Schedule and totals of a valid order of all tasks."""
    progress = opening(instance)
    entries: list[Entry] = []
    for task, chosen in zip(order, used(instance, order, progress.current), strict=True):
        ready = entries[-1].end if entries else 0
        entries.append(_entry(instance, progress, task, chosen, ready))
    walk = sum(entry.walk for entry in entries)
    trial = sum(entry.trial for entry in entries)
    work = sum(instance.works)
    totals = Totals(
        changeovers=sum(len(entry.changed) for entry in entries),
        changeover=progress.setup - walk - trial,
        walk=walk,
        trial=trial,
        setup=progress.setup,
        work=work,
        attended=progress.setup + work,
        waiting=progress.waiting,
        elapsed=elapsed(instance, progress),
    )
    return Schedule(tuple(entries)), totals


def elapsed(instance: Instance, progress: Progress) -> int:
    """Clock time from the opening of day 1 until everything is over."""
    return max(progress.finish, instance.hours.clock_at_end(progress.work))


def _begin(instance: Instance, progress: Progress, task: int, begin: int, trial: int) -> int:
    """Work time at which a task can begin; notes its end and what it and its trial hold."""
    hours, ends = instance.hours, progress.ends
    clock = free = 0
    for before, lag in instance.lags[task]:
        clock = max(clock, ends[before] + lag)
    if clock:
        begin = max(begin, hours.work_at(clock))
    if instance.holds[task]:
        free = free_from(instance, progress.releases, task, max(0, begin - trial))
    if free:
        begin = max(begin, hours.work_at(free) + trial)
    work = instance.works[task]
    if not instance.splittable[task]:
        begin = hours.unbroken(begin, work)
    if instance.timed[task]:
        start = hours.clock_at_start(begin)
        end = hours.clock_at_end(begin + work) if work else start
        ends[task] = end
        progress.finish = max(progress.finish, end + instance.problem.tasks[task].after)
        if instance.holds[task]:
            clock = hours.clock_at_start(begin - trial)
            progress.taken = take(instance, progress.releases, task, clock, end)
    return begin


def _entry(instance: Instance, progress: Progress, task: int, chosen: Demands, ready: int) -> Entry:
    """Do one task next; what that came to is the difference it made to `progress`."""
    described = instance.problem.tasks[task]
    hours = instance.hours
    before = progress.copy()
    advance(instance, progress, (task,))
    start = hours.clock_at_start(progress.work - described.work)
    setup = progress.setup - before.setup
    walk = instance.problem.walk * (progress.walks - before.walks)
    tried = progress.tried & ~before.tried
    trial = instance.trial_costs[tried.bit_length() - 1] if tried else 0
    return Entry(
        task=described.id,
        station=described.station,
        ready=ready,
        start=start,
        end=hours.clock_at_end(progress.work) if described.work else start,
        changed=tuple(
            instance.axes[axis].name
            for axis, value in chosen
            if not instance.axes[axis].stands(before.current[axis], value)
        ),
        values=tuple(
            (instance.axes[axis].name, instance.axes[axis].values[value - 1])
            for axis, value in chosen
        ),
        changeover=setup - walk - trial,
        walk=walk,
        trial=trial,
        waiting=progress.waiting - before.waiting,
        instead=_instead(instance, progress, task),
    )


def _instead(instance: Instance, progress: Progress, task: int) -> tuple[tuple[str, str, int], ...]:
    """What serves for what, of the pieces that a task has just taken."""
    if not instance.exchanging[task]:
        return ()
    resources, holds = instance.problem.resources, instance.holds[task]
    return tuple(
        (resources[holds[hold][0]].name, resources[kind].name, count)
        for hold, kind, count in progress.taken
        if kind != holds[hold][0]
    )
