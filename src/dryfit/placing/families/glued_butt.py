"""Faces glued on each other, with no cut (TRADE B16, G8)."""

from __future__ import annotations

from dryfit.joinery.cut import Placed
from dryfit.piece.declared import Contact
from dryfit.placing.families.finding import face_area
from dryfit.placing.found import Found
from dryfit.placing.free_places import Around
from dryfit.placing.site import Site


def find(_: Site, contact: Contact, guest: Placed, host: Placed, __: Around) -> Found | None:
    """Return the glue between two faces that touch."""
    touch = guest.box.contact(host.box)
    if touch is None:
        return None
    axis, region = touch
    area = face_area(region, axis)
    return Found("glued butt", guest.name, host.name, region, contact.span, glued=True, area=area)
