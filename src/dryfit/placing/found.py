"""Joint instances as they are found from the contact of boxes, before parts have marks."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from dryfit.diagnostics import Span
from dryfit.geometry.box import Box
from dryfit.joinery.cut import Cut, Placed
from dryfit.joinery.mortise_tenon import TenonSizes
from dryfit.placing.positions import Face
from dryfit.placing.seats import Seat
from dryfit.placing.site import Site, whole


@dataclass(frozen=True, slots=True)
class Found:
    """One joint instance with the cuts it asks for.

    `end` is (axis, side) of the guest's end that enters, or None; `shares` is the box that the
    two copies have in common before anything is cut (None where faces only touch).  `patches`,
    `dry`, `pinned`, `fastened`, `tenon`, `loose_pieces` and `fingers` as in `Joint`, but that glue
    without patches goes on all of it.
    """

    kind: str
    guest: str
    host: str
    region: Box
    span: Span
    shares: Box | None = None
    clearance: Fraction = Fraction(0)
    glued: bool = False
    end: tuple[int, int] | None = None
    area: Fraction = Fraction(0)
    cuts: tuple[Cut, ...] = ()
    patches: tuple[Box, ...] = ()
    dry: bool = False
    pinned: Box | None = None
    fastened: str | None = None
    tenon: TenonSizes | None = None
    loose_pieces: tuple[Box, ...] = ()
    fingers: int = 0


def placed_copies(site: Site, boxes: Mapping[str, Box]) -> dict[str, Placed]:
    """Return every copy that has a box, with the side on which it looks out of the piece."""
    found: dict[str, Placed] = {}
    for seat in site.seating.all():
        if seat.name in boxes:
            axes = site.part(seat.part).axes
            outward = _outward(site, boxes[seat.name], seat)
            found[seat.name] = Placed(seat.name, seat.part, boxes[seat.name], axes, outward)
    return found


def _outward(site: Site, box: Box, seat: Seat) -> tuple[int, int, int]:
    # A part in the middle looks to the left, to the front and upwards, as one sees the piece.
    in_the_middle = (-1, -1, 1)
    sides = []
    for axis in range(3):
        low, high = (_outer(site, seat, axis, side) for side in (-1, 1))
        beyond = box.low[axis] + box.high[axis] - low - high
        if beyond == 0:
            sides.append(seat.side(axis) or in_the_middle[axis])
        else:
            sides.append(-1 if beyond < 0 else 1)
    return (sides[0], sides[1], sides[2])


def _outer(site: Site, seat: Seat, axis: int, side: int) -> Fraction:
    # A part of a drawer looks out of the drawer.
    face = whole(axis, side) if seat.within is None else Face(seat.within, axis, side)
    return site.positions.at(face) or Fraction(0)
