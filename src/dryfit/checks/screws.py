"""TRADE H19, H36: screws that hold in end grain only, and screws at the edge of a cut."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from dryfit.checks.finding import finding
from dryfit.checks.regions import overlap, pairs, ranges, solid_parts
from dryfit.diagnostics import Diagnostic, Note, Severity
from dryfit.geometry.frame import LENGTH, SURFACES
from dryfit.joinery.feature import Feature
from dryfit.placing.model import Model, Part

_TRENCHES = frozenset({"rabbet", "groove", "notch", "slot", "housing", "mortise", "button slot"})
_OF_SCREWS = frozenset({"screw hole", "pilot hole"})


def check_screws(model: Model) -> Iterator[Diagnostic]:
    """Yield, once for two parts, that a screw holds in end grain or stands at the edge of a cut.

    Findings: screw-in-end-grain, screw-near-cut.
    """
    yield from _near_cuts(model)
    rabbeted = {
        (model.part_of(joint.guest).name, model.part_of(joint.host).name)
        for joint in model.joints
        if joint.kind == "rabbet"
    }
    for part in solid_parts(model):
        told: set[str | None] = set()
        for feature in part.features:
            if feature.role != "pilot hole" or SURFACES[feature.surface][0] != LENGTH:
                continue
            if feature.mate in told or part.stock == "sheet":
                continue
            if (part.name, feature.mate) in rabbeted:
                # There the screws help glue that holds little on end grain itself (TRADE B8).
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


def _near_cuts(model: Model) -> Iterator[Diagnostic]:
    """Yield, once for a part and two lines, that a screw has not its own thickness beside a cut.

    Screws are moved clear of cuts where there is room; here there was none.
    """
    for part in solid_parts(model):
        told: set[tuple[object, object]] = set()
        for one, two in pairs(part):
            for hole, cut in ((one, two), (two, one)):
                if hole.role not in _OF_SCREWS or cut.role not in _TRENCHES:
                    continue
                if cut.role == "rabbet" and cut.mate is not None and cut.mate == hole.mate:
                    # What lies in the rabbet is screwed to its floor.
                    continue
                beside = _beside(part, hole, cut)
                if beside is None or (hole.span, cut.span) in told:
                    continue
                told.add((hole.span, cut.span))
                yield _near_cut(model, part, hole, cut, beside)


def _beside(part: Part, hole: Feature, cut: Feature) -> Fraction | None:
    """Return the wood left between a hole and a cut beside it where that is too little; mm."""
    deep = SURFACES[hole.surface][0]
    between = [
        overlap(first, second)
        for first, second in zip(ranges(part, hole), ranges(part, cut), strict=True)
    ]
    wide = hole.across[1] - hole.across[0]
    left = max(-each for axis, each in enumerate(between) if axis != deep)
    return max(left, Fraction(0)) if between[deep] > 0 and left < wide / 2 else None


def _near_cut(
    model: Model, part: Part, hole: Feature, cut: Feature, beside: Fraction
) -> Diagnostic:
    where = f"{model.display.shown(beside, fitted=True)} from" if beside else "into"
    return finding(
        "H36",
        "screw-near-cut",
        Severity.WARNING,
        f"{part.name}: a {hole.role} for the {hole.mate} runs {where} the {cut.role}, "
        "and its wood breaks out",
        hole.span,
        figures={"left": beside},
        remedy=f"let the two touch over a broader face, or make the {cut.role} narrower",
        notes=(Note(f"the {cut.role}", cut.span),) if cut.span else (),
    )
