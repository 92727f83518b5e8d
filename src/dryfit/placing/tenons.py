"""The sizes and place of a tenon: as written, else by the proportions of the trade."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction
from functools import partial
from types import MappingProxyType

from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.geometry.box import Box
from dryfit.joinery.cut import Placed, bounded
from dryfit.joinery.mortise_tenon import TenonSizes, tenon_box
from dryfit.joinery.proportions import (
    edge_shoulder,
    glue_gap,
    usual_tenon_thickness,
)
from dryfit.piece.declared import PLACE_SIDE, Contact, JointWords
from dryfit.placing.floating_ends import floats_by
from dryfit.placing.free_places import Around, blocked_for, clear_place
from dryfit.placing.lines import with_sizes_added
from dryfit.placing.mortise_cutters import mortise_cutters
from dryfit.placing.site import SIDE_WORDS, Site
from dryfit.placing.tenon_lengths import (
    first_neighbour,
    length_remedy,
    longest_words,
    rounded_down,
    tenon_range,
)
from dryfit.placing.tenon_rows import (
    ZERO,
    Row,
    assume_phrase,
    grooves_in,
    haunch_of,
    row_of_tenons,
    usual_width,
)
from dryfit.placing.tenon_widths import ask_about_narrow
from dryfit.placing.tenon_words import (
    details,
    drawn,
    is_through,
    offset,
    pegs,
    proud_of,
    wedges,
)


def tenon_sizes(
    site: Site, contact: Contact, rail: Placed, host: Placed, region: Box, end: int, around: Around
) -> TenonSizes:
    """Return the tenon of one rail end; what is not written is listed as an assumption.

    Findings: tenon-too-thick, tenon-too-long, tenon-off-rail, tenon-misses-host, tenon-narrow,
    tenon-side-unclear.
    """
    display, joint = site.declared.display, contact.joint
    if joint is None:
        raise AssertionError(contact)
    floats = floats_by(site, site.part(rail.part), contact, rail.axes[0], end)
    thickness = _thickness(site, rail, joint)
    row = row_of_tenons(site, rail, host, joint, thickness)
    low_shoulder, low_cheek = _place(site, rail, joint, row, thickness)
    moved = _clear_place(site, contact, rail, row, (low_shoulder, low_cheek, thickness), around)
    if moved is not None:
        row = replace(row, width=moved[1])
        low_shoulder = moved[0]
    elif joint.width is None and row.usual:
        assume_phrase(site, rail, joint, f"{site.shown(row.width)} wide")
        bare = (low_shoulder, rail.box.extent(rail.axes[1]) - low_shoulder - row.whole)
        usual = partial(usual_width, site, rail, host)
        ask_about_narrow(site, joint, rail, (row.width, thickness), bare, usual)
    gap = min(glue_gap(display), _room(rail, host, region))
    if gap:
        shown = display.with_unit(gap)
        site.assume_line(f"mortises are {shown} deeper than their tenons, for the glue", None, None)
    count, peg = pegs(site, rail, joint, row.whole)
    sizes = TenonSizes(
        length=region.extent(rail.axes[0]) + floats,
        thickness=thickness,
        width=row.width,
        gap=gap,
        low_shoulder=low_shoulder,
        low_cheek=low_cheek,
        count=row.count,
        between=row.between,
        through=is_through(joint),
        proud=proud_of(joint),
        wedges=wedges(site, rail, joint, row.count),
        pegs=count,
        peg=peg,
        drawn=drawn(site, joint),
        floats=floats,
    )
    _check_through(site, joint, rail, host, sizes)
    sizes = replace(sizes, haunch=haunch_of(site, rail, host, joint, sizes))
    _look_inside_host(site, joint, rail, host, tenon_box(rail, region, sizes))
    return sizes


def _clear_place(
    site: Site,
    contact: Contact,
    rail: Placed,
    row: Row,
    sizes: tuple[Fraction, Fraction, Fraction],
    around: Around,
) -> tuple[Fraction, Fraction] | None:
    """Return shoulder and width of a tenon that was moved to where there is room, or None."""
    joint, wide = contact.joint, rail.axes[1]
    written = joint and joint.place and PLACE_SIDE[joint.place.place][0] == wide
    if joint is None or not row.usual or written or details(joint, "offset"):
        return None
    low_shoulder, low_cheek, thickness = sizes
    tenon = TenonSizes(ZERO, thickness, row.width, ZERO, low_shoulder, low_cheek)
    hosts = _entered_by(site, contact, rail, around)
    gap = glue_gap(site.declared.display)
    boxes = [_with_gap(rail, tenon_box(rail, common, tenon), gap) for _, common in hosts]
    blocked = blocked_for(around.occupied, rail, [host for host, _ in hosts], boxes)
    least = edge_shoulder(site.declared.display)
    low, high = (max(least, groove) for groove in grooves_in(site, rail))
    limits = (low, rail.box.extent(wide) - high)
    narrowest = max(row.width / 2, 2 * thickness) if joint.width is None else row.width
    found = clear_place((low_shoulder, low_shoulder + row.width), limits, blocked, narrowest)
    if found is None:
        return None
    (start, end), what = found
    width = row.width
    if end - start < width:
        width = rounded_down(end - start, site.declared.display)
    _say_moved(site, rail, joint, (start, width), what)
    return start, width


def _entered_by(
    site: Site, contact: Contact, rail: Placed, around: Around
) -> list[tuple[Placed, Box]]:
    hosts = (around.placed[seat.name] for host in contact.hosts for seat in site.named(host))
    return [(host, common) for host in hosts if (common := rail.box.overlap(host.box))]


def _with_gap(rail: Placed, tenon: Box, gap: Fraction) -> Box:
    axis = rail.axes[0]
    return bounded(tenon, axis, tenon.low[axis] - gap, tenon.high[axis] + gap)


def _say_moved(
    site: Site, rail: Placed, joint: JointWords, place: tuple[Fraction, Fraction], what: str
) -> None:
    start, width = (site.shown(length) for length in place)
    side = SIDE_WORDS[rail.axes[1], -1]
    phrase = f"{width} wide, {start} from {side}"
    text = f"the tenons of the {site.written(rail.part)} are {phrase}, clear of {what}"
    site.assume_line(text, joint.span, with_sizes_added(joint.head, phrase))


def _check_through(
    site: Site, joint: JointWords, rail: Placed, host: Placed, sizes: TenonSizes
) -> None:
    deep = host.box.extent(rail.axes[0])
    right = deep + sizes.proud
    if not sizes.through or joint.length in {None, right}:
        return
    show = site.shown
    proud = f" and {show(sizes.proud)} proud" if sizes.proud else ""
    _error(
        site,
        joint,
        "through-length",
        f"{rail.part}: a tenon through {host.part}, {show(deep)} deep{proud}, is {show(right)} "
        f"long, not {show(joint.length or deep)}",
        "leave its length out; it follows from the host and what is proud",
    )


def _thickness(site: Site, rail: Placed, joint: JointWords) -> Fraction:
    of_rail = rail.box.extent(rail.axes[2])
    usual = usual_tenon_thickness(of_rail, mortise_cutters(site), site.declared.display)
    if joint.thickness is None:
        assume_phrase(site, rail, joint, f"{site.shown(usual)} thick")
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


def _place(
    site: Site, rail: Placed, joint: JointWords, row: Row, thickness: Fraction
) -> tuple[Fraction, Fraction]:
    # The edge shoulder and the cheek at the low coordinates.
    _, wide, thick = rail.axes
    spare_width = rail.box.extent(wide) - row.whole
    spare_thickness = rail.box.extent(thick) - thickness
    low_shoulder, low_cheek = row.low_shoulder, spare_thickness / 2
    moved = offset(site, rail, joint)
    if moved is not None and moved[0] == wide:
        low_shoulder = spare_width / 2 + moved[1]
    elif moved is not None:
        low_cheek += moved[1]
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
        min(max(low_shoulder, Fraction(0)), max(spare_width, Fraction(0))),
        min(max(low_cheek, Fraction(0)), spare_thickness),
    )


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
    site.tell_once(finding)


def _room(rail: Placed, host: Placed, region: Box) -> Fraction:
    axis = rail.axes[0]
    return host.box.extent(axis) - region.extent(axis)
