"""H09 from its other side: a tenon that the rule of five thicknesses makes narrow in a wide rail.

TRADE B3.1 gives a tenon at most five times its thickness; in a wide rail that leaves so much wood
bare at the edges that the rail may cup.  Half of the rail's width is the least that is usual for an
apron (common practice); the remedy is a thicker tenon, not a wider one.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.piece.declared import JointWords
from dryfit.placing.site import Site


def ask_about_narrow(
    site: Site,
    joint: JointWords,
    rail: str,
    section: tuple[Fraction, Fraction],
    tenon: tuple[Fraction, Fraction],
) -> None:
    """Ask, once a joint, about a worked-out tenon of less than half of its rail's width.

    `section` is the rail's width and thickness, `tenon` the tenon's.  Findings: tenon-narrow.
    """
    (wide, thick), (width, thickness) = section, tenon
    # Narrower than four thicknesses it is for another reason: a groove, or its host's room.
    if 2 * width >= wide or width < 4 * thickness:
        return
    cutters = sorted({cutter.narrowest for cutter in site.shop.cutters_at("mortiser")})
    finding = Diagnostic(
        "tenon-narrow",
        Severity.QUESTION,
        f"{rail}: at five times its thickness the tenon is {site.shown(width)} wide and leaves "
        f"{site.shown((wide - width) / 2)} of the rail bare above and below; is that enough?",
        joint.span,
        rule="H09",
        figures={"width": width, "rail": wide},
        hints=(Hint(_remedy(site, wide, _thicker(cutters, wide, thick, thickness))),),
    )
    if finding not in site.findings:
        site.findings.append(finding)


def _thicker(
    cutters: Sequence[Fraction], wide: Fraction, thick: Fraction, thickness: Fraction
) -> Fraction | None:
    # The thinnest that makes half of the rail, of those that leave it enough shoulder.
    fitting = [cutter for cutter in cutters if thickness < cutter <= thick / 2]
    enough = [cutter for cutter in fitting if 10 * cutter >= wide]
    return next(iter(enough or fitting[-1:]), None)


def _remedy(site: Site, wide: Fraction, thicker: Fraction | None) -> str:
    if thicker is None:
        return f"write its width, such as `{site.shown(wide / 2)} wide`, or use a thicker rail"
    gives = min(5 * thicker, wide * Fraction(6, 10))
    return (
        f"write `{site.shown(thicker)} thick`, which gives {site.shown(gives)}, or write its width"
    )
