"""Moves of a local search: which tasks of which stretch are taken earlier or later.

Tasks that must precede, or follow, go along, so that no precedence is ever broken.
"""

import random
from dataclasses import dataclass

from dryfit.order.instance import Instance
from dryfit.order.sets import members
from dryfit.order.track import Track

LONGEST_BLOCK = 6
LONGEST_STRETCH = 300  # a move over more costs much and seldom pays
EARLIER_CURES, REUNIONS = 0.15, 0.6  # shares of the kinds of moves, added up


@dataclass(frozen=True, slots=True)
class Company:
    """Per task the sets of tasks that share its station, or one of its values."""

    instance: Instance
    mates: tuple[tuple[tuple[int, ...], ...], ...]
    grouped: tuple[int, ...]


def company_of(instance: Instance) -> Company:
    """The company that every task of an instance keeps."""
    at_station = [tuple(members(tasks)) for tasks in instance.at_station]
    known: dict[int, tuple[int, ...]] = {}
    grouped = [-1] * len(instance.station)
    for number, group in enumerate(instance.groups):
        for task in members(group.tasks):
            grouped[task] = number
    return Company(
        instance,
        tuple(
            (*(known.setdefault(mask, tuple(members(mask))) for mask in row), at_station[station])
            for row, station in zip(instance.mates, instance.station, strict=True)
        ),
        tuple(grouped),
    )


def shift(company: Company, track: Track, rng: random.Random) -> tuple[int, list[int]] | None:
    """A random move: the first place that differs, and the stretch from there; None if none."""
    kind = rng.random()
    if kind < EARLIER_CURES:
        first, middle, last = _earlier_cure(company.instance, track, rng)
    elif kind < REUNIONS:
        first, middle, last = _reunion(company, track, rng)
    else:
        first, middle, last = _neighbours(company.instance, track.order, rng)
    if not first < middle < last or last - first > LONGEST_STRETCH:
        return None
    stretch = track.order[first:last]
    if kind < EARLIER_CURES or rng.random() < 0.5:
        moved = _taken_earlier(company.instance, stretch, middle - first)
    else:
        moved = _taken_later(company.instance, stretch, middle - first)
    while stretch and moved[-1] == stretch[-1]:
        stretch.pop()
        moved.pop()
    begin = 0
    while begin < len(stretch) and moved[begin] == stretch[begin]:
        begin += 1
    if begin == len(stretch):
        return None
    return first + begin, moved[begin:]


def tears_a_visit(company: Company, track: Track, first: int, stretch: list[int]) -> bool:
    """Whether a move leads the worker away from a together group that is not finished."""
    instance, order, place = company.instance, track.order, track.place
    last = first + len(stretch)
    new = {task: at for at, task in enumerate(stretch, start=first)}
    touched = {company.grouped[task] for task in stretch} - {-1}
    for number in touched:
        group = instance.groups[number]
        places = [new.get(task, place[task]) for task in members(group.tasks)]
        for at in range(min(places), max(places)):
            task = stretch[at - first] if first <= at < last else order[at]
            if instance.station[task] != group.station:
                return True
    return False


def _earlier_cure(instance: Instance, track: Track, rng: random.Random) -> tuple[int, int, int]:
    """A task that others must wait for after its end, and some of what stands before it."""
    if not instance.cured:
        return 0, 0, 0
    place = track.place[instance.cured[int(rng.random() * len(instance.cured))]]
    return int(rng.random() * place), place, place + 1


def _neighbours(instance: Instance, order: list[int], rng: random.Random) -> tuple[int, int, int]:
    """Two blocks side by side."""
    first = int(rng.random() * len(order))
    middle = _block_end(instance, order, first, rng)
    return first, middle, _block_end(instance, order, middle, rng)


def _block_end(instance: Instance, order: list[int], first: int, rng: random.Random) -> int:
    """End of a block: of a few tasks, or of what is left of a visit."""
    if first >= len(order) or rng.random() < 0.5:
        return min(len(order), first + 1 + int(rng.random() * LONGEST_BLOCK))
    station = instance.station[order[first]]
    end = first + 1
    while end < len(order) and instance.station[order[end]] == station:
        end += 1
    return end


def _reunion(company: Company, track: Track, rng: random.Random) -> tuple[int, int, int]:
    """A block and all that stands between it and a task that would share its station or value."""
    place = int(rng.random() * len(track.order))
    choices = company.mates[track.order[place]]
    mates = choices[int(rng.random() * len(choices))]
    target = track.place[mates[int(rng.random() * len(mates))]]
    if target < place:
        return target + 1, place, _block_end(company.instance, track.order, place, rng)
    return place, _block_end(company.instance, track.order, place, rng), target


def _taken_later(instance: Instance, stretch: list[int], count: int) -> list[int]:
    """The stretch with its first tasks and all that depend on them at its end."""
    predecessors = instance.predecessors
    late = 0
    for task in stretch[:count]:
        late |= 1 << task
    early_part, late_part = [], stretch[:count]
    for task in stretch[count:]:
        if predecessors[task] & late:
            late |= 1 << task
            late_part.append(task)
        else:
            early_part.append(task)
    return early_part + late_part


def _taken_earlier(instance: Instance, stretch: list[int], count: int) -> list[int]:
    """The stretch with all but its first tasks, and what those depend on, at its beginning."""
    predecessors = instance.predecessors
    needed = 0
    for task in stretch[count:]:
        needed |= predecessors[task]
    early_part, late_part = stretch[count:], []
    early_part.reverse()
    for task in reversed(stretch[:count]):
        if needed >> task & 1:
            needed |= predecessors[task]
            early_part.append(task)
        else:
            late_part.append(task)
    early_part.reverse()
    late_part.reverse()
    return early_part + late_part
