"""The sizes and place of a tenon: as written, else by the proportions of the trade."""

from __future__ import annotations

from fractions import Fraction

from dryfit.geometry.box import Box
from dryfit.joinery.cut import Placed
from dryfit.joinery.mortise_tenon import TenonSizes
from dryfit.joinery.proportions import (
    edge_shoulder,
    glue_gap,
    usual_tenon_thickness,
    usual_tenon_width,
)
from dryfit.piece.declared import PLACE_SIDE, Contact, JointWords
from dryfit.placing.lines import with_words
from dryfit.placing.panels import groove_depth
from dryfit.placing.site import Site


def tenon_sizes(
    site: Site, contact: Contact, rail: Placed, host: Placed, region: Box
) -> TenonSizes:
    """Return the tenon of one rail end; what is not written is listed as an assumption."""
    display, joint = site.declared.display, contact.joint
    if joint is None:
        raise AssertionError(contact)
    _, wide, thick = rail.axes
    rail_width, rail_thickness = rail.box.extent(wide), rail.box.extent(thick)
    thickness = joint.thickness
    if thickness is None:
        cutters = tuple(cutter.narrowest for cutter in site.shop.cutters_at("mortiser"))
        thickness = usual_tenon_thickness(rail_thickness, cutters, display)
        _assume(site, rail, joint, f"{site.shown(thickness)} thick")
    low_groove, high_groove = _grooves(site, rail)
    least = edge_shoulder(display)
    width = joint.width
    if width is None:
        shoulders = max(least, low_groove) + max(least, high_groove)
        width = usual_tenon_width(rail_width, thickness, shoulders, display)
        width = min(width, _room_across(host, wide, least))
        _assume(site, rail, joint, f"{site.shown(width)} wide")
    low_shoulder = (rail_width - width) / 2
    if low_groove != high_groove:
        low_shoulder = low_groove or rail_width - width - high_groove
    low_cheek = (rail_thickness - thickness) / 2
    place = joint.place
    if place is not None:
        axis, side = PLACE_SIDE[place.place]
        if axis == wide:
            low_shoulder = place.value if side < 0 else rail_width - width - place.value
        elif axis == thick:
            low_cheek = place.value if side < 0 else rail_thickness - thickness - place.value
    gap = min(glue_gap(display), _room(rail, host, region))
    if gap:
        shown = display.with_unit(gap)
        site.assume_line(f"mortises are {shown} deeper than their tenons, for the glue", None, None)
    return TenonSizes(
        length=region.extent(rail.axes[0]),
        thickness=thickness,
        width=width,
        gap=gap,
        low_shoulder=low_shoulder,
        low_cheek=low_cheek,
    )


def _assume(site: Site, rail: Placed, joint: JointWords, phrase: str) -> None:
    text = f"the tenons of {site.written(rail.part)} are {phrase}"
    site.assume_line(text, joint.span, with_words(joint.span, f"{joint.span.text()} {phrase}"))


def _room(rail: Placed, host: Placed, region: Box) -> Fraction:
    axis = rail.axes[0]
    return host.box.extent(axis) - region.extent(axis)


def _room_across(host: Placed, wide: int, wall: Fraction) -> Fraction:
    # A tenon that is wide across its host needs wood on both sides of the mortise.
    if host.axes[0] == wide:
        return host.box.extent(wide)
    return max(host.box.extent(wide) - 2 * wall, host.box.extent(wide) / 3)


def _grooves(site: Site, rail: Placed) -> tuple[Fraction, Fraction]:
    # A panel groove in the rail's edge takes its depth from the tenon's width (TRADE B3.3).
    wide = rail.axes[1]
    low, high = Fraction(0), Fraction(0)
    for contact in site.declared.contacts:
        if contact.preposition == "inside" and any(h.part == rail.part for h in contact.hosts):
            depth = groove_depth(site, contact)
            if rail.outward[wide] < 0:
                high = depth
            else:
                low = depth
    return low, high
