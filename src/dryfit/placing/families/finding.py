"""What a family of joints does here: it finds the joint that two copies have, if they meet."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction

from dryfit.geometry.box import Box
from dryfit.joinery.cut import Placed
from dryfit.piece.declared import Contact
from dryfit.placing.found import Found
from dryfit.placing.free_places import Around
from dryfit.placing.site import Site

Finder = Callable[[Site, Contact, Placed, Placed, Around], Found | None]
"""From a declared contact, its guest, its host, and all that stands around them."""


def faced(guest: Placed, host: Placed) -> tuple[Box, tuple[int, int]] | None:
    """Return where two copies touch, and which face (axis, side) of the host that is, or None."""
    touch = guest.box.contact(host.box)
    if touch is None:
        return None
    axis, region = touch
    return region, (axis, 1 if region.low[axis] == host.box.high[axis] else -1)


def face_area(region: Box, axis: int) -> Fraction:
    """Return the area of a box seen along an axis, in mm2."""
    first, second = (other for other in range(3) if other != axis)
    return region.extent(first) * region.extent(second)


def entering_axis(guest: Placed, host: Placed, region: Box) -> int:
    """Return the axis along which a part enters a face: its length unless an edge of it enters."""
    for axis in guest.axes:
        whole_guest = region.extent(axis) == guest.box.extent(axis)
        if not whole_guest and region.extent(axis) < host.box.extent(axis):
            return axis
    return guest.axes[0]
