"""Butt joints with screws (TRADE B17)."""

from __future__ import annotations

from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.geometry.box import Box
from dryfit.joinery.cut import Placed
from dryfit.joinery.screws import BROAD, driving, longer_of, screw_holes, screw_places
from dryfit.piece.declared import Contact
from dryfit.placing.families.finding import faced
from dryfit.placing.found import Found
from dryfit.placing.free_places import Around
from dryfit.placing.runner_seats import RUNS_IN
from dryfit.placing.site import Site


def find(site: Site, contact: Contact, guest: Placed, host: Placed, _: Around) -> Found | None:
    """Return the screws between two faces that touch."""
    touch = faced(guest, host)
    if touch is None:
        return None
    region, (axis, side) = touch
    hidden = _is_false_front(site, contact)
    driven = driving(guest, host, (axis, side), region.low[axis], from_host=hidden)
    if driven is None:
        no_screw(site, contact, guest, host, axis)
        return Found("screws", guest.name, host.name, region, contact.span)
    # Where other joints leave the screws no wood, `screw_room` moves them.
    middle_one = _held_across(site, guest, host, region) or _held_across(site, host, guest, region)
    places = screw_places(region, axis, middle_one=middle_one)
    cuts = screw_holes(driven, places, contact.span)
    return Found("screws", guest.name, host.name, region, contact.span, cuts=cuts)


def _is_false_front(site: Site, contact: Contact) -> bool:
    """Return whether a front that stands in an opening is screwed on from inside (TRADE K8)."""
    return contact.face == "front" and bool(site.contacts(contact.guest.part, "in"))


def _held_across(site: Site, broad: Placed, mate: Placed, region: Box) -> bool:
    """Return whether a row of screws holds a broad board across its grain to what keeps its size.

    Then the screw in the middle holds it, and it moves to both sides of that (TRADE B18).
    """
    _, wide, thin = broad.axes
    flat = region.extent(thin) == 0 and longer_of(region, thin) == wide
    if site.part(broad.part).stock == "sheet" or not flat:
        return False
    runs = site.contacts(mate.part, RUNS_IN)
    moves_along = bool(runs) or (site.part(mate.part).stock != "sheet" and mate.axes[0] != wide)
    return not moves_along and min(broad.box.extent(wide), region.extent(wide)) > BROAD


def no_screw(site: Site, contact: Contact, guest: Placed, host: Placed, axis: int) -> None:
    """Report, once, that no screw is long enough to go through one part into the other."""
    thin = min(guest.box.extent(axis), host.box.extent(axis))
    finding = Diagnostic(
        "no-screw-fits",
        Severity.ERROR,
        f"no screw holds {guest.part} to {host.part}: it would have to pass {site.shown(thin)}",
        contact.span,
        rule="H18",
        figures={"passes": thin},
        hints=(Hint("name another joint, such as `tenon` or `housing`, or use thinner wood"),),
    )
    site.tell_once(finding)
