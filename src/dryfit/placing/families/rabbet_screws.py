"""Screws that hold what stands or lies in rabbets (TRADE B8, B24).

A panel is screwed to the floor of its rabbet, what stands in a corner through the lip before it.
"""

from __future__ import annotations

from dryfit.joinery.cut import Placed, bounded
from dryfit.joinery.rabbets import nearer_side
from dryfit.joinery.screws import driving, screw_holes, screw_places
from dryfit.piece.declared import Contact
from dryfit.placing.families.finding import entered_face
from dryfit.placing.families.screws import no_screw
from dryfit.placing.found import Found
from dryfit.placing.free_places import Around
from dryfit.placing.site import Site


def find(site: Site, contact: Contact, guest: Placed, host: Placed, _: Around) -> Found | None:
    """Return the screws of a panel into one member, or of a part through the lip of a corner."""
    if any(each.in_rabbets for each in site.contacts(guest.part, "inside")):
        return _of_panel(site, contact, guest, host)
    return _through_lip(site, contact, guest, host)


def _through_lip(site: Site, contact: Contact, guest: Placed, host: Placed) -> Found | None:
    """Return the screws through the lip of a rabbet into the end or edge that stands in it."""
    region = guest.box.overlap(host.box)
    if region is None:
        return None
    axis, side = entered_face(guest, host, region)
    plane = region.low[axis] if side > 0 else region.high[axis]
    face = bounded(region, axis, plane, plane)
    if region.extent(axis) >= host.box.extent(axis):
        # That no lip is left is told by the rabbet.
        return Found("screws", guest.name, host.name, face, contact.span)
    driven = driving(guest, host, (axis, side), plane, from_host=True)
    if driven is None:
        no_screw(site, contact, guest, host, axis)
        return Found("screws", guest.name, host.name, face, contact.span)
    cuts = screw_holes(driven, screw_places(face, axis), contact.span)
    return Found("screws", guest.name, host.name, face, contact.span, cuts=cuts)


def _of_panel(site: Site, contact: Contact, guest: Placed, host: Placed) -> Found | None:
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
    driven = driving(guest, host, (normal, side), floor)
    if driven is None:
        return None
    places = screw_places(contact_face, normal)
    if boards:
        middle = tuple((contact_face.low[i] + contact_face.high[i]) / 2 for i in range(3))
        places = ((middle[0], middle[1], middle[2]),)
    cuts = screw_holes(driven, places, contact.span)
    return Found("screws", guest.name, host.name, contact_face, contact.span, cuts=cuts)
