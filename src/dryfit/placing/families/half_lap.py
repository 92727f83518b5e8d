"""Half laps: two parts that cross, each cut away for the other (TRADE B1)."""

from __future__ import annotations

from dryfit.joinery.cut import Placed
from dryfit.joinery.half_lap import half_lap
from dryfit.piece.declared import Contact
from dryfit.placing.crossing import lap_axis, shown_part
from dryfit.placing.families.finding import face_area
from dryfit.placing.found import Found
from dryfit.placing.free_places import Around
from dryfit.placing.site import Site


def find(site: Site, contact: Contact, guest: Placed, host: Placed, _: Around) -> Found | None:
    """Return the lap of two parts that cross in one plane."""
    region = guest.box.overlap(host.box)
    axis = lap_axis(site.part(guest.part), site.part(host.part))
    if region is None or axis is None:
        return None
    depth, shows = contact.joint.depth if contact.joint else None, shown_part(contact)
    return Found(
        "half lap",
        guest.name,
        host.name,
        region,
        contact.span,
        shares=region,
        glued=True,
        area=face_area(region, axis),
        cuts=half_lap(guest, host, region, axis, contact.span, depth, shows=shows),
    )
