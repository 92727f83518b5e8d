"""Housings: the end or edge of a board let into a face (TRADE B7)."""

from __future__ import annotations

from fractions import Fraction

from dryfit.geometry.box import Box
from dryfit.joinery.cut import Placed
from dryfit.joinery.housing import housing
from dryfit.piece.declared import Contact
from dryfit.placing.families.finding import entered_face, face_area
from dryfit.placing.found import Found
from dryfit.placing.free_places import Around
from dryfit.placing.site import Site


def find(_: Site, contact: Contact, guest: Placed, host: Placed, __: Around) -> Found | None:
    """Return the housing of a part that enters a face whole."""
    region = guest.box.overlap(host.box)
    if region is None:
        return None
    axis, side = entered_face(guest, host, region)
    return Found(
        "housing",
        guest.name,
        host.name,
        region,
        contact.span,
        shares=region,
        glued=True,
        end=(axis, -side),
        area=_housed_area(region, axis),
        cuts=(housing(guest, host, region, (axis, side), contact.span),),
    )


def _housed_area(region: Box, axis: int) -> Fraction:
    """Return the area at the bottom of a housing and along both of its walls, in mm2."""
    along = max(region.extent(other) for other in range(3) if other != axis)
    return face_area(region, axis) + 2 * region.extent(axis) * along
