"""A move tried: what the order would come to, and taking it."""

from dataclasses import dataclass

from dryfit.order.holding import free_from
from dryfit.order.holding import take as hand_out
from dryfit.order.instance import Instance
from dryfit.order.track import Appointment, Held, Terms, Track, all_demands


@dataclass(slots=True)
class Trial:
    """What a move would make of a track; lists run from its first place on.

    stretch  the tasks that change places
    ends     clock and work time of ends that differ
    """

    first: int
    stretch: list[int]
    setups: list[int]
    works: list[int]
    waited: list[int]
    held: list[Held]
    payers: dict[int, int]
    ends: dict[int, tuple[int, int]]
    setup: int
    waiting: int
    cures: int


def tried(
    terms: Terms, track: Track, first: int, stretch: list[int], worth: int, limit: int
) -> Trial | None:
    """The track with other tasks in the places from `first` on; None if it costs too much.

    It does as soon as `worth` times set-up plus waiting exceeds the limit.
    """
    last = first + len(stretch)
    current = track.current[first].copy()
    payers: dict[int, int] = {}
    setups = _setups(terms.instance, track, first, stretch, current, payers)
    rest = track.setups[last:]
    setup = track.setup + sum(setups) - sum(track.setups[first:last])
    settled, dearer = _set_right(terms, track, last, stretch[-1], current, rest)
    setup += dearer
    before = track.waiting - sum(track.waited[first:])
    budget = limit - worth * setup - before
    if budget < 0:
        return None
    setups += rest
    trial = Trial(first, stretch, setups, [], [], [], payers, {}, setup, before, track.cures)
    return trial if _timed(terms, track, trial, max(settled, last - 1), budget) else None


def _setups(
    instance: Instance,
    track: Track,
    first: int,
    stretch: list[int],
    current: list[int],
    payers: dict[int, int],
) -> list[int]:
    """Set-up of each task of the stretch; `current` goes along, `payers` is filled."""
    stations, trials = instance.station, instance.trials
    walk = instance.problem.walk
    here = stations[track.order[first - 1]] if first else -1
    setups = []
    for task in stretch:
        cost = _changed(instance, task, current)
        if stations[task] != here:
            here = stations[task]
            cost += walk
        group = trials[task]
        if group >= 0 and group not in payers and track.place[track.payers[group]] >= first:
            payers[group] = task
            cost += instance.trial_costs[group]
        setups.append(cost)
    return setups


def _changed(instance: Instance, task: int, current: list[int]) -> int:
    """What the changes for a task cost; `current` goes along."""
    cost = 0
    for axis, value in instance.demands[task]:
        now = current[axis]
        if now != value:
            cost += instance.axes[axis].costs[now][value]
            current[axis] = value
    if instance.choices:
        for axis, acceptable in instance.choices[task]:
            common = current[axis] & acceptable
            if not common:
                cost += instance.axes[axis].entry[1]
            current[axis] = common or acceptable
    return cost


def _set_right(
    terms: Terms, track: Track, last: int, end: int, current: list[int], rest: list[int]
) -> tuple[int, int]:
    """Put right what the set-ups after a stretch come to; up to which place, and the sum.

    end      the task that the stretch ends with
    current  every axis after it
    rest     set-ups from place `last` on
    """
    instance = terms.instance
    settled, dearer = last - 1, 0
    if last == len(track.order):
        return settled, dearer
    left = instance.station[end]
    was = instance.station[track.order[last - 1]]
    if left != was and instance.problem.walk:
        here = instance.station[track.order[last]]
        dearer = instance.problem.walk * ((left != here) - (was != here))
        rest[0] += dearer
        settled = last
    before = track.current[last]
    if current == before:
        return settled, dearer
    for axis, (value, old) in enumerate(zip(current, before, strict=True)):
        if value != old and track.latest[axis] >= last:
            if instance.axes[axis].ranged:
                changes = _ranged_changes(terms, track, axis, last, value, old)
            else:
                place, demanded = _next_demand(terms, track, axis, last)
                costs = instance.axes[axis].costs
                changes = [(place, costs[value][demanded] - costs[old][demanded])]
            for place, change in changes:
                rest[place - last] += change
                dearer += change
                settled = max(settled, place)
    return settled, dearer


