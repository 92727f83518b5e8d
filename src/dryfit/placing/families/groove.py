"""Grooves: a panel that floats in its frame (TRADE B9)."""

from __future__ import annotations

from dryfit.joinery.cut import Placed
from dryfit.joinery.housing import panel_groove
from dryfit.piece.declared import Contact
from dryfit.placing.found import Found
from dryfit.placing.free_places import Around
from dryfit.placing.panels import groove_depth
from dryfit.placing.site import Site


def find(site: Site, contact: Contact, guest: Placed, host: Placed, _: Around) -> Found | None:
    """Return the groove of a panel's edge in one of its frame's members."""
    region = guest.box.overlap(host.box)
    if region is None:
        return None
    axis = next(
        (
            each
            for each in guest.axes[:2]
            if each != host.axes[0] and region.extent(each) < host.box.extent(each)
        ),
        guest.axes[0],
    )
    side = 1 if region.high[axis] == host.box.high[axis] else -1
    gap = groove_depth(site, contact) - region.extent(axis)
    return Found(
        "groove",
        guest.name,
        host.name,
        region,
        contact.span,
        shares=region,
        clearance=gap,
        end=(axis, -side),
        cuts=(panel_groove(guest, host, region, (axis, side), gap, contact.span),),
    )
