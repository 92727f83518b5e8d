"""The present order of a local search, with all that a small change of it needs to know.

For every place of the order the state before it is kept: where the worker and each axis stand,
how much work time has passed, what is held. A move permutes one stretch. Only that stretch is
played anew, and what comes after it as far as it differs: until every axis stands as before, work
time has passed as before, and nothing ends at another time that is still waited for.

A hold that ends with its task never keeps the one worker waiting, so a task that has no others
only looks whether it may begin.
"""

from dataclasses import dataclass

from dryfit.order.decoder import opening
from dryfit.order.holding import Releases
from dryfit.order.instance import Instance

Held = tuple[tuple[int, Releases], ...]
"""Per resource: work time of its latest release, and all releases by the clock."""


@dataclass(frozen=True, slots=True)
class Appointment:
    """Why a task may have to wait, and what it makes others wait for.

    light  the one resource of which it needs some, if that is all; else -1
    lags   (predecessor, clock lag)
    needs  kinds of pieces that may serve it
    takes  it holds pieces for longer than it lasts
    whole  may not be interrupted
    cured  its end is waited for
    """

    light: int
    lags: tuple[tuple[int, int], ...]
    needs: tuple[int, ...]
    takes: bool
    whole: bool
    cured: bool


@dataclass(frozen=True, slots=True)
class Terms:
    """What never changes while an order is improved.

    wanting       per axis: tasks that demand it
    appointments  per task: None if it is done as soon as the worker is ready
    waiters       per task: those that wait for its end
    lasting       tasks that may end after the last one: with unattended time, or no work
    """

    instance: Instance
    wanting: tuple[tuple[int, ...], ...]
    appointments: tuple[Appointment | None, ...]
    waiters: tuple[tuple[int, ...], ...]
    lasting: tuple[int, ...]


@dataclass(slots=True)
class Track:
    """An order as it is played.

    place     per task: its place
    current   per place and one more: every axis before it, as in the decoder's `Progress`; an
              axis that nothing later demands may be out of date
    setups    per place: walk, changes and test cuts
    works     per place and one more: work time before it
    waited    per place: waiting
    held      per place and one more: what is held before it
    ends      per task that is waited for: clock time of its end
    finished  per task that is waited for: work time of its end
    payers    per trial group: the task that pays
    latest    per axis: the last place that demands it, -1 if none
    setup, waiting  sums
    cures     sum of `finished`
    """

    order: list[int]
    place: list[int]
    current: list[list[int]]
    setups: list[int]
    works: list[int]
    waited: list[int]
    held: list[Held]
    ends: list[int]
    finished: list[int]
    payers: list[int]
    latest: list[int]
    setup: int
    waiting: int
    cures: int


def terms_of(instance: Instance) -> Terms:
    """The terms of an instance."""
    wanting: list[list[int]] = [[] for _ in instance.axes]
    waiters: list[list[int]] = [[] for _ in instance.station]
    for task in range(len(instance.station)):
        for axis, _ in all_demands(instance, task):
            wanting[axis].append(task)
        for before, _ in instance.lags[task]:
            waiters[before].append(task)
    return Terms(
        instance=instance,
        wanting=tuple(map(tuple, wanting)),
        appointments=tuple(
            _appointment(instance, task, cured=bool(waiters[task])) for task in range(len(waiters))
        ),
        waiters=tuple(map(tuple, waiters)),
        lasting=tuple(
            i for i, task in enumerate(instance.problem.tasks) if task.after or not task.work
        ),
    )


def all_demands(instance: Instance, task: int) -> tuple[tuple[int, int], ...]:
    """(axis, value) of all that a task demands, values as bits where the axis has ranges."""
    return instance.demands[task] + (instance.choices[task] if instance.choices else ())


def _appointment(instance: Instance, task: int, *, cured: bool) -> Appointment | None:
    lags, holds = instance.lags[task], instance.holds[task]
    takes = any(lag for _, _, lag in holds)
    whole = not instance.splittable[task]
    needs = tuple(sorted({kind for hold in holds for kind in instance.serving[hold[0]]}))
    light = -1
    if not (lags or takes or whole or cured):
        if not needs:
            return None
        light = needs[0] if len(needs) == 1 else -1
    return Appointment(light, lags, needs, takes, whole, cured)


def untried(terms: Terms, order: tuple[int, ...]) -> Track:
    """A track before anything is played: all of the order is one move from it."""
    instance = terms.instance
    count = len(order)
    nothing: Held = ((0, ()),) * len(instance.problem.resources)
    track = Track(
        order=list(order),
        place=[0] * count,
        current=[opening(instance).current] * (count + 1),
        setups=[0] * count,
        works=[0] * (count + 1),
        waited=[0] * count,
        held=[nothing] * (count + 1),
        ends=[0] * count,
        finished=[0] * count,
        payers=[-1] * len(instance.trial_costs),
        latest=[-1] * len(instance.axes),
        setup=0,
        waiting=0,
        cures=0,
    )
    for place, task in enumerate(order):
        track.place[task] = place
        group = instance.trials[task]
        if group >= 0 and track.payers[group] < 0:
            track.payers[group] = task
        for axis, _ in all_demands(instance, task):
            track.latest[axis] = place
    return track


def finish_of(terms: Terms, track: Track) -> int:
    """Clock time when all tasks, and the unattended time after each, are over."""
    instance, hours = terms.instance, terms.instance.hours
    finish = hours.clock_at_end(track.works[-1])
    for task in terms.lasting:
        work = track.works[track.place[task] + 1]
        end = hours.clock_at_end(work) if instance.works[task] else hours.clock_at_start(work)
        finish = max(finish, end + instance.problem.tasks[task].after)
    return finish
