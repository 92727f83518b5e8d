"""Boards as a proof sees them: rooms that share nothing, and the fullest sets of each."""

from collections.abc import Sequence
from dataclasses import dataclass

from dryfit.cutting.around import FEW, Around
from dryfit.cutting.boxes import MOST, Boxes, Steps
from dryfit.cutting.clear import clear_rectangles, meet, shared
from dryfit.cutting.dual import Size, bounds_of
from dryfit.cutting.instance import Instance, Stock
from dryfit.cutting.problem import Area

Counts = tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Room:
    """A part of a board that no blank can leave, and `count` boards that have it.

    area     where it lies
    sizes    for each kind of blank the sizes in which it may lie here, none if it does not fit
    blocked  what zones surely take of it, kerfs allowed for
    zones    where zones lie in it, from its own corner
    """

    area: Area
    sizes: tuple[tuple[Size, ...], ...]
    blocked: tuple[Size, ...]
    count: int
    zones: tuple[Area, ...] = ()

    @property
    def shape(self) -> tuple[object, ...]:
        """Equal for rooms that hold the same sets."""
        return self.area.length, self.area.width, self.sizes, self.zones


def rooms_of(instance: Instance, stock: Stock, fits: Sequence[Sequence[Size]]) -> list[Room]:
    """The rooms of a board. A zone right across or right along parts it in two."""
    board, rules = stock.board, instance.job.rules
    kerfs = rules.crosscut_kerf, rules.rip_kerf
    trim = min(rules.end_trim, board.length)
    usable = Area(trim, max(trim, board.length - trim), 0, board.width)
    rooms = []
    for area in _parted(usable, board.zones) if usable.size else ():
        clear = clear_rectangles(area, board.zones)
        sizes = tuple(
            tuple(
                size
                for size in kind
                if any(size[0] <= one.length and size[1] <= one.width for one in clear)
            )
            for kind in fits
        )
        if any(sizes):
            blocked = _blocked(area, board.zones, kerfs)
            zones = tuple(_from(area, zone) for zone in board.zones if meet(zone, area))
            rooms.append(Room(area, sizes, blocked, board.count, zones))
    return rooms


def _parted(area: Area, zones: Sequence[Area]) -> list[Area]:
    for zone in zones:
        if not meet(zone, area):
            continue
        if zone.low <= area.low and zone.high >= area.high:
            sides = [
                Area(area.start, zone.start, area.low, area.high),
                Area(zone.end, area.end, area.low, area.high),
            ]
        elif zone.start <= area.start and zone.end >= area.end:
            sides = [
                Area(area.start, area.end, area.low, zone.low),
                Area(area.start, area.end, zone.high, area.high),
            ]
        else:
            continue
        return [
            part
            for side in sides
            if side.length > 0 and side.width > 0
            for part in _parted(side, zones)
        ]
    return [area]


def _from(area: Area, zone: Area) -> Area:
    """Where in an area a zone lies, from the corner of the area."""
    part = shared(zone, area)
    return Area(
        part.start - area.start,
        part.end - area.start,
        part.low - area.low,
        part.high - area.low,
    )


def _blocked(area: Area, zones: Sequence[Area], kerfs: Size) -> tuple[Size, ...]:
    """Zones that do not overlap one another, less the kerf that may lie in them."""
    taken: list[Area] = []
    for zone in sorted(zones, key=lambda zone: -zone.size):
        if meet(zone, area) and not any(meet(zone, other) for other in taken):
            taken.append(zone)
    sizes = [
        (
            min(zone.end, area.end) - max(zone.start, area.start) - kerfs[0],
            min(zone.high, area.high) - max(zone.low, area.low) - kerfs[1],
        )
        for zone in taken
    ]
    return tuple(size for size in sizes if min(size) > 0)


class Filling:
    """The sets of blanks that may come out of a room, as far as bounds and rectangles say."""

    def __init__(
        self, room: Room, quantities: Counts, boxes: Boxes, kerfs: Size, steps: Steps
    ) -> None:
        self.size = room.area.length, room.area.width
        self.boxes = boxes
        self.around = Around(room.zones, room.sizes, boxes, kerfs, steps) if room.zones else None
        self.steps = steps
        self.most = tuple(
            quantity if sizes else 0 for quantity, sizes in zip(quantities, room.sizes, strict=True)
        )
        grown = [
            [(along + kerfs[0], across + kerfs[1]) for along, across in kind] for kind in room.sizes
        ]
        whole = self.size[0] + kerfs[0], self.size[1] + kerfs[1]
        self.bounds = bounds_of(whole, grown, quantities, room.blocked)
        self.limits = tuple(most for _, most in self.bounds)
        self.values = tuple(zip(*(values for values, _ in self.bounds), strict=True))

    def fullest(self) -> list[Counts]:
        """The sets to which nothing can be added."""
        none = tuple(0 for _ in self.most)
        seen = {none: True}
        waiting = [(none, tuple(0 for _ in self.bounds))]
        found = []
        while waiting:
            counts, sums = waiting.pop()
            full = True
            for kind, most in enumerate(self.most):
                if counts[kind] == most:
                    continue
                more = (*counts[:kind], counts[kind] + 1, *counts[kind + 1 :])
                may = seen.get(more)
                if may is None:
                    self.steps.hold(len(counts))
                    raised = tuple(map(int.__add__, sums, self.values[kind]))
                    may = seen[more] = self._may(more, raised)
                    if may:
                        waiting.append((more, raised))
                full = full and not may
            if full:
                found.append(counts)
        return found

    def _may(self, counts: Counts, sums: tuple[int, ...]) -> bool:
        self.steps.count(len(sums) + len(counts))
        if any(map(int.__gt__, sums, self.limits)):
            return False
        if sum(counts) > MOST:
            return True
        along, across = self.size
        blanks = tuple(kind for kind, count in enumerate(counts) for _ in range(count))
        if not any(box[0] <= along and box[1] <= across for box in self.boxes.of(blanks)):
            return False
        return (
            self.around is None
            or len(blanks) > FEW
            or self.around.holds(blanks, Area(0, along, 0, across))
        )
