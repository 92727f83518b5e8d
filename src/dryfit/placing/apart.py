"""The piece taken apart, as it is drawn: how far each copy moves from its place, and which way.

What comes off by a straight pull is moved that way, whole glue-ups and whole drawers and doors
first, then what each of them is made of.  This is a picture, not a plan: in what order the parts
of a glue-up really go together is worked out with its operations.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from math import inf

from dryfit.placing.model import Joint, Model
from dryfit.placing.pulls import (
    SLACK,
    WAYS,
    Bounds,
    Way,
    abreast,
    around,
    boxes_of,
    reach_of,
    rows_of,
)
from dryfit.placing.units_of import Unit, units_of

Offset = tuple[float, float, float]
UP = 2


@dataclass(frozen=True, slots=True)
class Pulled:
    """Copies that were moved together off others, with which of these they are joined.

    `pairs` are a copy of theirs and one of the others, and the joint's name.
    """

    copies: tuple[str, ...]
    pairs: tuple[tuple[str, str, str], ...]


@dataclass(frozen=True, slots=True)
class Apart:
    """How far each copy is moved in mm, and what was pulled off what."""

    offsets: Mapping[str, Offset]
    pulled: tuple[Pulled, ...]


@dataclass(frozen=True, slots=True)
class _Taken:
    """Units that come off together; `free` says whether the way is free all along."""

    units: tuple[int, ...]
    way: Way
    free: bool


def taken_apart(model: Model, gap: float) -> Apart:
    """Return the piece taken apart, `gap` mm free between what was together."""
    work = _Work(model)
    work.spread(units_of(model), gap, gap / 2)
    return Apart(dict(work.offsets), tuple(work.pulled))


class _Work:
    """What is known of the copies while they are taken apart."""

    def __init__(self, model: Model) -> None:
        rows = [(part, copy) for part in model.parts for copy in part.copies]
        self.boxes = {copy.name: boxes_of(part, copy) for part, copy in rows}
        self.bounds = {name: around(boxes) for name, boxes in self.boxes.items()}
        self.offsets: dict[str, Offset] = dict.fromkeys(self.boxes, (0.0, 0.0, 0.0))
        self.pulled: list[Pulled] = []
        self.joints: dict[str, list[Joint]] = {}
        for joint in model.joints:
            for name in (joint.guest, joint.host):
                self.joints.setdefault(name, []).append(joint)

    def spread(self, units: Sequence[Unit], gap: float, inner: float) -> None:
        """Take units apart: each within itself first, less far, then one off the other."""
        for unit in units:
            if len(unit.parts) > 1:
                self.spread(unit.parts, inner, inner)
        level = _Level(self, units, gap)
        placed = [copy for index in sorted(level.rest) for copy in units[index].copies]
        for batch in reversed(level.batches()):
            rows = [[copy for at in each.units for copy in units[at].copies] for each in batch]
            # What is alike and goes one way goes as far, and stays side by side.
            far = max(self._way_off(copies, placed, batch[0], gap) for copies in rows)
            for copies in rows:
                self._move(copies, placed, batch[0].way, far)
            placed += [copy for copies in rows for copy in copies]

    def _way_off(
        self, copies: Sequence[str], placed: Sequence[str], taken: _Taken, gap: float
    ) -> float:
        """Return how far copies go to stand clear of those that are placed already.

        Where the way is not free, no farther than half way to what stands in it.
        """
        axis, _ = taken.way
        # A top hides what is under it: it is lifted twice as far as other things are moved.
        gap *= 2 if axis == UP else 1
        far, room = gap, inf
        for one in copies:
            own = self._now(one)
            for other in placed:
                mate = self._now(other)
                if not abreast(own, mate, axis):
                    continue
                ahead = -reach_of(mate, own, taken.way)
                if taken.free or ahead <= SLACK:
                    reach = reach_of(own, mate, taken.way)
                    # What is not lifted away stays among the others, as its own joints ask.
                    beside = taken.free or abreast(self.bounds[one], self.bounds[other], axis)
                    far = max(far, reach + gap) if beside else far
                else:
                    room = min(room, ahead)
        return min(far, room / 2)

    def _move(self, copies: Sequence[str], placed: Sequence[str], way: Way, far: float) -> None:
        axis, side = way
        names, others = set(copies), set(placed)
        for one in copies:
            moved = list(self.offsets[one])
            moved[axis] += side * far
            self.offsets[one] = moved[0], moved[1], moved[2]
        joints = [(one, joint) for one in copies for joint in self.joints.get(one, ())]
        mates = [(one, j.host if one == j.guest else j.guest, j.id) for one, j in joints]
        pairs = tuple(row for row in mates if row[1] in others and row[1] not in names)
        self.pulled.append(Pulled(tuple(copies), pairs))

    def _now(self, copy: str) -> Bounds:
        (x, y, z, u, v, w), (a, b, c) = self.bounds[copy], self.offsets[copy]
        return x + a, y + b, z + c, u + a, v + b, w + c


class _Level:
    """Units side by side, and in which order they come off: `rest` is what stays."""

    def __init__(self, work: _Work, units: Sequence[Unit], gap: float) -> None:
        self._work, self._units, self._room = work, units, gap / 2
        self._rows = rows_of(units, work.boxes, work.bounds)
        self._joints = _joined(units, work.joints)
        self._bounds = [around(work.bounds[name] for name in unit.copies) for unit in units]
        self.rest = set(range(len(units)))
        self.taken: list[_Taken] = []
        main = max(self.rest, key=lambda index: (_size(self._bounds[index]), -index), default=0)
        while len(self.rest) > 1:
            # What comes off alone comes first, and with it what has only room to come out of its
            # joint and is then lifted away, as a button out of its groove.
            offers = self._alone(main) or self._groups()
            if not offers:
                break
            self.taken += offers
            self.rest -= {index for each in offers for index in each.units}

    def batches(self) -> list[list[_Taken]]:
        """Return what comes off, units alike that go one way after another put together."""
        found: list[list[_Taken]] = []
        for each in self.taken:
            before = found[-1][0] if found else None
            alike = before is not None and self._kinds(before) == self._kinds(each)
            if before is not None and alike and before.way == each.way:
                found[-1].append(each)
            else:
                found.append([each])
        return found

    def _kinds(self, taken: _Taken) -> list[str]:
        return [self._units[index].kind for index in taken.units]

    def _alone(self, main: int) -> list[_Taken]:
        """Return the units alike that come off next, each by itself; the main one stays."""
        found = []
        for order, way in enumerate(WAYS):
            for index in sorted(self.rest - {main}):
                if self._is_loose(index):
                    continue
                row = self._rows[way][index]
                travel = max((row.left.get(at, 0.0) for at in self.rest), default=0.0)
                rooms = [room for at, room in row.stopped.items() if at in self.rest]
                if min(rooms, default=inf) > travel + self._room:
                    beside, rubbed = self._met(index, way)
                    inwards = self._inwards(index, way)
                    worth = (beside, round(travel, 3), bool(rooms), rubbed, inwards)
                    found.append((worth, -index, order))
        found.sort()
        rows: dict[int, _Taken] = {}
        for worth, turned, order in found:
            first, number, _ = found[0]
            alike = self._units[-turned].kind == self._units[-number].kind
            if alike and worth == first and -turned not in rows:
                rows[-turned] = _Taken((-turned,), WAYS[order], free=not worth[2])
        return [each for _, each in sorted(rows.items())]

    def _groups(self) -> list[_Taken]:
        """Return the smallest group that comes off the rest together, if any does."""
        found = []
        for order, way in enumerate(WAYS):
            for index in sorted(self.rest):
                group = self._together(index, way)
                if len(group) < len(self.rest) and not all(map(self._is_loose, group)):
                    rubbed = max(self._met(each, way)[1] for each in group)
                    found.append((len(group), rubbed, self._inwards(index, way), -index, order))
        if not found:
            return []
        *_, turned, order = min(found)
        group = self._together(-turned, WAYS[order])
        return [_Taken(tuple(sorted(group)), WAYS[order], free=True)]

    def _together(self, index: int, way: Way) -> set[int]:
        """Return what has to move with a unit, itself among it."""
        group, waiting = {index}, [index]
        while waiting:
            stopped = self._rows[way][waiting.pop()].stopped
            more = (stopped.keys() & self.rest) - group
            group |= more
            waiting += sorted(more)
        return group

    def _met(self, index: int, way: Way) -> tuple[bool, float]:
        """Return whether a way only leads past what a unit is joined with, and how far it rubs."""
        joints = [joint for at, joint in self._joints[index] if at in self.rest]
        rubbed = max((float(joint.region.extent(way[0])) for joint in joints), default=0.0)
        copies = self._work.bounds
        off = any(abreast(copies[j.guest], copies[j.host], way[0]) for j in joints)
        return bool(joints) and not off, rubbed

    def _is_loose(self, index: int) -> bool:
        """Whether what a unit was joined with came off already: it stands where it stood."""
        joints = self._joints[index]
        return bool(joints) and not any(at in self.rest for at, _ in joints)

    def _inwards(self, index: int, way: Way) -> bool:
        axis, side = way
        whole = around(self._bounds[each] for each in self.rest)
        own = self._bounds[index]
        return side * (own[axis] + own[axis + 3] - whole[axis] - whole[axis + 3]) < 0


def _joined(
    units: Sequence[Unit], joints: Mapping[str, Iterable[Joint]]
) -> list[list[tuple[int, Joint]]]:
    """Return for each unit its joints with others, by their numbers."""
    of = {copy: index for index, unit in enumerate(units) for copy in unit.copies}
    found: list[list[tuple[int, Joint]]] = [[] for _ in units]
    for copy, index in of.items():
        for joint in joints.get(copy, ()):
            mate = of.get(joint.host if joint.guest == copy else joint.guest)
            if mate is not None and mate != index:
                found[index].append((mate, joint))
    return found


def _size(bounds: Bounds) -> float:
    x, y, z, u, v, w = bounds
    return (u - x) * (v - y) * (w - z)
