"""The sizes and place of a tenon: as written, else by the proportions of the trade."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from functools import partial
from types import MappingProxyType

from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.geometry.box import Box
from dryfit.joinery.cut import Placed
from dryfit.joinery.mortise_tenon import TenonSizes, tenon_box
from dryfit.joinery.proportions import (
    LEAST_END_GRAIN,
    edge_shoulder,
    glue_gap,
    usual_tenon_thickness,
    usual_tenon_width,
)
from dryfit.piece.declared import PLACE_SIDE, Contact, JointWords
from dryfit.placing.lines import with_words
from dryfit.placing.panels import groove_depth
from dryfit.placing.site import Site
from dryfit.placing.tenon_lengths import (
    first_neighbour,
    length_remedy,
    longest_words,
    tenon_range,
)
from dryfit.placing.tenon_widths import ask_about_narrow


def tenon_sizes(
    site: Site, contact: Contact, rail: Placed, host: Placed, region: Box
) -> TenonSizes:
    """Return the tenon of one rail end; what is not written is listed as an assumption.

    Findings: tenon-too-thick, tenon-too-long, tenon-off-rail, tenon-misses-host, tenon-narrow.
    """
    display, joint = site.declared.display, contact.joint
    if joint is None:
        raise AssertionError(contact)
    thickness = _thickness(site, rail, joint)
    width = _width(site, rail, host, joint, thickness)
    low_shoulder, low_cheek = _place(site, rail, host, joint, (width, thickness))
    if joint.width is None:
        bare = (low_shoulder, rail.box.extent(rail.axes[1]) - low_shoulder - width)
        usual = partial(_usual_width, site, rail, host)
        ask_about_narrow(site, joint, rail, (width, thickness), bare, usual)
    gap = min(glue_gap(display), _room(rail, host, region))
    if gap:
        shown = display.with_unit(gap)
        site.assume_line(f"mortises are {shown} deeper than their tenons, for the glue", None, None)
    sizes = TenonSizes(
        length=region.extent(rail.axes[0]),
        thickness=thickness,
        width=width,
        gap=gap,
        low_shoulder=low_shoulder,
        low_cheek=low_cheek,
    )
    _look_inside_host(site, joint, rail, host, tenon_box(rail, region, sizes))
    return sizes


def _thickness(site: Site, rail: Placed, joint: JointWords) -> Fraction:
    of_rail = rail.box.extent(rail.axes[2])
    cutters = tuple(cutter.narrowest for cutter in site.shop.cutters_at("mortiser"))
    usual = usual_tenon_thickness(of_rail, cutters, site.declared.display)
    if joint.thickness is None:
        _assume(site, rail, joint, f"{site.shown(usual)} thick")
        return usual
    if joint.thickness >= of_rail:
        shown = site.shown
        _error(
            site,
            joint,
            "tenon-too-thick",
            f"a tenon {shown(joint.thickness)} thick cannot be cut on {rail.part}, which is "
            f"{shown(of_rail)} thick",
            f"a third is usual: write `{shown(usual)} thick`",
        )
    return min(joint.thickness, of_rail)


def _width(
    site: Site, rail: Placed, host: Placed, joint: JointWords, thickness: Fraction
) -> Fraction:
    if joint.width is None:
        width = _usual_width(site, rail, host, thickness)
        _assume(site, rail, joint, f"{site.shown(width)} wide")
        return width
    return min(joint.width, rail.box.extent(rail.axes[1]))


def _usual_width(site: Site, rail: Placed, host: Placed, thickness: Fraction) -> Fraction:
    wide, display = rail.axes[1], site.declared.display
    least = edge_shoulder(display)
    shoulders = sum((max(least, groove) for groove in _grooves(site, rail)), Fraction(0))
    width = usual_tenon_width(rail.box.extent(wide), thickness, shoulders, display)
    return min(width, _room_across(host, wide, least))


def _place(
    site: Site, rail: Placed, host: Placed, joint: JointWords, size: tuple[Fraction, Fraction]
) -> tuple[Fraction, Fraction]:
    # The edge shoulder and the cheek at the low coordinates; `size` is width and thickness.
    _, wide, thick = rail.axes
    spare_width = rail.box.extent(wide) - size[0]
    spare_thickness = rail.box.extent(thick) - size[1]
    low_shoulder = _usual_shoulder(site, rail, host, spare_width)
    low_cheek = spare_thickness / 2
    if joint.place is not None:
        axis, side = PLACE_SIDE[joint.place.place]
        value = joint.place.value
        if axis == wide:
            low_shoulder = value if side < 0 else spare_width - value
        elif axis == thick:
            low_cheek = value if side < 0 else spare_thickness - value
    if joint.width and joint.width > rail.box.extent(wide):
        low_shoulder = Fraction(-1)
    if not (0 <= low_shoulder <= spare_width and 0 <= low_cheek <= spare_thickness):
        _error(
            site,
            joint,
            "tenon-off-rail",
            f"this tenon does not lie within {rail.part}, {site.shown(rail.box.extent(wide))} x "
            f"{site.shown(rail.box.extent(thick))}",
            "make it narrower, or place it nearer to the middle",
        )
    return (
        min(max(low_shoulder, Fraction(0)), spare_width),
        min(max(low_cheek, Fraction(0)), spare_thickness),
    )


def _usual_shoulder(site: Site, rail: Placed, host: Placed, spare: Fraction) -> Fraction:
    # Centred in what a groove leaves; near the host's end as far in as the groove lets it.
    wide = rail.axes[1]
    low_groove, high_groove = _grooves(site, rail)
    shoulder = (spare + low_groove - high_groove) / 2
    if low_groove != high_groove and host.axes[0] == wide:
        before = rail.box.low[wide] - host.box.low[wide] + shoulder
        behind = host.box.high[wide] - rail.box.high[wide] + spare - shoulder
        if high_groove and before < LEAST_END_GRAIN:
            shoulder = spare - high_groove
        elif low_groove and behind < LEAST_END_GRAIN:
            shoulder = low_groove
    # A tenon too wide for what is left keeps within the rail, and is reported as grooved.
    return max(Fraction(0), min(shoulder, spare))


def _look_inside_host(
    site: Site, joint: JointWords, rail: Placed, host: Placed, tenon: Box
) -> None:
    if host.box.contains(tenon):
        return
    axis = next(a for a in rail.axes if not _within(tenon, host.box, a))
    _error(
        site,
        joint,
        "tenon-misses-host",
        f"the tenon of {rail.part} is {site.shown(tenon.extent(axis))} where {host.part} is "
        f"{site.shown(host.box.extent(axis))}: it does not lie within it",
        "make the tenon narrower or thinner, or move one of the two",
    )


def _within(inner: Box, outer: Box, axis: int) -> bool:
    return outer.low[axis] <= inner.low[axis] and inner.high[axis] <= outer.high[axis]


def report_no_end(
    site: Site, contact: Contact, rail: Placed, host: Placed, placed: Mapping[str, Placed]
) -> None:
    """Report that what should be tenoned into a host does not end in it."""
    joint, axis, display = contact.joint, rail.axes[0], site.declared.display
    deep = host.box.extent(axis)
    if joint is not None and joint.length is not None and joint.length > deep:
        thickness = joint.thickness or rail.box.extent(rail.axes[2]) / 3
        alone = tenon_range(deep, thickness, display)
        neighbour = _neighbour(site, contact, rail, host, placed)
        allowed = tenon_range(deep, thickness, display, neighbour)
        _error(
            site,
            joint,
            "tenon-too-long",
            f"{rail.part}: a tenon {site.shown(joint.length)} long comes out on the far side of "
            f"{host.part}, {site.shown(deep)} deep; {longest_words(alone, display)}",
            length_remedy(allowed, joint.length, host.part, display),
            {"length": joint.length, "longest": alone.longest},
        )
    elif joint is not None:
        _error(
            site,
            joint,
            "tenon-not-at-an-end",
            f"{rail.part} passes through {host.part}, but a tenon is cut at an end",
            "shorten it to end in its host, or name a half lap",
        )


def _neighbour(
    site: Site, contact: Contact, rail: Placed, host: Placed, placed: Mapping[str, Placed]
) -> Fraction | None:
    # Before any mortise is cut: where the other rails of this host will have theirs.
    axis = rail.axes[0]
    middles = [box.low[axis] + box.high[axis] for box in (rail.box, host.box)]
    others = [
        _core(placed[seat.name], other.joint)
        for other in site.declared.contacts
        if other is not contact and other.joint is not None and other.joint.kind == "tenon"
        for seat in site.guests(other)
        if placed[seat.name].axes[0] != axis and placed[seat.name].box.overlap(host.box)
    ]
    side = -1 if middles[0] < middles[1] else 1
    return first_neighbour(rail.box, axis, host.box, side, others)


def _core(rail: Placed, joint: JointWords) -> Box:
    # The middle of a rail, as thick as its tenons.
    thick = rail.axes[2]
    of_rail = rail.box.extent(thick)
    cheek = (of_rail - min(joint.thickness or of_rail / 3, of_rail)) / 2
    low, high = list(rail.box.low), list(rail.box.high)
    low[thick] += cheek
    high[thick] -= cheek
    return Box((low[0], low[1], low[2]), (high[0], high[1], high[2]))


def _error(
    site: Site,
    joint: JointWords,
    code: str,
    message: str,
    remedy: str,
    figures: Mapping[str, Fraction] = MappingProxyType({}),
) -> None:
    finding = Diagnostic(
        code, Severity.ERROR, message, joint.span, "H03", figures, hints=(Hint(remedy),)
    )
    if finding not in site.findings:
        site.findings.append(finding)


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
