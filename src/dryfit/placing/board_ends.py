"""Tenons with a tongue between them, as a plank has in its board ends (TRADE G5)."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.geometry.box import Box
from dryfit.joinery.board_end import plays, usual_board_end_tongue
from dryfit.joinery.cut import Placed
from dryfit.joinery.mortise_tenon import TenonSizes, tenon_boxes
from dryfit.piece.declared import JointWords
from dryfit.placing.lines import with_words
from dryfit.placing.site import Site
from dryfit.placing.tenon_words import details


def with_tongue(
    site: Site, joint: JointWords, pair: tuple[Placed, Placed], region: Box, sizes: TenonSizes
) -> TenonSizes:
    """Return the sizes with the tongue that is asked for, and the room of tenons that slide.

    Findings: tongue-too-long.
    """
    said = details(joint, "tongue")
    if not said:
        return sizes
    (rail, _), display = pair, site.declared.display
    length = next((dict(each.sizes).get("length") for each in said if each.sizes), None)
    if length is None:
        length = usual_board_end_tongue(display)
        text = f"the tongue of the {site.written(rail.part)} is {site.shown(length)} long"
        line = with_words(said[0].span, f"tongue {site.shown(length)} long")
        site.assume_line(text, said[0].span, line)
    if length >= sizes.length:
        _too_long(site, rail, joint, length, sizes.length)
        length = sizes.length / 2
    part = site.part(rail.part)
    wide = rail.axes[1]
    middles = [box.low[wide] + sizes.width / 2 for box in tenon_boxes(rail, region, sizes)]
    room: tuple[Fraction, ...] = ()
    if part.stock != "sheet":
        fixed = sum(middles, Fraction(0)) / len(middles)
        room = plays(middles, fixed, site.moving(part))
    if any(room):
        site.assume_line(
            f"the outer mortises and peg holes for the {site.written(rail.part)} are "
            f"{site.shown(max(room))} longer to either side, so that it can move",
            joint.span,
            None,
        )
    return replace(sizes, tongue=length, plays=room)


def _too_long(
    site: Site, rail: Placed, joint: JointWords, length: Fraction, tenon: Fraction
) -> None:
    shown = site.shown
    finding = Diagnostic(
        "tongue-too-long",
        Severity.ERROR,
        f"{rail.part}: a tongue {shown(length)} long is no shorter than its tenons, {shown(tenon)}",
        joint.span,
        "G5",
        {"length": length, "tenon": tenon},
        hints=(Hint("a third of the tenons' length is usual: it only lines the boards up"),),
    )
    site.tell_once(finding)
