"""TRADE H53: a tenon across the grain of what it goes into, a board that bears across its grain."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from dryfit.checks.finding import finding
from dryfit.checks.regions import solid_parts
from dryfit.diagnostics import Diagnostic, Severity
from dryfit.geometry.frame import LENGTH, THICKNESS
from dryfit.joinery.feature import Feature
from dryfit.kinds.joints import is_panelled
from dryfit.placing.model import Model, Part

_UPWARDS = 2
_HALF = Fraction(1, 2)


def check_grain(model: Model) -> Iterator[Diagnostic]:
    """Yield tenons that lie across the grain of their mate, and boards that bear across it.

    Findings: tenon-across-grain, grain-across-the-span.
    """
    for part in solid_parts(model):
        told: set[str] = set()
        for feature in part.features:
            if feature.mate is not None and feature.mate not in told and _across(feature):
                told.add(feature.mate)
                yield _across_grain(model, part, feature, model.part(feature.mate))
        if part.stock == "solid" and part.width >= part.length and _bears_across(model, part):
            yield _across_the_span(model, part)


def _bears_across(model: Model, part: Part) -> bool:
    """Return whether a board that lies flat is held along both of its edges and nowhere else."""
    copy = part.copies[0]
    (along, _), (across, _), (deep, _) = copy.frame.axes
    joints = [each for each in model.joints if copy.name in {each.guest, each.host}]
    if deep != _UPWARDS or any(is_panelled(each.kind) for each in joints):
        return False
    held: set[str] = set()
    low, wide = copy.box.low[across], copy.box.extent(across)
    for joint in joints:
        below = min(joint.region.low[across] - low, wide) / wide
        above = (joint.region.high[across] - low) / wide
        edge = "near" if above <= _HALF else "far" if below >= _HALF else "middle"
        whole = joint.region.extent(along) > copy.box.extent(along) * _HALF
        held.add(edge if whole else "middle")
    return held == {"near", "far"}


def _across_the_span(model: Model, part: Part) -> Diagnostic:
    """H53, A9.8: wood breaks along its grain; what spans a width has its grain along that."""
    say = model.display.with_unit
    ways = {0: "across", 1: "front to back"}
    way = ways.get(part.copies[0].frame.axes[1][0], "the other way")
    return finding(
        "H53",
        "grain-across-the-span",
        Severity.WARNING,
        f"{part.name}: it is held along both edges of its grain and bears over {say(part.width)} "
        f"across it, with a grain only {say(part.length)} long; solid wood snaps so",
        part.spans[0] if part.spans else None,
        figures={"span": part.width, "grain": part.length},
        remedy=f"write `{way}` in its line, so that its grain runs from support to support",
    )


def _across(feature: Feature) -> bool:
    (start, end), (near, far) = feature.along, feature.across
    is_mortise = feature.kind == "mortise" and feature.surface in {"F", "B", "E", "E2"}
    return is_mortise and feature.role == "mortise" and far - near > end - start


def _across_grain(model: Model, host: Part, mortise: Feature, rail: Part) -> Diagnostic:
    """H53: a mortise wider across the grain than along it (B3: the tenon's cheeks are its glue)."""
    show = model.display.shown
    across = mortise.across[1] - mortise.across[0]
    size = host.width if mortise.surface in {"F", "B"} else host.thickness
    upright = rail.copies[0].frame.axes[LENGTH][0] == _UPWARDS
    flat = rail.copies[0].frame.axes[THICKNESS][0] == _UPWARDS
    turn = "turn it by a quarter" if upright else "write `flat` in its line"
    remedy = f"{turn}, so that the tenon's broad side lies along the grain of {host.name}"
    if flat:
        # A flat rail under a drawer cannot be turned.
        remedy = (
            "write `dowels` instead of the tenon, or `on edge` where the rail need not lie flat"
        )
    return finding(
        "H53",
        "tenon-across-grain",
        Severity.WARNING,
        f"{rail.name}: its tenon lies across the grain of {host.name}, so that its mortise cuts "
        f"{show(across)} of {show(size)} and the cheeks are glued to end grain",
        mortise.span or (rail.spans[0] if rail.spans else None),
        figures={"across the grain": across, "of": size},
        remedy=remedy,
    )
