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


def entered_face(guest: Placed, host: Placed, region: Box) -> tuple[int, int]:
    """Return the face (axis, side) of a host that a part enters: with an end, or with an edge."""
    axis = next(
        (
            each
            for each in guest.axes
            if region.extent(each) != guest.box.extent(each)
            and region.extent(each) < host.box.extent(each)
        ),
        guest.axes[0],
    )
    return axis, _side_of(host, region, axis)


def panel_edge(panel: Placed, host: Placed, region: Box) -> tuple[int, int]:
    """Return the face (axis, side) of a member that the edge of a panel enters."""
    axis = next(
        (
            each
            for each in panel.axes[:2]
            if each != host.axes[0] and region.extent(each) < host.box.extent(each)
        ),
        panel.axes[0],
    )
    return axis, _side_of(host, region, axis)


def _side_of(host: Placed, region: Box, axis: int) -> int:
    return 1 if region.high[axis] == host.box.high[axis] else -1
