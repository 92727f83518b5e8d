"""Grooves: a panel that floats in its frame (TRADE B9)."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from dryfit.geometry.box import Box
from dryfit.joinery.cut import Cut, Placed, bounded
from dryfit.joinery.housing import panel_groove
from dryfit.piece.declared import Contact
from dryfit.placing.families.finding import panel_edge
from dryfit.placing.found import Found
from dryfit.placing.free_places import Around
from dryfit.placing.not_fitting import Wrong, not_fitting
from dryfit.placing.panels import groove_depth
from dryfit.placing.site import Site
from dryfit.placing.slid_panels import UP, slid


def find(site: Site, contact: Contact, guest: Placed, host: Placed, around: Around) -> Found | None:
    """Return the groove of a panel's edge in one of its frame's members."""
    region = guest.box.overlap(host.box)
    if region is None:
        return None
    axis, side = panel_edge(guest, host, region)
    depth = groove_depth(site, contact)
    gap = depth - region.extent(axis)
    thinned, region = _thinned(site, contact, (guest, host), region, (axis, side), depth)
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
        cuts=(cut, *thinned),
    )


def _thinned(
    site: Site,
    contact: Contact,
    pair: tuple[Placed, Placed],
    region: Box,
    surface: tuple[int, int],
    depth: Fraction,
) -> tuple[tuple[Cut, ...], Box]:
    """Return the rabbet along a panel's edge where its groove is narrower, and what then enters.

    The rabbet is as wide as the groove is deep, so that its shoulder has as much play as the edge;
    it lies below, behind or inside, where it is not seen (TRADE B20).
    """
    guest, host = pair
    width = contact.joint.width if contact.joint else None
    normal = guest.axes[2]
    thick = guest.box.extent(normal)
    if width is None or width == thick:
        return (), region
    if width > thick:
        wrong = Wrong(
            f"the groove is {site.shown(width)} wide, and the {guest.part} {site.shown(thick)} "
            "thick would rattle in it",
            f"leave out the width: the groove is then as wide as the {guest.part} is thick",
            {"width": width, "thickness": thick},
            "H22",
        )
        not_fitting(site, contact, "rabbet-does-not-fit", wrong)
        return (), region
    hidden = -1 if normal == UP else -guest.outward[normal]
    low, high = guest.box.low[normal], guest.box.high[normal]
    kept = (high - width, high) if hidden < 0 else (low, low + width)
    gone = (low, high - width) if hidden < 0 else (low + width, high)
    axis, side = surface
    edge = guest.box.low[axis] if side > 0 else guest.box.high[axis]
    strip = bounded(guest.box, axis, *sorted((edge, edge + side * depth)))
    strip = bounded(strip, normal, *gone)
    cut = Cut(
        guest.name, strip, "rabbet", "rabbet", normal, hidden, "move", host.part, contact.span
    )
    return (cut,), bounded(region, normal, *kept)


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
