"""Tenons side by side: how wide each is and where they stand across the rail (TRADE B3.1, B3.3)."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from dryfit.diagnostics import Diagnostic, Hint, Severity, Span
from dryfit.joinery.cut import Placed
from dryfit.joinery.mortise_tenon import Haunch, TenonSizes
from dryfit.joinery.proportions import LEAST_END_GRAIN, edge_shoulder, usual_tenon_width
from dryfit.piece.declared import JointWords
from dryfit.placing.lines import with_sizes_added, with_words
from dryfit.placing.panels import groove_depth
from dryfit.placing.site import Site
from dryfit.placing.tenon_lengths import rounded_down
from dryfit.placing.tenon_words import Shoulders, details, shoulders
from dryfit.quantities.units import INCH

ZERO = Fraction(0)


@dataclass(frozen=True, slots=True)
class Row:
    """Tenons side by side: how many, how wide each, with what between, and their usual place.

    `low_shoulder` is at the low coordinate of the rail's width; `usual` says that neither number
    nor shoulders nor a haunch are written.
    """

    count: int
    width: Fraction
    between: Fraction
    low_shoulder: Fraction
    usual: bool

    @property
    def whole(self) -> Fraction:
        """Return the width from the first tenon to the last."""
        return self.count * self.width + (self.count - 1) * self.between


def row_of_tenons(
    site: Site, rail: Placed, host: Placed, joint: JointWords, thickness: Fraction
) -> Row:
    """Return the tenons of one rail end across its width, as written or as is usual.

    Findings: tenon-side-unclear, shoulders-clash.
    """
    wide = rail.box.extent(rail.axes[1])
    count, stated = joint.count or 1, shoulders(site, rail, joint)
    if stated.written:
        return _between_shoulders(site, rail, joint, (count, wide), stated)
    if count > 1:
        return _evenly_spaced(site, rail, joint, count, thickness)
    if details(joint, "haunch"):
        return _beside_haunch(site, rail, host, joint, thickness)
    width = _width(site, rail, host, joint, thickness)
    return Row(1, width, ZERO, _usual_shoulder(site, rail, host, wide - width), usual=True)


def _between_shoulders(
    site: Site,
    rail: Placed,
    joint: JointWords,
    size: tuple[int, Fraction],
    stated: Shoulders,
) -> Row:
    count, wide = size
    grooves, least = grooves_in(site, rail), edge_shoulder(site.declared.display)
    width = joint.width
    whole = None if width is None else width * (2 * count - 1)
    low, high = stated.low, stated.high
    if low is None:
        low = max(least, grooves[0]) if whole is None else wide - (high or ZERO) - whole
    if high is None:
        high = max(least, grooves[1]) if whole is None else wide - low - whole
    left = wide - low - high
    if width is None:
        width = left / (2 * count - 1)
    elif count == 1 and left != width:
        _clash(site, rail, joint, (low, width, high))
    between = ZERO if count == 1 else (left - count * width) / (count - 1)
    if width <= 0 or between < 0 or (count > 1 and between == 0):
        return _none_fits(wide)
    return Row(count, width, between, low, usual=False)


def _none_fits(wide: Fraction) -> Row:
    # What lies off the rail is reported where its place is settled.
    return Row(1, wide / 2, ZERO, Fraction(-1), usual=False)


def _clash(
    site: Site, rail: Placed, joint: JointWords, sizes: tuple[Fraction, Fraction, Fraction]
) -> None:
    show, wide = site.shown, rail.box.extent(rail.axes[1])
    low, width, high = sizes
    finding = Diagnostic(
        "shoulders-clash",
        Severity.ERROR,
        f"{rail.part}: shoulders of {show(low)} and {show(high)} and a tenon {show(width)} wide "
        f"make {show(sum(sizes, ZERO))}, but it is {show(wide)} wide",
        joint.span,
        "H03",
        {"sum": sum(sizes, ZERO), "width": wide},
        hints=(Hint("leave one of the three out"),),
    )
    site.tell_once(finding)


def _evenly_spaced(
    site: Site, rail: Placed, joint: JointWords, count: int, thickness: Fraction
) -> Row:
    # Between twin tenons at least half of a tenon is left (TRADE B3.1); shoulders are as wide.
    wide, display = rail.box.extent(rail.axes[1]), site.declared.display
    width = joint.width
    if width is None:
        # At the end of a host the outer shoulders are what keeps its end grain whole (H10).
        evenly = wide / (count + Fraction(count + 1, 2))
        clear = (wide - 2 * LEAST_END_GRAIN) / (count + Fraction(count - 1, 2))
        width = rounded_down(min(evenly, clear, 5 * thickness), display)
        assume_phrase(site, rail, joint, f"{site.shown(width)} wide")
    left = wide - count * width
    least = LEAST_END_GRAIN if joint.width is None else ZERO
    between = min(left / (count + 1), (left - 2 * least) / (count - 1))
    between = rounded_down(between, display)
    if width <= 0 or between <= 0:
        return _none_fits(wide)
    site.assume_line(
        f"the {count} tenons of the {site.written(rail.part)} stand {site.shown(between)} apart, "
        "and the rest of the width is shoulder, alike at both edges",
        joint.span,
        None,
    )
    shoulder = (wide - count * width - (count - 1) * between) / 2
    return Row(count, width, between, shoulder, usual=False)


def _beside_haunch(
    site: Site, rail: Placed, host: Placed, joint: JointWords, thickness: Fraction
) -> Row:
    # A third of the rail for the haunch, a shoulder at the other edge (TRADE B3.3).
    side, display = _haunch_side(rail, host), site.declared.display
    wide = rail.box.extent(rail.axes[1])
    grooves = grooves_in(site, rail)
    least = edge_shoulder(display)
    other = max(least, grooves[0] if side > 0 else grooves[1])
    width = joint.width
    if width is None:
        width = rounded_down(min(wide * 2 / 3 - other, 5 * thickness), display)
        assume_phrase(site, rail, joint, f"{site.shown(width)} wide")
    if width <= 0:
        return _none_fits(wide)
    low = other if side > 0 else wide - other - width
    return Row(1, width, ZERO, low, usual=False)


def _haunch_side(rail: Placed, host: Placed) -> int:
    # The haunch fills the corner: it goes to the edge that is nearer to the host's end.
    wide = rail.axes[1]
    if host.axes[0] != wide:
        return 1
    before = rail.box.low[wide] - host.box.low[wide]
    behind = host.box.high[wide] - rail.box.high[wide]
    return -1 if before < behind else 1


def haunch_of(
    site: Site, rail: Placed, host: Placed, joint: JointWords, sizes: TenonSizes
) -> Haunch | None:
    """Return the haunch beside a tenon, or None; it fills the shoulder unless less is said.

    Findings: haunch-too-long.
    """
    said = details(joint, "haunch")
    if not said:
        return None
    side = _haunch_side(rail, host)
    high = rail.box.extent(rail.axes[1]) - sizes.low_shoulder - sizes.whole_width
    shoulder = sizes.low_shoulder if side < 0 else high
    written = dict(said[0].sizes)
    length = written.get("length")
    if length is None:
        usual = site.declared.display.either(Fraction(10), INCH * 3 / 8)
        length = min(max(grooves_in(site, rail)) or usual, sizes.length / 2)
        shown = site.shown(length)
        line = _with_haunch(said[0].span, f"haunch {shown} long")
        text = f"the haunches of the {site.written(rail.part)} are {shown} long"
        site.assume_line(text, said[0].span, line)
    if shoulder <= 0:
        return None
    if length >= sizes.length:
        _haunch_too_long(site, rail, joint, length, sizes.length)
    reach = min(written.get("depth", shoulder), shoulder)
    return Haunch(side, min(length, sizes.length), reach)


def _with_haunch(span: Span, phrase: str) -> str:
    """Return the line with the length of a haunch, behind all else of a `haunched tenon`."""
    words = span.text()
    if words.lower().endswith(("tenon", "tenons")):
        return f"{with_words(span, words.split()[-1]).rstrip(',')}, {phrase}"
    return with_words(span, phrase)


def _haunch_too_long(
    site: Site, rail: Placed, joint: JointWords, length: Fraction, tenon: Fraction
) -> None:
    show = site.shown
    finding = Diagnostic(
        "haunch-too-long",
        Severity.ERROR,
        f"{rail.part}: a haunch {show(length)} long is no shorter than its tenon, {show(tenon)}",
        joint.span,
        "H23",
        {"length": length, "tenon": tenon},
        hints=(Hint("about the tenon's thickness is usual; or leave it out for a wider tenon"),),
    )
    site.tell_once(finding)


def _width(
    site: Site, rail: Placed, host: Placed, joint: JointWords, thickness: Fraction
) -> Fraction:
    if joint.width is None:
        # Listed as an assumption once it is known that it finds room.
        return usual_width(site, rail, host, thickness)
    return min(joint.width, rail.box.extent(rail.axes[1]))


def usual_width(site: Site, rail: Placed, host: Placed, thickness: Fraction) -> Fraction:
    """Return the usual width of one tenon of that thickness in that host."""
    wide, display = rail.axes[1], site.declared.display
    least = edge_shoulder(display)
    shoulders = sum((max(least, groove) for groove in grooves_in(site, rail)), Fraction(0))
    width = usual_tenon_width(rail.box.extent(wide), thickness, shoulders, display)
    return min(width, _room_across(host, wide, least))


def _usual_shoulder(site: Site, rail: Placed, host: Placed, spare: Fraction) -> Fraction:
    # Centred in what a groove leaves; near the host's end as far in as the groove lets it.
    wide = rail.axes[1]
    low_groove, high_groove = grooves_in(site, rail)
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


def assume_phrase(site: Site, rail: Placed, joint: JointWords, phrase: str) -> None:
    """List what was assumed of a tenon, with the line that says it."""
    text = f"the tenons of {site.written(rail.part)} are {phrase}"
    site.assume_line(text, joint.span, with_sizes_added(joint.head, phrase))


def _room_across(host: Placed, wide: int, wall: Fraction) -> Fraction:
    # A tenon that is wide across its host needs wood on both sides of the mortise.
    if host.axes[0] == wide:
        return host.box.extent(wide)
    return max(host.box.extent(wide) - 2 * wall, host.box.extent(wide) / 3)


def grooves_in(site: Site, rail: Placed) -> tuple[Fraction, Fraction]:
    """Return what panel grooves take of a rail's width at its low and its high edge (B3.3)."""
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
