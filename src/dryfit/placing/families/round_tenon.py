"""Round tenons of legs in bored holes: upright, or leaning as the legs are splayed."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from dryfit.joinery.cut import Placed
from dryfit.joinery.mortise_tenon import TenonSizes, tenon_box
from dryfit.joinery.proportions import edge_shoulder, glue_gap
from dryfit.joinery.round_tenon import round_tenon
from dryfit.joinery.splay import splay_of
from dryfit.piece.declared import Contact, JointWords
from dryfit.placing.found import Found
from dryfit.placing.free_places import Around
from dryfit.placing.lines import with_sizes_added
from dryfit.placing.not_fitting import Wrong, not_fitting
from dryfit.placing.site import Site
from dryfit.placing.splays import lean_of
from dryfit.placing.tenon_words import details, is_through, wedges
from dryfit.placing.tenons import report_no_end
from dryfit.quantities.units import INCH

_ZERO = Fraction(0)
_RULE = "B3"


def find(site: Site, contact: Contact, guest: Placed, host: Placed, around: Around) -> Found | None:
    """Return the round tenon of a part that enters another with an end."""
    region, joint = guest.box.overlap(host.box), contact.joint
    if region is None or joint is None:
        return None
    axis = guest.axes[0]
    at_low = region.low[axis] == guest.box.low[axis]
    if at_low == (region.high[axis] == guest.box.high[axis]):
        report_no_end(site, contact, guest, host, around.placed)
        return None
    end = -1 if at_low else 1
    sizes = replace(_sizes(site, contact, joint, guest, host), length=region.extent(axis))
    lean = lean_of(site, guest, region.low[2])
    return Found(
        "round tenon",
        guest.name,
        host.name,
        tenon_box(guest, region, sizes),
        contact.span,
        shares=region,
        clearance=sizes.gap,
        glued=True,
        end=(axis, end),
        # The barrel of the tenon; pi to two places is near enough for glue.
        area=Fraction(314, 100) * sizes.thickness * region.extent(axis),
        cuts=round_tenon(
            (guest, host), region, end, sizes, splay_of(lean) if lean else None, contact.span
        ),
        tenon=sizes,
    )


def _sizes(
    site: Site, contact: Contact, joint: JointWords, leg: Placed, host: Placed
) -> TenonSizes:
    """Return diameter and place, in the middle of the leg.

    Findings: round-tenon-does-not-fit.  The usual tenon is five eighths of the leg, in whole
    fives of a mm or eighths of an inch (common practice).
    """
    along, wide, thick = leg.axes
    display = site.declared.display
    least = min(leg.box.extent(wide), leg.box.extent(thick))
    diameter, most = joint.thickness, least - 2 * edge_shoulder(display)
    if diameter is None:
        step = Fraction(5) if display.unit == "mm" else INCH / 8
        diameter = least * Fraction(5, 8) // step * step
        phrase = f"{site.shown(diameter)} thick"
        text = f"the round tenons of the {site.written(leg.part)} are {phrase}"
        site.assume_line(text, joint.span, with_sizes_added(joint.head, phrase))
    deep, through = host.box.extent(along), is_through(joint)
    wrong = None
    if not 0 < diameter <= most:
        wrong = Wrong(
            f"{leg.part}: a round tenon {site.shown(diameter)} thick leaves no shoulder on "
            f"{site.shown(least)}",
            f"at most {site.shown(most)}, or make the {site.written(leg.part)} thicker",
            {"tenon": diameter, "leg": least},
            _RULE,
        )
    elif through and joint.length not in {None, deep}:
        wrong = Wrong(
            f"{leg.part}: a round tenon through {host.part} is {site.shown(deep)} long",
            "leave its length out; it follows from the host",
            {"through": deep},
            _RULE,
        )
    if wrong is not None:
        not_fitting(site, contact, "round-tenon-does-not-fit", wrong)
        diameter = min(max(diameter, Fraction(1)), least)
    return TenonSizes(
        length=_ZERO,
        thickness=diameter,
        width=diameter,
        gap=_ZERO if through else glue_gap(display),
        low_shoulder=(leg.box.extent(wide) - diameter) / 2,
        low_cheek=(leg.box.extent(thick) - diameter) / 2,
        through=through,
        wedges=_wedges(site, leg, joint),
        rounded=True,
    )


def _wedges(site: Site, leg: Placed, joint: JointWords) -> int:
    """Return how many wedges spread a tenon: one, unless the line says more."""
    said = details(joint, "wedges")
    if said and said[0].count is None:
        return 1
    return wedges(site, leg, joint, 1)
