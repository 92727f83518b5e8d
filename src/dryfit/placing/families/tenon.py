"""Mortise and tenon, blind or through, haunched, wedged or pegged (TRADE B3-B5)."""

from __future__ import annotations

from dryfit.joinery.board_end import tongue_groove
from dryfit.joinery.cut import Placed
from dryfit.joinery.mortise_tenon import mortise_and_tenon, tenon_box
from dryfit.joinery.pegs import peg_holes
from dryfit.piece.declared import Contact
from dryfit.placing.board_ends import with_tongue
from dryfit.placing.found import Found
from dryfit.placing.free_places import Around
from dryfit.placing.site import Site
from dryfit.placing.tenon_words import proud_of
from dryfit.placing.tenons import report_no_end, tenon_sizes


def find(site: Site, contact: Contact, guest: Placed, host: Placed, around: Around) -> Found | None:
    """Return the mortise and tenon of a part that enters another with an end."""
    region = guest.box.overlap(host.box)
    if region is None:
        return None
    axis = guest.axes[0]
    at_low = region.low[axis] == guest.box.low[axis]
    at_high = region.high[axis] == guest.box.high[axis]
    if at_low == at_high:
        proud_at = _proud_end(contact, guest, host)
        if proud_at is None:
            report_no_end(site, contact, guest, host, around.placed)
        at_low = proud_at == -1
    end = -1 if at_low else 1
    sizes = tenon_sizes(site, contact, guest, host, region, end, around)
    if contact.joint is not None:
        sizes = with_tongue(site, contact.joint, (guest, host), region, sizes)
    return Found(
        "mortise and tenon",
        guest.name,
        host.name,
        tenon_box(guest, region, sizes),
        contact.span,
        shares=region,
        clearance=sizes.gap + sizes.floats,
        glued=True,
        end=(axis, end),
        area=2 * region.extent(axis) * sizes.width * sizes.count,
        cuts=(
            *mortise_and_tenon(guest, host, region, end, sizes, contact.span),
            *tongue_groove(guest, host, region, end, sizes, contact.span),
            *peg_holes(guest, host, region, end, sizes, contact.span),
        ),
        tenon=sizes,
    )


def _proud_end(contact: Contact, guest: Placed, host: Placed) -> int | None:
    """Return the end of a through tenon that stands out on the far side of its host, by as much."""
    axis, proud = guest.axes[0], proud_of(contact.joint)
    if not proud:
        return None
    low, high = host.box.low[axis] - guest.box.low[axis], guest.box.high[axis] - host.box.high[axis]
    return next((side for side, beyond in ((-1, low), (1, high)) if beyond == proud), None)
