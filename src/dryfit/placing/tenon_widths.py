"""H09 from its other side: a tenon that the rule of five thicknesses makes narrow in a wide rail.

TRADE B3.1 gives a tenon at most five times its thickness; in a wide rail that leaves so much wood
bare at the edges that the rail may cup.  Half of the rail's width is the least that is usual for an
apron (common practice); the remedy is a thicker tenon, not a wider one.
"""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction

from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.joinery.cut import Placed
from dryfit.piece.declared import JointWords
from dryfit.placing.site import Site

HARMLESS = Fraction(25)
"""A strip of this width beside a tenon stays flat by itself (a guess of ours)."""

_BESIDE = (("left of", "right of"), ("in front of", "behind"), ("below", "above"))
"""The words for the low and the high side along each axis of the piece."""

Strips = tuple[Fraction, Fraction]
UsualWidth = Callable[[Fraction], Fraction]


def ask_about_narrow(
    site: Site,
    joint: JointWords,
    rail: Placed,
    tenon: tuple[Fraction, Fraction],
    bare: Strips,
    usual: UsualWidth,
) -> None:
    """Ask, once a joint, about a worked-out tenon of less than half of its rail's width.

    `tenon` is its width and thickness, `bare` the strips at the low and the high edge, `usual`
    gives the width that goes with another thickness.  Findings: tenon-narrow.
    """
    width, thickness = tenon
    wide, thick = (rail.box.extent(axis) for axis in rail.axes[1:])
    # Narrower than four thicknesses it is for another reason: a groove, or its host's room.
    if 2 * width >= wide or width < 4 * thickness or max(bare) <= HARMLESS:
        return
    finding = Diagnostic(
        "tenon-narrow",
        Severity.QUESTION,
        f"{rail.part}: at five times its thickness the tenon is {site.shown(width)} wide and "
        f"leaves {_strips(site, rail.axes[1], bare)}; is that enough?",
        joint.span,
        rule="H09",
        figures={"width": width, "rail": wide},
        hints=(Hint(_remedy(site, wide, _thicker(site, thickness, thick, wide, usual), usual)),),
    )
    site.tell_once(finding)


def _strips(site: Site, axis: int, bare: Strips) -> str:
    (low, high), (before, after) = (site.shown(strip) for strip in bare), _BESIDE[axis]
    if low == high:
        return f"{low} of the rail bare {before} and {after} it"
    return f"{low} of the rail bare {before} it and {high} {after} it"


def _thicker(
    site: Site, thickness: Fraction, thick: Fraction, wide: Fraction, usual: UsualWidth
) -> Fraction | None:
    # The thinnest that makes half of the rail, else the thickest that leaves it enough shoulder;
    # of a size that is printed as it is, where the shop has one.
    display = site.declared.display
    cutters = sorted({cutter.narrowest for cutter in site.shop.cutters_at("mortiser")})
    fitting = [cutter for cutter in cutters if thickness < cutter <= thick / 2]
    fitting = [cutter for cutter in fitting if not display.moved(cutter)] or fitting
    enough = [cutter for cutter in fitting if 2 * usual(cutter) >= wide]
    return next(iter(enough or fitting[-1:]), None)


def _remedy(site: Site, wide: Fraction, thicker: Fraction | None, usual: UsualWidth) -> str:
    if thicker is None:
        return f"write its width, such as `{site.shown(wide / 2)} wide`, or use a thicker rail"
    return (
        f"write `{site.shown(thicker)} thick`, which gives {site.shown(usual(thicker))}, or write "
        "its width"
    )
