"""All declared cuts on all copies."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from dryfit.diagnostics import Diagnostic, Hint, Severity
from dryfit.joinery.cut import Cut, Placed
from dryfit.piece.declared import DeclaredFeature
from dryfit.placing.features.holes import hole
from dryfit.placing.features.inward import inward_of
from dryfit.placing.features.late import known_features
from dryfit.placing.features.slopes import bevel, curve, eased, taper
from dryfit.placing.features.surroundings import Surroundings, surroundings
from dryfit.placing.features.task import Made, Misfit, Task
from dryfit.placing.features.trenches import groove, notch, rabbet, slot
from dryfit.placing.site import Site

KINDS: Mapping[str, Callable[[Task], Made]] = {
    "groove": groove,
    "rabbet": rabbet,
    "hole": hole,
    "taper": taper,
    "chamfer": eased,
    "round-over": eased,
    "profile": eased,
    "curve": curve,
    "notch": notch,
    "slot": slot,
    "bevel": bevel,
}


MOST_CUTS = 3000
_IN_A_FRAME = "they are sawn across the corners of what is glued"


def declared_cuts(site: Site, placed: Mapping[str, Placed]) -> tuple[Cut, ...]:
    """Return the cuts of all lines that name parts, in the order of the lines and copies.

    Findings: feature-off-part, taper-start, too-many-cuts.
    """
    cuts: list[Cut] = []
    around = surroundings(placed.values() if site.declared.features else ())
    for feature in known_features(site):
        for host in feature.parts:
            for seat in site.named(host):
                if seat.name in placed:
                    cuts += _on_copy(site, feature, placed[seat.name], placed, around)
                if len(cuts) > MOST_CUTS:
                    site.findings.append(_too_many(feature))
                    return ()
    return tuple(dict.fromkeys(cuts))


def _too_many(feature: DeclaredFeature) -> Diagnostic:
    return Diagnostic(
        "too-many-cuts",
        Severity.ERROR,
        f"the piece has more than {MOST_CUTS} holes and other cuts, and no more are planned",
        feature.span,
        hints=(Hint("look at the counts on this line, or plan the piece in sections"),),
    )


def _on_copy(
    site: Site,
    feature: DeclaredFeature,
    copy: Placed,
    placed: Mapping[str, Placed],
    around: Surroundings,
) -> tuple[Cut, ...]:
    make = KINDS.get(feature.kind)
    inward = inward_of(site, copy, around)
    task = Task(site, feature, copy, inward, placed, around)
    made = make(task) if make else Misfit(_IN_A_FRAME, "name the glue-up instead of its parts")
    if isinstance(made, Misfit):
        tell(task, made)
        return ()
    return made


def tell(task: Task, misfit: Misfit) -> None:
    """Report, once for a line and its part, why its cut cannot be put there."""
    finding = Diagnostic(
        "feature-off-part",
        Severity.ERROR,
        f"{task.name}: {misfit.why}",
        task.feature.span,
        rule="H38",
        figures=dict(misfit.figures),
        hints=(Hint(task.site.declared.display.examples(misfit.remedy)),),
    )
    if finding not in task.site.findings:
        task.site.findings.append(finding)
