"""Grooves: a panel that floats in its frame (TRADE B9)."""

from __future__ import annotations

from dataclasses import replace

from dryfit.joinery.cut import Cut, Placed, bounded
from dryfit.joinery.housing import panel_groove
from dryfit.piece.declared import Contact
from dryfit.placing.found import Found
from dryfit.placing.free_places import Around
from dryfit.placing.panels import groove_depth
from dryfit.placing.site import Site
from dryfit.placing.slid_panels import slid


def find(site: Site, contact: Contact, guest: Placed, host: Placed, around: Around) -> Found | None:
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
    cut = panel_groove(guest, host, region, (axis, side), gap, contact.span)
    passed = _passed(site, guest, around)
    if passed is not None:
        cut = _open_behind(guest, host, passed, cut)
    return Found(
        "groove" if passed is None else "slid panel",
        guest.name,
        host.name,
        region,
        contact.span,
        shares=region,
        clearance=gap,
        end=(axis, -side),
        cuts=(cut,),
    )


def _passed(site: Site, panel: Placed, around: Around) -> Placed | None:
    """Return what a panel slides in under or over, or None where it is captured all round."""
    under = slid(site, site.part(panel.part))
    if under is None:
        return None
    (seat,) = (each for each in site.guests(under) if each.name == panel.name)
    names = (mate.name for mate in site.mates(under, seat))
    return next((around.placed[name] for name in names if name in around.placed), None)


def _open_behind(panel: Placed, host: Placed, passed: Placed, cut: Cut) -> Cut:
    """Return the groove of a panel that slides in past a part, run out at the end towards that."""
    along = next(axis for axis in panel.axes[:2] if axis != passed.axes[0])
    if host.axes[0] != along:
        return cut
    beyond = passed.box.low[along] + passed.box.high[along]
    if beyond > panel.box.low[along] + panel.box.high[along]:
        open_box = bounded(cut.box, along, cut.box.low[along], host.box.high[along])
    else:
        open_box = bounded(cut.box, along, host.box.low[along], cut.box.high[along])
    return replace(cut, box=open_box)
