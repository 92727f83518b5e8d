"""Horns belong on parts whose ends are not joints and that are glued (TRADE B3.3)."""

from __future__ import annotations

from collections.abc import Iterator

from dryfit.checks.finding import finding
from dryfit.diagnostics import Diagnostic, Severity
from dryfit.geometry.frame import LENGTH, SURFACES
from dryfit.joinery.feature import Feature
from dryfit.placing.horns import RUNS_OUT
from dryfit.placing.model import Model, Part


def check_horns(model: Model) -> Iterator[Diagnostic]:
    """Yield parts whose horns would never come off, or stand where an end is cut itself.

    Findings: horns-not-glued, horns-on-a-joint.
    """
    glued = {name for assembly in model.assemblies for name in assembly.of}
    for part in model.parts:
        if not part.horns:
            continue
        show = model.display.shown
        if any(copy.name not in glued for copy in part.copies):
            yield finding(
                "B3",
                "horns-not-glued",
                Severity.ERROR,
                f"{part.name} has horns of {show(part.horns)}, but no glue-up after which they "
                "could be sawn off",
                part.spans[0],
                figures={"horns": part.horns},
                remedy=f"name it in a glue-up, as `glue up frame: {part.written}, ...`, or leave "
                "the horns out",
            )
        cut = next((each for each in part.features if _at_an_end(each, part)), None)
        if cut is not None:
            yield finding(
                "B3",
                "horns-on-a-joint",
                Severity.ERROR,
                f"{part.name}: {cut.id} is cut at the end itself, beyond which no horn can stand",
                part.spans[0],
                figures={"horns": part.horns},
                remedy="leave the horns out: they are for stiles, between which the rails stand",
            )


def _at_an_end(feature: Feature, part: Part) -> bool:
    if feature.after is not None or feature.kind in {*RUNS_OUT, "mortise", "hole"}:
        return False
    low, high = feature.along
    return SURFACES[feature.surface][0] == LENGTH or low <= 0 or high >= part.length
