"""TRADE H-a, grain: H53 a tenon that lies across the grain of what it goes into."""

from __future__ import annotations

from collections.abc import Iterator

from dryfit.checks.finding import finding
from dryfit.checks.regions import solid_parts
from dryfit.diagnostics import Diagnostic, Severity
from dryfit.geometry.frame import LENGTH, THICKNESS
from dryfit.joinery.feature import Feature
from dryfit.placing.model import Model, Part

_UPWARDS = 2


def check_grain(model: Model) -> Iterator[Diagnostic]:
    """Yield tenons that lie across the grain of their mate.

    Findings: tenon-across-grain.
    """
    for part in solid_parts(model):
        told: set[str] = set()
        for feature in part.features:
            if feature.mate is not None and feature.mate not in told and _across(feature):
                told.add(feature.mate)
                yield _across_grain(model, part, feature, model.part(feature.mate))


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
