"""Two boards that meet at a corner, end against end, where fingers or tails hold them (B13-B15)."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from dryfit.diagnostics import Span
from dryfit.geometry.box import Box
from dryfit.joinery.cut import Cut, Placed, bounded, end_in
from dryfit.joinery.flare import PlacedFlare

Range = tuple[Fraction, Fraction]


@dataclass(frozen=True, slots=True)
class Corner:
    """A corner of two boards in the piece.

    `guest_axis` and `host_axis` are the axes that the boards run along, `across` the one that both
    are wide along; `guest_end` and `host_end` the side (-1 or 1) on which each of them ends here.
    """

    guest_axis: int
    host_axis: int
    across: int
    guest_end: int
    host_end: int


def corner_of(guest: Placed, host: Placed, region: Box) -> Corner | None:
    """Return the corner of two copies that share a region, or None where they make none.

    Both stand on edge or lie, wide along one axis; each ends in the other's thickness.  A guest
    may end inside the host's thickness, as tails do behind a lap; the host ends flush with it.
    """
    first, second = guest.axes[0], host.axes[0]
    if first == second or guest.axes[2] != second or host.axes[2] != first:
        return None
    if region.extent(second) != guest.box.extent(second):
        return None
    guest_end, host_end = end_in(guest, region), end_in(host, region)
    if guest_end is None or host_end is None:
        return None
    return Corner(first, second, 3 - first - second, guest_end, host_end)


def corner_cut(
    pair: tuple[Placed, Placed],
    region: Box,
    corner: Corner,
    place: Range,
    job: tuple[str, str],
    span: Span | None,
    flare: PlacedFlare | None = None,
) -> Cut:
    """Return what is cut out of the end of the first of a pair over a range across.

    `job` are kind and role of the cut (`Feature`), `flare` how its sides slope.
    """
    copy, mate = pair
    box = bounded(region, corner.across, *place)
    is_guest = copy.axes[0] == corner.guest_axis
    axis = corner.guest_axis if is_guest else corner.host_axis
    side = corner.guest_end if is_guest else corner.host_end
    kind, role = job
    return Cut(copy.name, box, kind, role, axis, side, "slip", mate.part, span, flare=flare)
