"""One part lies on another without a fastener."""

from __future__ import annotations

from dryfit.joinery.cut import Placed
from dryfit.piece.declared import Contact
from dryfit.placing.found import Found
from dryfit.placing.free_places import Around
from dryfit.placing.site import Site


def find(_: Site, contact: Contact, guest: Placed, host: Placed, __: Around) -> Found | None:
    """Return where one part lies on another."""
    touch = guest.box.contact(host.box)
    if touch is None:
        return None
    return Found("rest", guest.name, host.name, touch[1], contact.span)
