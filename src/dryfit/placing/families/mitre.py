"""Mitres at the corner of two members, each of which runs to the outside (TRADE B12, H21)."""

from __future__ import annotations

from dryfit.geometry.box import Box
from dryfit.joinery.cut import Placed, end_in
from dryfit.joinery.mitre import closes, mitre_cuts
from dryfit.piece.declared import Contact
from dryfit.placing.found import Found
from dryfit.placing.free_places import Around
from dryfit.placing.not_fitting import Wrong, not_fitting
from dryfit.placing.site import Site

CODE = "mitre-does-not-close"
_RULE = "B12"


def find(site: Site, contact: Contact, guest: Placed, host: Placed, _: Around) -> Found | None:
    """Return the mitre of two members that end in one corner.  Findings: mitre-does-not-close."""
    region = guest.box.overlap(host.box)
    if region is None or guest.axes[0] == host.axes[0]:
        return None
    sides = end_in(guest, region), end_in(host, region)
    wrong = _wrong(site, guest, host, region, sides)
    if wrong is not None:
        not_fitting(site, contact, CODE, wrong)
        return Found("mitre", guest.name, host.name, region, contact.span, shares=region)
    assert sides[0] is not None
    assert sides[1] is not None
    third = 3 - guest.axes[0] - host.axes[0]
    # The face of a mitre is longer than the member is wide: 7/5 is near enough to buy glue by.
    area = region.extent(third) * region.extent(guest.axes[0]) * 7 / 5
    return Found(
        "mitre",
        guest.name,
        host.name,
        region,
        contact.span,
        shares=region,
        glued=True,
        area=area,
        cuts=mitre_cuts(guest, host, region, (sides[0], sides[1]), contact.span),
    )


def _wrong(
    site: Site, guest: Placed, host: Placed, region: Box, sides: tuple[int | None, int | None]
) -> Wrong | None:
    """Return what keeps two members from meeting in a mitre, or None."""
    shown = site.shown
    for placed, mate, side in ((guest, host, sides[0]), (host, guest, sides[1])):
        if side is None:
            return Wrong(
                f"a mitre joins two ends, and the {placed.part} runs on past the {mate.part}",
                f"let the {placed.part} end at the outside of the {mate.part}, or write `half lap`",
                {},
                _RULE,
            )
    if closes(guest, host, region):
        return None
    along, other = guest.axes[0], host.axes[0]
    third = 3 - along - other
    one, two = (placed.box.extent(axis) for placed, axis in ((guest, other), (host, along)))
    if one != two:
        return Wrong(
            f"a mitre of 45 degrees does not close where {guest.part} is {shown(one)} and "
            f"{host.part} {shown(two)} across the corner",
            "make both equally wide there, or write `half lap` or `tenon`",
            {"first": one, "second": two},
            _RULE,
        )
    first, second = guest.box.extent(third), host.box.extent(third)
    if first != second:
        return Wrong(
            f"the ends of {guest.part} and {host.part} do not match in a mitre: one is "
            f"{shown(first)} along it, the other {shown(second)}",
            "make both equal in that size, or write `half lap` or `tenon`",
            {"first": first, "second": second},
            _RULE,
        )
    return Wrong(
        f"{guest.part} and {host.part} do not lie in one plane, so that no mitre closes",
        "put them flush with one another",
        {},
        _RULE,
    )
