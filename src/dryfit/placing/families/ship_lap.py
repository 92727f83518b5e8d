"""Ship laps between the boards of a row, half over half (TRADE B24)."""

from __future__ import annotations

from dryfit.joinery.cut import Placed
from dryfit.joinery.ship_lap import ship_lap
from dryfit.piece.declared import Contact
from dryfit.placing.board_rows import tongue_length
from dryfit.placing.found import Found
from dryfit.placing.free_places import Around
from dryfit.placing.lines import with_sizes_added
from dryfit.placing.not_fitting import Wrong, not_fitting
from dryfit.placing.site import Site

_KIND = "ship lap"


def find(site: Site, contact: Contact, guest: Placed, host: Placed, _: Around) -> Found | None:
    """Return the lap of a board over the next one of its row."""
    joint, wide = contact.joint, guest.axes[1]
    region = guest.box.overlap(host.box)
    if region is None or joint is None or guest.box.low[wide] >= host.box.low[wide]:
        return None
    length, width = tongue_length(site, joint), guest.box.extent(wide)
    if length > width / 3:
        wrong = Wrong(
            f"a lap {site.shown(length)} long is too long for {guest.part}, {site.shown(width)} "
            "wide",
            "write a shorter lap, or fewer and wider boards",
            {"length": length, "width": width},
            "B24",
        )
        not_fitting(site, contact, "tongue-does-not-fit", wrong)
        return Found(_KIND, guest.name, host.name, region, contact.span, shares=region)
    if joint.length is None:
        said = f"{site.shown(length)} long"
        line = with_sizes_added(joint.head, said)
        site.assume_line(f"the ship laps of {guest.part} are {said}", joint.span, line)
    return Found(
        _KIND,
        guest.name,
        host.name,
        region,
        contact.span,
        shares=region,
        clearance=length - region.extent(wide),
        cuts=ship_lap(guest, host, length, contact.span),
    )
