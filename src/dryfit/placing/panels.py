"""A floating panel inside a frame: its edges stand in grooves, with room to swell."""

from __future__ import annotations

from fractions import Fraction
from functools import partial

from dryfit.joinery.panel import panel_gap
from dryfit.joinery.proportions import usual_groove_depth
from dryfit.piece.declared import Behind, Contact, DeclaredPart
from dryfit.placing.out_of_groove import tell_if_out
from dryfit.placing.positions import Face, Reason
from dryfit.placing.seats import Seat
from dryfit.placing.site import Site
from dryfit.placing.slid_panels import gap_at_the_sides, say_open_side, slid, usual_depth


def state_inside(site: Site, part: DeclaredPart, contact: Contact, seat: Seat) -> None:
    """Queue, for both directions of the panel's face, that it floats between its frame."""
    for axis in part.axes[:2]:
        site.pending.append(partial(_say_edges, site, part, contact, seat, axis))


def groove_depth(site: Site, contact: Contact) -> Fraction:
    """Return the depth of the groove that a panel stands in."""
    written = contact.joint.depth if contact.joint else None
    if written is not None:
        return written
    if slid(site, site.part(contact.guest.part)) is not None:
        return usual_depth(site, contact)
    return usual_groove_depth(site.declared.display)


def bounding_hosts(site: Site, contact: Contact, seat: Seat, axis: int) -> tuple[Seat, Seat] | None:
    """Return the frame members at the low and high edge of a panel along an axis.

    They are those that do not run along the axis; at each end the one that lies furthest out.
    None while a position is unknown.
    """
    middles: list[tuple[Fraction, Seat]] = []
    for host in frame_across(site, contact, seat, axis):
        low = site.positions.at(Face(host.name, axis, -1))
        high = site.positions.at(Face(host.name, axis, 1))
        if low is None or high is None:
            return None
        middles.append((low + high, host))
    if len(middles) < 2:
        return None
    ordered = sorted(middles, key=lambda entry: entry[0])
    return ordered[0][1], ordered[-1][1]


def frame_across(site: Site, contact: Contact, seat: Seat, axis: int) -> tuple[Seat, ...]:
    """Return the frame members that a panel may end at along an axis: those across it."""
    hosts = site.hosts(contact, seat, axis)
    return tuple(host for host in hosts if site.part(host.part).axes[0] != axis)


def _say_edges(site: Site, part: DeclaredPart, contact: Contact, seat: Seat, axis: int) -> bool:
    slides = slid(site, part) is not None
    across = frame_across(site, contact, seat, axis)
    if slides and len(across) == 1:
        depth = groove_depth(site, contact)
        return say_open_side(site, part, contact, (seat, across[0]), depth, axis)
    bounds = bounding_hosts(site, contact, seat, axis)
    if bounds is None:
        return False
    low, high = bounds
    sight = site.positions.distance(Face(low.name, axis, 1), Face(high.name, axis, -1))
    if sight is None:
        return False
    depth = groove_depth(site, contact)
    gap, words = (
        gap_at_the_sides(site, part, sight, depth, axis)
        if slides
        else panel_gap(
            sight,
            depth,
            along_grain=axis == part.axes[0],
            wood=None if part.stock == "sheet" else site.moving(part),
            display=site.declared.display,
        )
    )
    if words:
        site.assume(f"{part.name}: {words}", contact.span, None)
        tell_if_out(site, part, contact, gap, depth)
    behind = contact.joint.behind if contact.joint else Behind()
    show = site.declared.display.shown
    for host, side in ((low, -1), (high, 1)):
        reason = Reason(
            "into",
            f"groove in {host.part} less its gap",
            f"{seat.name} stands {show(depth - gap, fitted=True)} in the groove of {host.name}, "
            f"with {show(gap, fitted=True)} to spare",
            contact.span,
            figures=behind.figures,
            also=behind.spans,
            parts=((f"groove in {host.part}", depth), ("room in the groove", -gap)),
        )
        site.positions.add(
            Face(host.name, axis, -side), Face(seat.name, axis, side), side * (depth - gap), reason
        )
    return True
