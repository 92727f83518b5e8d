"""Compound mitres, at the corners of a box whose sides slope: by hand, to lines on four sides.

No scale of a saw shows its angles, so the lines are drawn from figures in mm, and the cut is proved
on scrap (common practice).  A saw that turns and tilts cuts all of them at one tilt: the outer face
lies down both times, the upper edge at the fence for one end, the lower edge for the other with the
saw turned as far to the other side; the side that lies down stays the longer one.
"""

from __future__ import annotations

from fractions import Fraction

from dryfit.geometry.frame import OPPOSITE
from dryfit.joinery.sloping import SlopingEnd, sloping_end
from dryfit.operations.cut import Cut, Site
from dryfit.operations.minutes import worked
from dryfit.plan.operation import Detail
from dryfit.quantities import Display
from dryfit.quantities.units import INCH
from dryfit.shop.shop import Shop

CHECK = (
    "two corners held together on a flat board close inside and outside, and their upper edges "
    "stand square; opposite sides laid together are equal"
)

_AS_PLAIN = 2
"""Lines on four sides, none of them square: as long as two plain mitres by hand (from memory)."""


def compound_cut(site: Site, display: Display, shop: Shop) -> Cut:
    """Return the cut of a compound mitre, all of its lines in mm."""
    feature, part = site.feature, site.part
    ((down, slope),) = feature.slopes
    end = sloping_end(slope, part.width, part.thickness)
    return Cut(
        site=site,
        what="mitre",
        kind="mitre",
        station="bench",
        settings=(),
        hold=None,
        passes=(),
        exact=worked(shop, "hand mitre", each=_AS_PLAIN * len(site.copies)),
        deed="Saw and plane the compound mitres on",
        check=CHECK,
        details=(
            _lines(site, down, end),
            _bevels(site, end, display),
            (
                (
                    "Saw a hair outside the lines, planing to all four of them after; a first "
                    "corner in scrap of the same section shows whether it closes"
                ),
            ),
            _at_a_saw(site, down, end),
        ),
        slopes=feature.slopes,
    )


def _sides(site: Site) -> tuple[str, str]:
    """Return the outer face and the inner one."""
    form = site.feature.form
    assert form is not None
    assert form.toward is not None
    return OPPOSITE[form.toward], form.toward


def _lines(site: Site, down: str, end: SlopingEnd) -> Detail:
    outer, inner = _sides(site)
    up = OPPOSITE[down]
    return (
        (
            f"{site.feature.id}: nothing off at the corner of {outer} and {up}, which is the long "
            "point; back from the end "
        ),
        end.lower,
        f" at the corner of {outer} and {down}, ",
        end.inner,
        f" at {inner} and {up}, ",
        end.lower + end.inner,
        f" at {inner} and {down}. Join these four points round the board",
    )


def _bevels(site: Site, end: SlopingEnd, display: Display) -> Detail:
    part = site.part
    up = Fraction(200) if display.unit == "mm" else 8 * INCH
    return (
        "A bevel for the faces is set to a line ",
        up,
        " up from the edge of a board and ",
        up * end.lower / part.width,
        " aside, one for the edges to ",
        up * end.inner / part.thickness,
        " aside",
    )


def _at_a_saw(site: Site, down: str, end: SlopingEnd) -> Detail:
    outer, up = _sides(site)[0], OPPOSITE[down]
    mitre, tilt = (f"{float(each):.2f}" for each in (end.angles.mitre, end.angles.tilt))
    return (
        (
            f"Where you have a saw that turns and tilts, and its manual lets it take a board so: "
            f"{outer} down on its table, the blade tilted {tilt} degrees so that {outer} stays the "
            f"longer face, the saw turned {mitre} degrees so that {up} stays the longer edge. One "
            f"end with {up} at the fence, the other with {down} at the fence and the saw turned as "
            "far to the other side; the stop "
        ),
        site.part.length,
        f" away, both times to the long point at {up}. Set it by scrap, not by its scale",
    )
