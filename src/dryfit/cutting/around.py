"""Whether a set of blanks comes out of a rectangle with zones in it, however it is cut.

Somewhere a cut has blanks on both sides. It may as well lie as close to the first ones as they can
be pushed: at the rectangle's beginning or a zone's end, and a row of blanks and kerfs further on.
Stages and the shortest rip are left out of account, so that what does not come out surely does not.
"""

from collections.abc import Sequence

from dryfit.cutting.boxes import Boxes, Set, Steps, halves
from dryfit.cutting.clear import clear_rectangles, meet
from dryfit.cutting.dual import Size
from dryfit.cutting.problem import Area

FEW = 7
"""Sets of more blanks than this are not looked at."""


NOWHERE = 1 << 62


class Around:
    """Remembers which sets come out of which parts of one board."""

    def __init__(
        self,
        zones: Sequence[Area],
        sizes: Sequence[Sequence[Size]],
        boxes: Boxes,
        kerfs: Size,
        steps: Steps,
    ) -> None:
        self.zones = zones
        self.sizes = sizes
        self.boxes = boxes
        self.kerfs = kerfs
        self.steps = steps
        self._known: dict[tuple[Set, Area], bool] = {}

    def holds(self, blanks: Set, area: Area) -> bool:
        """Whether the blanks, each named by its kind, may come out of an area; at least one."""
        known = self._known.get((blanks, area))
        if known is None:
            self.steps.count(10)
            known = self._known[blanks, area] = self._worked_out(blanks, area)
        return known

    def _worked_out(self, blanks: Set, area: Area) -> bool:
        if not any(
            along <= area.length and across <= area.width for along, across in self.boxes.of(blanks)
        ):
            return False
        if not any(meet(zone, area) for zone in self.zones):
            return True
        if len(blanks) == 1:
            return any(
                along <= room.length and across <= room.width
                for room in clear_rectangles(area, self.zones)
                for along, across in self.sizes[blanks[0]]
            )
        return any(
            self._parted(first, rest, area, way)
            for one, other in halves(blanks)
            for first, rest in ((one, other), (other, one))
            for way in (0, 1)
        )

    def _parted(self, first: Set, rest: Set, area: Area, way: int) -> bool:
        """Whether a cut has the first blanks before it and the others beyond."""
        self.steps.count(2)
        limits = area.length, area.width
        kerf = self.kerfs[way]
        alone = [self._shortest(some, way, limits[1 - way]) for some in (first, rest)]
        if sum(alone) + kerf > limits[way]:
            return False
        self.steps.count(30)
        places = self._places(first, area, way)
        low, high = 0, len(places)
        while low < high:
            middle = (low + high) // 2
            if self.holds(first, _before(area, way, places[middle])):
                high = middle
            else:
                low = middle + 1
        if low == len(places):
            return False
        beyond = _beyond(area, way, places[low] + kerf)
        return beyond is not None and self.holds(rest, beyond)

    def _shortest(self, blanks: Set, way: int, most: int) -> int:
        """How little of a direction blanks take in clear wood that has so much of the other."""
        return min(
            (size[way] for size in self.boxes.of(blanks) if size[1 - way] <= most),
            default=NOWHERE,
        )

    def _places(self, blanks: Set, area: Area, way: int) -> list[int]:
        """Where a cut may lie just beyond some blanks, in rising order."""
        met = [zone for zone in self.zones if meet(zone, area)]
        begin, end = (area.start, area.end) if way == 0 else (area.low, area.high)
        ends = (zone.end if way == 0 else zone.high for zone in met)
        bases = {begin, *(one for one in ends if one < end)}
        kerf = self.kerfs[way]
        sums = {-kerf}
        for kind in blanks:
            own = {size[way] for size in self.sizes[kind]}
            sums |= {total + size + kerf for total in sums for size in own}
        sums.discard(-kerf)
        self.steps.count(len(sums))
        return sorted({base + total for base in bases for total in sums if base + total < end})


def _before(area: Area, way: int, at: int) -> Area:
    if way == 0:
        return Area(area.start, at, area.low, area.high)
    return Area(area.start, area.end, area.low, at)


def _beyond(area: Area, way: int, at: int) -> Area | None:
    if way == 0:
        return Area(at, area.end, area.low, area.high) if at < area.end else None
    return Area(area.start, area.end, at, area.high) if at < area.high else None
