"""Panels in rabbets: the back of a case, dropped in from behind (TRADE B8, B24)."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from dryfit.geometry.box import Box
from dryfit.joinery.cut import Cut, Placed, bounded
from dryfit.joinery.rabbets import back_rabbet, nearer_side
from dryfit.piece.declared import Contact
from dryfit.placing.families.finding import face_area, panel_edge
from dryfit.placing.found import Found
from dryfit.placing.free_places import Around
from dryfit.placing.late_joints import first_stage_of
from dryfit.placing.not_fitting import Wrong, not_fitting
from dryfit.placing.rabbeted_panels import play_at_an_edge, rabbet_depth
from dryfit.placing.site import Site

_RULE = "B8"


def find(site: Site, contact: Contact, guest: Placed, host: Placed, around: Around) -> Found | None:
    """Return the rabbet in one member of the frame in which the edge of a panel lies."""
    region = guest.box.overlap(host.box)
    depth = rabbet_depth(site, contact)
    if region is None or depth is None:
        return None
    axis, side = panel_edge(guest, host, region)
    gap = depth - region.extent(axis)
    wrong = _wrong(site, (guest, host), depth, axis)
    if wrong is not None:
        not_fitting(site, contact, "rabbet-does-not-fit", wrong)
    glued = _glued(site, contact)
    cut = back_rabbet(guest, host, region, (axis, side), gap, contact.span)
    row = _row(site, contact, guest, host, around)
    return Found(
        "back rabbet",
        guest.name,
        host.name,
        region,
        contact.span,
        shares=region,
        clearance=gap,
        glued=glued,
        end=(axis, -side),
        area=face_area(region, guest.axes[2]) if glued else Fraction(0),
        cuts=_cuts(site, cut, row, guest.axes[1], host),
    )


def _row(site: Site, contact: Contact, guest: Placed, host: Placed, around: Around) -> list[Box]:
    """Return what the boards side by side, of which one is the guest, have of a host, in order."""
    (own,) = (each for each in site.guests(contact) if each.name == guest.name)
    row = [each.name for each in site.guests(contact) if each.within == own.within]
    boxes = (around.placed[name].box.overlap(host.box) for name in row)
    return [box for box in boxes if box is not None]


def _cuts(site: Site, cut: Cut, row: list[Box], across: int, host: Placed) -> tuple[Cut, ...]:
    """Return the one rabbet in which boards lie side by side, as that of the first of them."""
    if len(row) < 2 or row[0].low[across] == row[-1].low[across]:
        return (cut,)
    if cut.box.low[across] != row[0].low[across]:
        return ()
    end = min(row[-1].high[across] + play_at_an_edge(site), host.box.high[across])
    return (replace(cut, box=bounded(cut.box, across, cut.box.low[across], end)),)


def _glued(site: Site, contact: Contact) -> bool:
    """Return whether a back of sheet goods is glued in: where a glue-up names it (TRADE B8)."""
    part = site.part(contact.guest.part)
    stage = first_stage_of(site, part.name)
    if stage is None:
        return False
    if part.stock != "sheet":
        text = f"a back of solid wood moves, and glue in its rabbets would split the {part.name}"
        remedy = f"leave the {part.written} out of `glue up {stage}`: it is put in afterwards"
        not_fitting(site, contact, "rabbet-does-not-fit", Wrong(text, remedy, {}, _RULE))
        return False
    site.assume_line(
        f"the {part.written} {'is' if part.count == 1 else 'are'} glued into the rabbets, as "
        f"glue up {stage} says, and squares what it closes",
        contact.span,
        None,
    )
    return True


def _wrong(site: Site, pair: tuple[Placed, Placed], depth: Fraction, axis: int) -> Wrong | None:
    guest, host = pair
    thick, normal = host.box.extent(axis), guest.axes[2]
    if depth >= thick:
        return Wrong(
            f"the rabbet for the {guest.part} is {site.shown(depth)} deep in "
            f"{site.shown(thick)} of {host.part}, so that no lip is left",
            f"write `rabbet {site.shown(thick / 2)}` or less",
            {"depth": depth, "thickness": thick},
            _RULE,
        )
    outer = nearer_side(guest.box, host.box, normal)
    low, high = guest.box.low[normal], guest.box.high[normal]
    beyond = high - host.box.high[normal] if outer > 0 else host.box.low[normal] - low
    if beyond > 0:
        return Wrong(
            f"the {guest.part} stands {site.shown(beyond)} out of its rabbet in the {host.part}",
            f"leave out where the {guest.part} lies: it is then flush",
            {"beyond": beyond},
            _RULE,
        )
    return None
