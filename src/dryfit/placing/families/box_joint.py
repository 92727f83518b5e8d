"""Box joints: two boards at a corner, finger between finger (TRADE B13)."""

from __future__ import annotations

from fractions import Fraction

from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.joinery.box_joint import (
    LEAST,
    MOST,
    finger_sockets,
    fingers_in,
    glued_area,
    nearest_counts,
    nearest_widths,
    usual_finger,
)
from dryfit.joinery.corner import Corner, corner_of
from dryfit.joinery.cut import Placed
from dryfit.piece.declared import Contact, JointWords
from dryfit.placing.corners import no_corner
from dryfit.placing.found import Found
from dryfit.placing.free_places import Around
from dryfit.placing.lines import with_words
from dryfit.placing.not_fitting import Wrong, not_fitting
from dryfit.placing.site import Site

_RULE = "H12"
_CODE = "box-joint-does-not-fit"
_SAMPLE = Fraction(8)


def find(site: Site, contact: Contact, guest: Placed, host: Placed, _: Around) -> Found | None:
    """Return the box joint of two boards that end in one another at a corner."""
    region, joint = guest.box.overlap(host.box), contact.joint
    if region is None or joint is None:
        return None
    bare = Found(
        "box joint", guest.name, host.name, region, contact.span, shares=region, glued=True
    )
    corner = corner_of(guest, host, region)
    wrong = no_corner("a box joint", guest, host, corner, region) or _of_one_width(
        site, guest, host, corner
    )
    if corner is None or wrong is not None:
        if wrong is not None:
            not_fitting(site, contact, _CODE, wrong)
        return bare
    width = region.extent(corner.across)
    finger = joint.width or _usual(site, width, guest, host)
    wrong = _wrong(site, width, finger, guest)
    if wrong is not None or finger is None:
        if wrong is not None:
            not_fitting(site, contact, _CODE, wrong)
        return bare
    _assume(site, joint, (guest, host), finger)
    count = fingers_in(width, finger)
    assert count is not None
    if count % 2 == 0:
        _even(site, contact, (guest, host), (width, count))
    return Found(
        "box joint",
        guest.name,
        host.name,
        region,
        contact.span,
        shares=region,
        glued=True,
        area=glued_area(region, corner, count),
        cuts=finger_sockets(guest, host, region, corner, finger, contact.span),
        fingers=count,
    )


def _usual(site: Site, width: Fraction, guest: Placed, host: Placed) -> Fraction | None:
    thin = min(placed.box.extent(placed.axes[2]) for placed in (guest, host))
    return usual_finger(width, thin, finger_cutters(site))


def finger_cutters(site: Site) -> tuple[Fraction, ...]:
    """Return the widths that the shop's saw and router table cut in one pass, in the maker's units.

    All of them where none is such a width.
    """
    widths: dict[Fraction, None] = {}
    for cutter in (*site.shop.cutters_at("router table"), *site.shop.cutters_at("table saw")):
        width = cutter.narrowest
        widths[width] = None
        while cutter.step and width + cutter.step <= cutter.widest:
            width += cutter.step
            widths[width] = None
    display = site.declared.display
    own = tuple(width for width in widths if not display.moved(width, fitted=True))
    return own or tuple(widths)


def _of_one_width(site: Site, guest: Placed, host: Placed, corner: Corner | None) -> Wrong | None:
    if corner is None:
        return None
    sizes = [placed.box.extent(corner.across) for placed in (guest, host)]
    ends = [
        (placed.box.low[corner.across], placed.box.high[corner.across]) for placed in (guest, host)
    ]
    if ends[0] == ends[1]:
        return None
    shown = site.shown
    return Wrong(
        f"{guest.part} and {host.part} are {shown(sizes[0])} and {shown(sizes[1])} wide, or do not "
        "lie level: a box joint takes both from edge to edge",
        "give both one width and put their edges flush",
        {"width": sizes[0], "mate": sizes[1]},
        _RULE,
    )


def _wrong(site: Site, width: Fraction, finger: Fraction | None, guest: Placed) -> Wrong | None:
    """Return what keeps the fingers from filling the corner."""
    shown = site.shown
    if finger is None:
        return Wrong(
            f"no cutter of the shop divides the {shown(width)} of {guest.part} into fingers",
            f"write how wide they are, as in `box joint {shown(_SAMPLE)}`, and make the boards "
            "whole fingers wide",
            {"width": width},
            _RULE,
        )
    count = fingers_in(width, finger)
    if count is None and finger * LEAST <= width:
        below, above = nearest_widths(width, finger)
        fewer, more = nearest_counts(width, finger)
        times = f"{float(width / finger):.2f}".rstrip("0")
        return Wrong(
            f"fingers {shown(finger)} wide do not fill {shown(width)} of {guest.part}: they would "
            f"be {times}",
            f"make the boards {shown(below)} or {shown(above)} wide; or have {fewer} or {more} "
            f"fingers in all: `box joint {shown(width)} / {more}`",
            {"width": width, "finger": finger, "below": below, "above": above},
            _RULE,
        )
    if count is None or not LEAST <= count <= MOST:
        return Wrong(
            f"fingers {shown(finger)} wide make no joint of {shown(width)}: it takes {LEAST} to "
            f"{MOST}",
            "write narrower or wider ones"
            if count is None or count < LEAST
            else "write wider ones",
            {"width": width, "finger": finger},
            _RULE,
        )
    return None


def _even(
    site: Site, contact: Contact, pair: tuple[Placed, Placed], row: tuple[Fraction, int]
) -> None:
    """Tell that a corner does not look the same from both edges (TRADE H13)."""
    width, count = row
    fewer, more = nearest_counts(width, width / count)
    site.tell_once(
        Diagnostic(
            "fingers-even",
            Severity.NOTICE,
            f"{pair[0].part} and {pair[1].part}: {count} fingers and sockets are an even number: "
            "at one edge a finger begins, at the other a socket",
            contact.span,
            rule="H13",
            figures={"width": width},
            hints=(
                Hint(
                    f"to have both edges alike write `box joint {site.shown(width)} / {fewer}` or "
                    f"`/ {more}`, or make the boards one finger wider or narrower"
                ),
            ),
        )
    )


def _assume(site: Site, joint: JointWords, pair: tuple[Placed, Placed], finger: Fraction) -> None:
    if joint.width is not None:
        return
    words = f"box joint {site.shown(finger)}"
    text = f"{pair[0].part} and {pair[1].part}: fingers {site.shown(finger)} wide"
    site.assume_line(text, joint.span, with_words(joint.head, words))
