"""Grooves: TRADE H22, as wide as the wood can bear, and inside the part that they are cut in."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from dryfit.checks.finding import finding, told_together
from dryfit.checks.regions import sizes, solid_parts
from dryfit.checks.slots import LEAST_WALL
from dryfit.diagnostics import Diagnostic, Severity
from dryfit.geometry.frame import LENGTH, SURFACES, THICKNESS, WIDTH
from dryfit.joinery.feature import Feature
from dryfit.placing.model import Model, Part

_WALL = Fraction(5)
"""Wood that should stand beside a groove; thinner walls break out when it is cut (common
practice)."""


def check_grooves(model: Model) -> Iterator[Diagnostic]:
    """Yield, once for a line of the notes, grooves that leave too little beside them.

    Findings: groove-wide, groove-past-edge.
    """
    yield from told_together(_wide_grooves(model))
    yield from told_together(_past_an_edge(model))


def _past_an_edge(model: Model) -> Iterator[Diagnostic]:
    """Yield grooves that take only some of the thickness of a panel: the rest stands beside."""
    plain = {part.name: part for part in model.parts if not part.features}
    for part in model.parts:
        told: set[str | None] = set()
        for feature in part.features:
            panel = plain.get(feature.mate or "")
            if feature.role != "groove" or panel is None or feature.mate in told:
                continue
            low, high = feature.across
            normal = SURFACES[feature.surface][0]
            size = sizes(part)[THICKNESS if normal == WIDTH else WIDTH]
            out = panel.thickness - (high - low)
            if normal != LENGTH and (low == 0 or high == size) and out > 0:
                told.add(feature.mate)
                yield _beside(model, part, panel, out, feature)


def _beside(model: Model, part: Part, panel: Part, out: Fraction, feature: Feature) -> Diagnostic:
    show = model.display.shown
    return finding(
        "H22",
        "groove-past-edge",
        Severity.ERROR,
        f"{part.name}: the {panel.name} stands {show(out)} out past its edge, and would have "
        f"{show(panel.thickness - out)} of a groove",
        feature.span,
        figures={"out": out, "thickness": panel.thickness},
        remedy=(
            f"places count from the outside of the piece: move the {panel.name} in by {show(out)} "
            f"at least, or by {show(out + _WALL)}, so that a wall stands beside it"
        ),
    )


def _wide_grooves(model: Model) -> Iterator[Diagnostic]:
    for part in solid_parts(model):
        told: set[str | None] = set()
        for feature in part.features:
            if feature.role == "groove" and feature.mate not in told:
                found = _too_wide(model, part, feature)
                if found is not None:
                    told.add(feature.mate)
                    yield found


def _too_wide(model: Model, part: Part, feature: Feature) -> Diagnostic | None:
    low, high = feature.across
    normal = SURFACES[feature.surface][0]
    size = sizes(part)[THICKNESS if normal == WIDTH else WIDTH]
    walls = [wall for wall in (low, size - high) if wall > 0]
    wide, wall = high - low, min(walls, default=Fraction(0))
    # What is open to an edge is a rebate and has one wall only.
    if normal == LENGTH or len(walls) < 2 or (wide * 2 <= size and wall >= _WALL):
        return None
    show = model.display.shown
    edge = f"the edge of the {feature.mate}" if feature.mate else "it"
    least = min(size / 2, size - 2 * _WALL)
    fits = least > 0 and (feature.mate is None or least < wide)
    return finding(
        "H22",
        "groove-wide",
        Severity.ERROR if wall < LEAST_WALL else Severity.WARNING,
        f"{part.name}: {feature.id} is {show(wide)} wide in {show(size)}, which leaves a wall of "
        f"{show(wall)}",
        feature.span,
        figures={"width": wide, "wall": wall},
        remedy=f"make {edge} {show(least)} {'thick' if feature.mate else 'wide'} or less"
        if fits
        else "use thicker wood there, or move the groove further in",
    )