def _next_demand(terms: Terms, track: Track, axis: int, last: int) -> tuple[int, int]:
    """The first place from `last` on that demands an axis, and the value."""
    wanting, place = terms.wanting[axis], track.place
    if 8 * len(wanting) > len(track.order) - last:
        for at in range(last, len(track.order)):
            for other, value in terms.instance.demands[track.order[at]]:
                if other == axis:
                    return at, value
    at = min(place[task] for task in wanting if place[task] >= last)
    return at, dict(terms.instance.demands[track.order[at]])[axis]


def _ranged_changes(
    terms: Terms, track: Track, axis: int, last: int, now: int, old: int
) -> list[tuple[int, int]]:
    """What changes of an axis with ranges come to, place by place, until it stands as before."""
    instance = terms.instance
    cost = instance.axes[axis].entry[1]
    changes = []
    places = sorted(at for task in terms.wanting[axis] if (at := track.place[task]) >= last)
    for place in places:
        acceptable = dict(instance.choices[track.order[place]])[axis]
        difference = (not now & acceptable) - (not old & acceptable)
        if difference:
            changes.append((place, cost * difference))
        now, old = now & acceptable or acceptable, old & acceptable or acceptable
        if now == old:
            break
    return changes


def _timed(terms: Terms, track: Track, trial: Trial, settled: int, budget: int) -> bool:
    """Play the stretch and what comes after it, until all is as before; False if too dear."""
    order, works, holds = track.order, track.works, track.held
    appointments, durations = terms.appointments, terms.instance.works
    first, last = trial.first, trial.first + len(trial.stretch)
    work, held = works[first], holds[first]
    waited = 0
    place = first
    for task, setup in zip(trial.stretch + order[last:], trial.setups, strict=True):
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
        clock = max(
            (new[before][0] if before in new else ends[before]) + lag
            for before, lag in appointment.lags
        )
        begin = max(begin, hours.work_at(clock))
    tests = 0
    group = instance.trials[task]
    if group >= 0 and trial.payers.get(group, track.payers[group]) == task:
        tests = instance.trial_costs[group]
    if any(held[kind][0] + tests > begin for kind in appointment.needs):
        releases = [row for _, row in held]
        free = free_from(instance, releases, task, max(0, begin - tests))
        begin = max(begin, hours.work_at(free) + tests) if free else begin
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
    return tuple(
        old if row is old[1] else (instance.hours.work_at(max(row)[0]), row)
        for old, row in zip(held, releases, strict=True)
    )


def take(terms: Terms, track: Track, trial: Trial) -> None:
    """Make a move that was tried."""
    first, stretch = trial.first, trial.stretch
    last = first + len(stretch)
    track.setups[first:] = trial.setups
    track.works[first : first + len(trial.works)] = trial.works
    track.held[first : first + len(trial.held)] = trial.held
    track.waited[first : first + len(trial.waited)] = trial.waited
    for task, (clock, work) in trial.ends.items():
        track.ends[task], track.finished[task] = clock, work
    for group, task in trial.payers.items():
        track.payers[group] = task
    track.setup, track.waiting, track.cures = trial.setup, trial.waiting, trial.cures
    track.order[first:last] = stretch
    for place, task in enumerate(stretch, start=first):
        track.place[task] = place
        for axis, _ in all_demands(terms.instance, task):
            if track.latest[axis] < last:
                track.latest[axis] = place
    _follow_axes(terms.instance, track, first, last)


def _follow_axes(instance: Instance, track: Track, first: int, last: int) -> None:
    """Bring `current` up to date from one place on; from `last` on as far as it differs."""
    current = track.current[first]
    for place in range(first, len(track.order)):
        if place >= last:
            if place == last:
                old = track.current[last]
                current = [
                    value if latest >= last else was
                    for value, was, latest in zip(current, old, track.latest, strict=True)
                ]
            if current == track.current[place]:
                return
        track.current[place] = current
        current = current.copy()
        _changed(instance, track.order[place], current)
    track.current[len(track.order)] = current
