"""Which way the inside lies, seen from one copy: towards the rest of its frame or case."""

from __future__ import annotations

from fractions import Fraction

from dryfit.geometry.box import Box, spanning
from dryfit.joinery.cut import Placed
from dryfit.placing.features.surroundings import Surroundings
from dryfit.placing.site import Site


def inward_of(site: Site, copy: Placed, around: Surroundings) -> tuple[int, int, int]:
    """Return, for each axis, the side on which the inside lies.

    A place word decides (a stile at left looks to the right); then what the copy meets of the
    glue-up that it goes into, so that the rails of a door look into the door; then the piece.
    """
    seat = next(each for each in site.seats(copy.part) if each.name == copy.name)
    mates = _mates(site, copy, around)
    middle = spanning(mates) if mates else None
    sides = [-seat.side(axis) or _to_mates(copy, middle, axis) for axis in range(3)]
    return sides[0], sides[1], sides[2]


def _to_mates(copy: Placed, mates: Box | None, axis: int) -> int:
    if mates is not None:
        own = copy.box.low[axis] + copy.box.high[axis]
        theirs: Fraction = mates.low[axis] + mates.high[axis]
        if own != theirs:
            return 1 if own < theirs else -1
    return -copy.outward[axis]


def _mates(site: Site, copy: Placed, around: Surroundings) -> tuple[Box, ...]:
    beside = {
        item.name
        for stage in site.declared.stages
        if any(item.name == copy.part for item in stage.items)
        for item in stage.items
    }
    return tuple(
        other.box
        for other in around.near(copy.box)
        if other.name != copy.name
        and other.part in beside
        and (other.box.overlap(copy.box) or other.box.contact(copy.box))
    )
