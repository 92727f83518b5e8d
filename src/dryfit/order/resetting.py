"""Set-ups after a move: only the stretch is played, and the next demand of each axis after it."""

from dataclasses import dataclass

from dryfit.order.instance import Instance
from dryfit.order.track import Terms, Track, all_demands


@dataclass(slots=True)
class Settings:
    """What a move would change of the set-ups.

    stretch  the tasks that change places, from `first` on
    setups   of the stretch
    changes  (place, difference) of set-ups after the stretch
    payers   who pays for the trial groups that the stretch pays for
    setup    sum of all set-ups
    """

    first: int
    stretch: list[int]
    setups: list[int]
    changes: list[tuple[int, int]]
    payers: dict[int, int]
    setup: int


def reset(terms: Terms, track: Track, first: int, stretch: list[int]) -> Settings:
    """The set-ups with other tasks in the places from `first` on."""
    last = first + len(stretch)
    current = track.current[first].copy()
    payers: dict[int, int] = {}
    setups = _setups(terms.instance, track, first, stretch, current, payers)
    changes = _changes_after(terms, track, last, stretch[-1], current)
    setup = track.setup + sum(setups) - sum(track.setups[first:last])
    setup += sum(change for _, change in changes)
    return Settings(first, stretch, setups, changes, payers, setup)


def take_settings(terms: Terms, track: Track, settings: Settings) -> None:
    """Make a move as far as set-ups are concerned."""
    first, stretch = settings.first, settings.stretch
    last = first + len(stretch)
    track.setups[first:last] = settings.setups
    for place, change in settings.changes:
        track.setups[place] += change
    for group, task in settings.payers.items():
        track.payers[group] = task
    track.setup = settings.setup
    track.order[first:last] = stretch
    for place, task in enumerate(stretch, start=first):
        track.place[task] = place
        for axis, _ in all_demands(terms.instance, task):
            if track.latest[axis] < last:
                track.latest[axis] = place
    _follow_axes(terms.instance, track, first, last)


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


def _changes_after(
    terms: Terms, track: Track, last: int, end: int, current: list[int]
) -> list[tuple[int, int]]:
    """Where set-ups from place `last` on differ, and by how much.

    end      the task that the stretch before it ends with
    current  every axis after it
    """
    instance = terms.instance
    changes: list[tuple[int, int]] = []
    if last == len(track.order):
        return changes
    left = instance.station[end]
    was = instance.station[track.order[last - 1]]
    if left != was and instance.problem.walk:
        here = instance.station[track.order[last]]
        changes.append((last, instance.problem.walk * ((left != here) - (was != here))))
    before = track.current[last]
    if current == before:
        return changes
    for axis, (value, old) in enumerate(zip(current, before, strict=True)):
        if value != old and track.latest[axis] >= last:
            if instance.axes[axis].ranged:
                changes += _ranged_changes(terms, track, axis, last, value, old)
            else:
                place, demanded = _next_demand(terms, track, axis, last)
                costs = instance.axes[axis].costs
                changes.append((place, costs[value][demanded] - costs[old][demanded]))
    return changes


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
