"""A move tried: what it would make of set-up and waiting, and taking it."""

from dataclasses import dataclass

from dryfit.order.holding import free_from
from dryfit.order.holding import take as hand_out
from dryfit.order.instance import Instance
from dryfit.order.resetting import Settings, reset, take_settings
from dryfit.order.track import Appointment, Held, Terms, Track


@dataclass(slots=True)
class Trial:
    """What a move would make of a track; lists run from its first place on.

    ends      clock and work time of ends that differ
    """

    settings: Settings
    works: list[int]
    waited: list[int]
    held: list[Held]
    ends: dict[int, tuple[int, int]]
    waiting: int
    cures: int

    @property
    def setup(self) -> int:
        """Sum of all set-ups."""
        return self.settings.setup


def tried(
    terms: Terms, track: Track, first: int, stretch: list[int], worth: int, limit: int
) -> Trial | None:
    """The track with other tasks in the places from `first` on; None if it costs too much.

    It does as soon as `worth` times set-up plus waiting exceeds the limit.
    """
    return played(terms, track, reset(terms, track, first, stretch), worth, limit)


def played(terms: Terms, track: Track, settings: Settings, worth: int, limit: int) -> Trial | None:
    """The same of a move whose set-ups are known."""
    first = settings.first
    before = track.waiting - sum(track.waited[first:])
    budget = limit - worth * settings.setup - before
    if budget < 0:
        return None
    trial = Trial(settings, [], [], [], {}, before, track.cures)
    return trial if _timed(terms, track, trial, budget) else None


def _timed(terms: Terms, track: Track, trial: Trial, budget: int) -> bool:
    """Play the stretch and what comes after it, until all is as before; False if too dear."""
    works, holds = track.works, track.held
    appointments, durations = terms.appointments, terms.instance.works
    settings = trial.settings
    first = place = settings.first
    last = first + len(settings.stretch)
    work, held = works[first], holds[first]
    setups = settings.setups + track.setups[last:]
    settled = last - 1
    for at, change in settings.changes:
        setups[at - first] += change
        settled = max(settled, at)
    waited = 0
    for task, setup in zip(settings.stretch + track.order[last:], setups, strict=True):
        if place > settled and work == works[place] and _alike(held, holds[place], work):
            waited += sum(track.waited[place:])
            break
        trial.works.append(work)
        trial.held.append(held)
        work += setup
        appointment = appointments[task]
        wait = 0
        if appointment is not None and (
            appointment.light < 0 or held[appointment.light][0] > work - setup
        ):
            begin, held = _kept(terms, track, trial, task, appointment, work, held)
            if begin != work:
                wait = begin - work
                work = begin
                waited += wait
                if waited > budget:
                    return False
            if task in trial.ends:
                settled = max(settled, *(track.place[after] for after in terms.waiters[task]))
        trial.waited.append(wait)
        work += durations[task]
        place += 1
    else:
        trial.works.append(work)
        trial.held.append(held)
    trial.waiting += waited
    return waited <= budget


def _alike(held: Held, other: Held, work: int) -> bool:
    """Whether what is held makes no difference from a work time on."""
    return held == other or all(
        mine == yours or (mine[0] <= work and yours[0] <= work)
        for mine, yours in zip(held, other, strict=True)
    )


def _kept(
    terms: Terms,
    track: Track,
    trial: Trial,
    task: int,
    appointment: Appointment,
    begin: int,
    held: Held,
) -> tuple[int, Held]:
    """Work time at which a task begins, and what is held after its end; its end is noted."""
    instance, hours = terms.instance, terms.instance.hours
    if appointment.lags:
        ends, new = track.ends, trial.ends
        clock = 0
        for before, lag in appointment.lags:
            over = (new[before][0] if before in new else ends[before]) + lag
            clock = max(clock, over)
        begin = max(begin, hours.work_at(clock))
    tests = 0
    group = instance.trials[task]
    if group >= 0 and trial.settings.payers.get(group, track.payers[group]) == task:
        tests = instance.trial_costs[group]
    for kind in appointment.needs:
        if held[kind][0] + tests > begin:
            releases = [row for _, row in held]
            free = free_from(instance, releases, task, max(0, begin - tests))
            begin = max(begin, hours.work_at(free) + tests) if free else begin
            break
    work = instance.works[task]
    if appointment.whole:
        begin = hours.unbroken(begin, work)
    if appointment.takes or appointment.cured:
        end = hours.clock_at_end(begin + work) if work else hours.clock_at_start(begin)
        if appointment.cured and end != track.ends[task]:
            trial.ends[task] = end, begin + work
            trial.cures += begin + work - track.finished[task]
        if appointment.takes:
            held = _taken(instance, task, held, hours.clock_at_start(begin - tests), end)
    return begin, held


def _taken(instance: Instance, task: int, held: Held, clock: int, end: int) -> Held:
    """What is held when a task has taken its own at a clock time; it ends at another."""
    releases = [row for _, row in held]
    hand_out(instance, releases, task, clock, end)
    new = list(held)
    for kind, row in enumerate(releases):
        if row is not held[kind][1]:
            new[kind] = instance.hours.work_at(max(row)[0]), row
    return tuple(new)


def take(terms: Terms, track: Track, trial: Trial) -> None:
    """Make a move that was tried."""
    first = trial.settings.first
    track.works[first : first + len(trial.works)] = trial.works
    track.held[first : first + len(trial.held)] = trial.held
    track.waited[first : first + len(trial.waited)] = trial.waited
    for task, (clock, work) in trial.ends.items():
        track.ends[task], track.finished[task] = clock, work
    track.waiting, track.cures = trial.waiting, trial.cures
    take_settings(terms, track, trial.settings)
