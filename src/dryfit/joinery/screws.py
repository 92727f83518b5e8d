"""Butt joints with screws: how many, how long, where (TRADE B17)."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import ceil

from dryfit.diagnostics import Span
from dryfit.geometry.box import Box, Triple
from dryfit.joinery.cut import Cut, Placed, bounded

# Lengths in which wood screws are commonly sold, mm (common practice).
_LENGTHS = tuple(Fraction(length) for length in (16, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80))
_NARROW = Fraction(60)
_PITCH = Fraction(250)
BROAD = Fraction(150)
"""Wider than this a solid board is not screwed fast at two places across its grain (B17, G8)."""

_TIP = Fraction(3)
_UNDER_PLATE = Fraction(20)
_HOLD = Fraction(10)
"""What must hold at least in the second part, where it is thick enough (common practice)."""
_HOLD_IN_END = Fraction(25)
"""What must hold where a screw goes through the lip of a rabbet into end grain, which holds 60 to
65 % of what a face does (TRADE B17 for the share, common practice for the length)."""


@dataclass(frozen=True, slots=True)
class Screw:
    """Diameter, length, and the drills for clearance and pilot hole; mm."""

    diameter: Fraction
    length: Fraction
    clearance: Fraction
    pilot: Fraction

    def size(self) -> str:
        """Return ``4 x 35``, as screws are sold."""
        return f"{_plain(self.diameter)} x {_plain(self.length)}"


def screw_for(thickness: Fraction, depth: Fraction, *, hold: Fraction = _HOLD) -> Screw | None:
    """Return the screw that holds a part of that thickness onto one `depth` mm deep.

    The longest in the shops that is at most twice the thickness, so that half of it or a little
    less holds, and that stays 3 mm inside the second part (common practice; H18); where none is
    sold between, the shortest that holds and stays inside.  Diameter by thickness; pilot about 0.6
    of it, which is between 70 % of the root, as softwood asks for, and 90 %, as hardwood does
    (`tests/published/test_screws.py`).  None when no screw reaches far enough into the second part.
    `hold` is the least that has to be in that, where it is thick enough.
    """
    diameter = Fraction(7, 2) if thickness < 12 else Fraction(4) if thickness <= 22 else Fraction(5)
    inside = thickness + depth - _TIP
    least = thickness + min(hold, depth - _TIP)
    held = [length for length in _LENGTHS if least <= length <= inside]
    usual = [length for length in held if length <= 2 * thickness]
    if not held:
        return None
    length = usual[-1] if usual else held[0]
    return Screw(diameter, length, diameter + Fraction(1, 2), diameter * Fraction(6, 10))


def screw_under(depth: Fraction) -> Screw:
    """Return the screw that holds a thin plate under a part so deep: 20 long, or 3 mm less than it.

    Common practice; the shortest sold where the part is thinner.
    """
    inside = [length for length in _LENGTHS if length <= min(_UNDER_PLATE, depth - _TIP)]
    diameter = Fraction(4)
    length = inside[-1] if inside else _LENGTHS[0]
    return Screw(diameter, length, diameter + Fraction(1, 2), diameter * Fraction(6, 10))


def passes_guest(guest: Fraction, host: Fraction) -> bool:
    """Return whether a screw goes through the guest into the host, and not the other way.

    It goes through what is laid on, unless no screw is long enough: then through the other, as
    where a rail is butted to a side (common practice).  Both as mm along the screw.
    """
    return screw_for(guest, host) is not None


def screw_places(contact: Box, axis: int, *, middle_one: bool = False) -> tuple[Triple, ...]:
    """Return the middles of the screws in a contact face whose normal is `axis`.

    One where the face is under 60 mm in both directions, else a row along the longer: two, or
    more so that none is over 250 mm from the next, each in the middle of its share of the length
    (B17: two a joint where there is room; one each 200 to 250 mm, *common practice*; one in a
    narrow slat lets it move).  With `middle_one` an odd number, three at least: on a cleat across
    a broad board the one in the middle holds it, and the others sit in slots (B18).
    """
    longer = longer_of(contact, axis)
    middle = [(contact.low[i] + contact.high[i]) / 2 for i in range(3)]
    length = contact.extent(longer)
    many = 1 if length < _NARROW else max(2, ceil(length / _PITCH))
    if middle_one:
        many += 1 - many % 2
    places = []
    for number in range(many):
        middle[longer] = contact.low[longer] + length * (2 * number + 1) / (2 * many)
        places.append((middle[0], middle[1], middle[2]))
    return tuple(places)


def longer_of(contact: Box, axis: int) -> int:
    """Return the axis along which a row of screws runs in a contact face whose normal is `axis`."""
    return max((other for other in range(3) if other != axis), key=contact.extent)


@dataclass(frozen=True, slots=True)
class Driving:
    """How a screw is driven: through `first` into `second`, along `axis` towards `-side`.

    It passes `passes` mm of the first: all of it, or the lip of a rabbet.
    """

    first: Placed
    second: Placed
    axis: int
    side: int
    screw: Screw
    passes: Fraction

    def tip(self, plane: Fraction) -> Fraction:
        """Return where the screw ends that passes the contact face at `plane`."""
        return plane - self.side * (self.screw.length - self.passes)


def driving(
    guest: Placed,
    host: Placed,
    surface: tuple[int, int],
    plane: Fraction,
    *,
    from_host: bool = False,
) -> Driving | None:
    """Return how a guest is screwed to the face (axis, side) of its host; None if no screw fits.

    They touch at `plane`: the host's outer face, or inside it where a rabbet leaves a lip.
    `from_host` asks for screws through the host, so that none shows in the guest.
    """
    axis, side = surface
    first, second = guest, host
    passes, holds = _beyond(guest.box, axis, side, plane), _beyond(host.box, axis, -side, plane)
    if from_host or not passes_guest(passes, holds):
        first, second, side = host, guest, -side
        passes, holds = holds, passes
    screw = screw_between(first.box, second.box, axis, plane)
    return None if screw is None else Driving(first, second, axis, side, screw, passes)


def screw_between(first: Box, second: Box, axis: int, plane: Fraction) -> Screw | None:
    """Return the screw through one box into another that it touches at `plane` of an axis.

    Through a lip it goes into end grain, or into an edge, and has to hold further in.
    """
    side = 1 if second.low[axis] < plane else -1
    passes, holds = _beyond(first, axis, side, plane), _beyond(second, axis, -side, plane)
    if passes <= 0:
        return None
    return screw_for(passes, holds, hold=_HOLD if passes == first.extent(axis) else _HOLD_IN_END)


def _beyond(box: Box, axis: int, side: int, plane: Fraction) -> Fraction:
    """Return how thick a box is on one side of a plane across an axis."""
    return box.high[axis] - plane if side > 0 else plane - box.low[axis]


def screw_holes(driven: Driving, places: Sequence[Triple], span: Span | None) -> tuple[Cut, ...]:
    """Return, at each place, a clearance hole through one part and a pilot hole in the other."""
    first, second, axis, side = driven.first, driven.second, driven.axis, driven.side
    cuts: list[Cut] = []
    for place in places:
        through = _hole(first.box, place, axis, driven.screw.clearance)
        outer = place[axis] + side * driven.passes
        through = bounded(through, axis, min(place[axis], outer), max(place[axis], outer))
        cuts.append(
            Cut(first.name, through, "hole", "screw hole", axis, side, None, second.part, span)
        )
        end = driven.tip(place[axis])
        hole = _hole(second.box, place, axis, driven.screw.pilot)
        hole = bounded(hole, axis, min(place[axis], end), max(place[axis], end))
        cuts.append(
            Cut(second.name, hole, "hole", "pilot hole", axis, side, None, first.part, span)
        )
    return tuple(cuts)


def _hole(box: Box, place: Triple, axis: int, diameter: Fraction) -> Box:
    for other in range(3):
        if other != axis:
            box = bounded(box, other, place[other] - diameter / 2, place[other] + diameter / 2)
    return box


def _plain(length: Fraction) -> str:
    return str(length) if length.denominator == 1 else f"{float(length):g}"
