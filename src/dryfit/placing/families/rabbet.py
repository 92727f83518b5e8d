"""Rabbet joints: the end of a part in a step cut at the end or edge of another (TRADE B8)."""

from __future__ import annotations

from dryfit.geometry.box import Box
from dryfit.joinery.cut import Placed
from dryfit.joinery.rabbets import open_side, rabbet
from dryfit.piece.declared import Contact
from dryfit.placing.families.finding import entered_face, face_area
from dryfit.placing.found import Found
from dryfit.placing.free_places import Around
from dryfit.placing.not_fitting import Wrong, not_fitting
from dryfit.placing.site import Site

_RULE = "B8"


def find(site: Site, contact: Contact, guest: Placed, host: Placed, _: Around) -> Found | None:
    """Return the rabbet in the host that a part enters, at an end or an edge of the host."""
    region = guest.box.overlap(host.box)
    if region is None:
        return None
    axis, side = entered_face(guest, host, region)
    wrong = _wrong(site, (guest, host), region, axis)
    if wrong is not None:
        not_fitting(site, contact, "rabbet-does-not-fit", wrong)
        return Found("rabbet", guest.name, host.name, region, contact.span, glued=True)
    opening = open_side(region, host, axis)
    lip = face_area(region, opening[0]) if opening else 0
    return Found(
        "rabbet",
        guest.name,
        host.name,
        region,
        contact.span,
        shares=region,
        glued=True,
        end=(axis, -side),
        area=face_area(region, axis) + lip,
        cuts=(rabbet(guest, host, region, (axis, side), contact.span),),
    )


def _wrong(site: Site, pair: tuple[Placed, Placed], region: Box, axis: int) -> Wrong | None:
    guest, host = pair
    thick, deep = host.box.extent(axis), region.extent(axis)
    if deep >= thick:
        return Wrong(
            f"the {guest.part} enters the {host.part} by {site.shown(deep)}, right through its "
            f"{site.shown(thick)}, so that no rabbet is left",
            f"write `rabbet {site.shown(thick / 2)}` or a little more: a lip has to stand",
            {"depth": deep, "thickness": thick},
            _RULE,
        )
    if open_side(region, host, axis) is None:
        away = (
            min(
                abs(gap)
                for each in host.axes
                if each != axis
                for gap in (
                    region.low[each] - host.box.low[each],
                    host.box.high[each] - region.high[each],
                )
                if gap
            )
            if any(
                region.extent(each) < host.box.extent(each) for each in host.axes if each != axis
            )
            else thick
        )
        return Wrong(
            f"a rabbet is open at an end or an edge, and the {guest.part} stands "
            f"{site.shown(away)} from that of the {host.part}",
            f"write `housing`, or put the {guest.part} flush with the {host.part}",
            {"away": away},
            _RULE,
        )
    return None
