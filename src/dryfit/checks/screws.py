"""TRADE H19: screws that hold in end grain only."""

from __future__ import annotations

from collections.abc import Iterator

from dryfit.checks.finding import finding
from dryfit.checks.regions import solid_parts
from dryfit.diagnostics import Diagnostic, Severity
from dryfit.geometry.frame import LENGTH, SURFACES
from dryfit.placing.model import Model


def check_screws(model: Model) -> Iterator[Diagnostic]:
    """Yield, once for two parts, that a screw is driven into end grain.

    Findings: screw-in-end-grain.
    """
    for part in solid_parts(model):
        told: set[str | None] = set()
        for feature in part.features:
            if feature.role != "pilot hole" or SURFACES[feature.surface][0] != LENGTH:
                continue
            if feature.mate in told or part.stock == "sheet":
                continue
            told.add(feature.mate)
            yield finding(
                "H19",
                "screw-in-end-grain",
                Severity.WARNING,
                f"{part.name}: the screws through the {feature.mate} hold in end grain only, about "
                "60 % of what they hold in a face",
                feature.span,
                figures={},
                remedy="add a cleat or a dowel, or use a housing",
            )
