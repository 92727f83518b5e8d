"""Screws that hold what lies in rabbets: through the panel into the floor of the rabbet (B24)."""

from __future__ import annotations

from dryfit.joinery.cut import Placed, bounded
from dryfit.joinery.rabbets import nearer_side
from dryfit.joinery.screws import driving, screw_holes, screw_places
from dryfit.piece.declared import Contact
from dryfit.placing.found import Found
from dryfit.placing.free_places import Around
from dryfit.placing.site import Site


def find(site: Site, contact: Contact, guest: Placed, host: Placed, _: Around) -> Found | None:
    """Return the screws of a panel into one member; a row of boards is held at its ends only."""
    region = guest.box.overlap(host.box)
    if region is None:
        return None
    boards = site.part(guest.part).count > 1
    if boards and host.axes[0] == guest.axes[0]:
        # A board that is screwed along its edge as well cannot move.
        return None
    normal = guest.axes[2]
    side = nearer_side(guest.box, host.box, normal)
    floor = guest.box.low[normal] if side > 0 else guest.box.high[normal]
    contact_face = bounded(region, normal, floor, floor)
    driven = driving(guest, host, (normal, side))
    if driven is None:
        return None
    places = screw_places(contact_face, normal)
    if boards:
        middle = tuple((contact_face.low[i] + contact_face.high[i]) / 2 for i in range(3))
        places = ((middle[0], middle[1], middle[2]),)
    cuts = screw_holes(driven, places, contact.span)
    return Found("screws", guest.name, host.name, contact_face, contact.span, cuts=cuts)
