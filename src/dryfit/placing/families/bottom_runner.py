"""Runners below the sides of the drawer that stands on them (TRADE B21.3)."""

from __future__ import annotations

from dryfit.joinery.cut import Placed
from dryfit.piece.declared import Contact
from dryfit.placing.found import Found
from dryfit.placing.free_places import Around
from dryfit.placing.site import Site

UP = 2


def find(_: Site, contact: Contact, guest: Placed, host: Placed, __: Around) -> Found | None:
    """Return where the lower edge of a host stands on a guest; it slides there, without glue."""
    touch = guest.box.contact(host.box)
    if touch is None or touch[0] != UP or guest.box.high[UP] != host.box.low[UP]:
        return None
    return Found("bottom runner", guest.name, host.name, touch[1], contact.span, dry=True)
