"""Where a tenon without a written place finds room: clear of laps, housings, trenches, mortises.

A written place is never moved: what it runs into is reported by the checks (H05, H06).
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from fractions import Fraction

from dryfit.geometry.box import Box
from dryfit.joinery.cut import Cut, Placed

CLEAR = Fraction(5)
"""What must stand between a mortise and a lap or another trench (H06); between mortises too, since
3 mm is the least there and not the usual."""

Range = tuple[Fraction, Fraction]
Bounds = tuple[tuple[float, ...], tuple[float, ...]]
_FAR = 10.0


@dataclass(slots=True)
class Occupied:
    """What is cut from each copy before the tenons that are still to be placed."""

    cuts: dict[str, list[tuple[Bounds, Cut]]] = field(default_factory=dict)

    def add(self, cuts: Iterable[Cut]) -> None:
        """Note cuts; what is cut after a glue-up comes too late to be in the way."""
        for cut in cuts:
            if cut.after is None and cut.form is None:
                low, high = (tuple(map(float, ends)) for ends in (cut.box.low, cut.box.high))
                self.cuts.setdefault(cut.copy, []).append(((low, high), cut))

    def near(self, name: str, box: Box, axis: int) -> Iterator[Cut]:
        """Yield the cuts of a copy that lie beside a box along an axis, or close to it.

        A post may have hundreds: comparing floats is enough to pass over what lies far away.
        """
        start, end = float(box.low[axis]) - _FAR, float(box.high[axis]) + _FAR
        return (
            cut
            for (low, high), cut in self.cuts.get(name, ())
            if low[axis] < end and high[axis] > start
        )


@dataclass(frozen=True, slots=True)
class Blocked:
    """A stretch of a rail's width, from its low edge, that a tenon must keep off; and why."""

    low: Fraction
    high: Fraction
    what: str


def blocked_for(
    occupied: Occupied, rail: Placed, hosts: Sequence[Placed], tenons: Sequence[Box]
) -> tuple[Blocked, ...]:
    """Return the stretches of a rail's width where its tenons find no room, in all its hosts.

    `tenons` are the boxes of the tenon in each of `hosts` as it would be without them.
    """
    length, wide, thick = rail.axes
    zero = rail.box.low[wide]
    found: list[Blocked] = []
    for host, tenon in zip(hosts, tenons, strict=True):
        at_low = (
            tenon.low[length] + tenon.high[length] < rail.box.low[length] + rail.box.high[length]
        )
        side = 1 if at_low else -1
        for cut in occupied.near(host.name, rail.box, wide) if host.axes[0] == wide else ():
            crossing = _overlap(cut.box, tenon, length) and _overlap(cut.box, tenon, thick)
            # Mortises that meet round a corner are cured by their length, not by their place.
            crossing = crossing and cut.role != "mortise"
            if crossing or (cut.axis, cut.side) == (length, side):
                found.append(_blocked(cut, wide, zero, CLEAR))
        found += [
            _blocked(cut, wide, zero, Fraction(0))
            for cut in occupied.near(rail.name, tenon, length)
            if _overlap(cut.box, tenon, length) and _overlap(cut.box, tenon, thick)
        ]
    return tuple(dict.fromkeys(found))


def _overlap(one: Box, two: Box, axis: int) -> bool:
    return one.low[axis] < two.high[axis] and two.low[axis] < one.high[axis]


def _blocked(cut: Cut, wide: int, zero: Fraction, clear: Fraction) -> Blocked:
    mate = f" for the {cut.mate}" if cut.mate else ""
    low, high = cut.box.low[wide] - zero, cut.box.high[wide] - zero
    return Blocked(low - clear, high + clear, f"the {cut.role}{mate}")


def clear_place(
    usual: Range, limits: Range, blocked: Sequence[Blocked], least: Fraction
) -> tuple[Range, str] | None:
    """Return the place nearest to the usual one that is clear, and what it keeps clear of.

    `usual` is from where to where the tenon would go, `limits` what its shoulders leave of the
    rail.  A tenon is made narrower where it must be, but not under `least`.  None where the usual
    place is clear, or where there is no room at all.
    """
    low, high = usual
    hit = [each for each in blocked if each.low < high and low < each.high]
    if not hit:
        return None
    free = [limits]
    for each in blocked:
        free = [part for stretch in free for part in _less(stretch, (each.low, each.high))]
    width = high - low
    fitting = [each for each in free if each[1] - each[0] >= least]
    if not fitting:
        return None
    start, end = min(
        fitting,
        key=lambda each: (-min(width, each[1] - each[0]), abs(each[0] + each[1] - low - high)),
    )
    wide = min(width, end - start)
    begin = min(max(low, start), end - wide)
    return (begin, begin + wide), hit[0].what


def _less(stretch: Range, taken: Range) -> list[Range]:
    (low, high), (start, end) = stretch, taken
    if end <= low or high <= start:
        return [stretch]
    return [part for part in ((low, min(high, start)), (max(low, end), high)) if part[0] < part[1]]


@dataclass(frozen=True, slots=True)
class Around:
    """All copies by name, and what is cut from them before the tenons that are to be placed.

    `grooves` are those for panels, which rows of dowels and the like keep clear of.
    """

    placed: Mapping[str, Placed]
    occupied: Occupied
    grooves: Occupied = field(default_factory=Occupied)
