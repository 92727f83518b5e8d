"""Butt joints with screws (TRADE B17)."""

from __future__ import annotations

from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.joinery.cut import Placed
from dryfit.joinery.screws import driving, screw_holes, screw_places
from dryfit.piece.declared import Contact
from dryfit.placing.families.finding import faced
from dryfit.placing.found import Found
from dryfit.placing.free_places import Around
from dryfit.placing.site import Site


def find(site: Site, contact: Contact, guest: Placed, host: Placed, _: Around) -> Found | None:
    """Return the screws between two faces that touch."""
    touch = faced(guest, host)
    if touch is None:
        return None
    region, (axis, side) = touch
    driven = driving(guest, host, (axis, side))
    if driven is None:
        _no_screw(site, contact, guest, host, axis)
        return Found("screws", guest.name, host.name, region, contact.span)
    # Where other joints leave the screws no wood, `screw_room` moves them.
    cuts = screw_holes(driven, screw_places(region, axis), contact.span)
    return Found("screws", guest.name, host.name, region, contact.span, cuts=cuts)


def _no_screw(site: Site, contact: Contact, guest: Placed, host: Placed, axis: int) -> None:
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
    if finding not in site.findings:
        site.findings.append(finding)
