"""TRADE H-a, trenches: H01 opposed slots, H02 too deep, H08 as wide as their mate."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from dryfit.checks.finding import finding, told_together
from dryfit.checks.regions import (
    TENON_ROLES,
    TRENCHES,
    on_opposite_surfaces,
    overlap,
    pairs,
    ranges,
    sizes,
    solid_parts,
)
from dryfit.diagnostics import Diagnostic, Severity
from dryfit.geometry.frame import SURFACES
from dryfit.joinery.feature import Feature
from dryfit.placing.model import Model, Part

LEAST_WALL = Fraction(3)
_TENTH = Fraction(1, 10)
_ENTERED = TRENCHES | {"mortise"}


def check_slots(model: Model) -> Iterator[Diagnostic]:
    """Yield what is wrong with trenches.  Findings: opposed-slots, slot-too-deep, slot-width."""
    parts = tuple(solid_parts(model))
    yield from told_together(each for part in parts for each in too_deep(model, part))
    for part in parts:
        yield from opposed_slots(model, part)
        yield from slot_widths(model, part)


def opposed_slots(model: Model, part: Part) -> Iterator[Diagnostic]:
    """H01: cuts from opposite faces must leave wood between them."""
    for first, second in pairs(part):
        if not (_weakens(first) and _weakens(second) and on_opposite_surfaces(first, second)):
            continue
        biscuits = "biscuit slot" in {first.role, second.role}
        if first.kind == second.kind == "mortise" and not biscuits:
            continue  # H05 tells of those
        if _is_filled(first, second) or _is_filled(second, first):
            continue
        direction = SURFACES[first.surface][0]
        own, other = ranges(part, first), ranges(part, second)
        if any(overlap(own[i], other[i]) <= 0 for i in range(3) if i != direction):
            continue
        left = sizes(part)[direction] - first.depth - second.depth
        if left >= LEAST_WALL:
            continue
        show = model.display.shown
        yield finding(
            "H01",
            "opposed-slots",
            Severity.ERROR if left <= 0 else Severity.WARNING,
            f"{part.name}: {first.id} and {second.id} on opposite faces leave "
            f"{show(max(left, Fraction(0)))} of {show(sizes(part)[direction])}",
            second.span,
            figures={"left": left},
            remedy="move one of them along the part, or make it shallower",
        )


def _is_filled(lap: Feature, late: Feature) -> bool:
    """Return whether a lap is full of glued wood when the other cut is made in it."""
    return lap.role == "lap" and lap.after is None and late.after is not None


def _weakens(feature: Feature) -> bool:
    return feature.kind in _ENTERED and feature.role not in TENON_ROLES


def too_deep(model: Model, part: Part) -> Iterator[Diagnostic]:
    """H02: a trench deeper than half of the wood warns, deeper than two thirds is wrong."""
    told: set[tuple[str, str | None]] = set()
    for feature in part.features:
        if feature.kind not in TRENCHES or feature.role in TENON_ROLES:
            continue
        size = sizes(part)[SURFACES[feature.surface][0]]
        cause = (feature.role, feature.mate)
        if feature.depth * 2 <= size or cause in told:
            continue
        told.add(cause)
        wrong = feature.depth * 3 > size * 2
        show = model.display.shown
        if feature.role == "housing" and feature.surface in {"R", "R2"}:
            yield _from_the_end(model, part, feature)
            continue
        yield finding(
            "H02",
            "slot-too-deep",
            Severity.ERROR if wrong else Severity.WARNING,
            f"{part.name}: {feature.id} is {show(feature.depth)} deep in {show(size)}; the usual "
            f"limit is half, {show(size / 2)}",
            feature.span,
            figures={"depth": feature.depth, "limit": size / 2},
            remedy="make it shallower, or the part thicker",
        )


def _from_the_end(model: Model, part: Part, feature: Feature) -> Diagnostic:
    """Tell of a board that lies along what it is housed in: only grooves hold it on all sides."""
    mate = feature.mate or "board"
    show = model.display.shown
    return finding(
        "H02",
        "slot-too-deep",
        Severity.ERROR,
        f"{part.name}: the {mate} lies along it, and a housing for it would be sawn in from the "
        f"end, {show(feature.depth)} deep",
        feature.span,
        figures={"depth": feature.depth},
        remedy=f"let the edges of the {mate} into grooves, written "
        f"`inside ..., groove {model.display.example(Fraction(6))}` with the names of all that are "
        "round it, or name only what its ends go into",
    )


def slot_widths(model: Model, part: Part) -> Iterator[Diagnostic]:
    """H08: a housing as wide as the part that enters it is thick, or wide where its face enters."""
    for feature in part.features:
        if feature.role != "housing" or feature.mate is None:
            continue
        mate = model.part(feature.mate)
        spans = (feature.along, feature.across)
        narrow = min(high - low for low, high in spans)
        if any(abs(narrow - size) <= _TENTH for size in (mate.thickness, mate.width)):
            continue
        show = model.display.shown
        yield finding(
            "H08",
            "slot-width",
            Severity.WARNING,
            f"{part.name}: {feature.id} is {show(narrow)} wide, but {mate.name} is "
            f"{show(mate.thickness)} thick",
            feature.span,
            figures={"width": narrow, "thickness": mate.thickness},
            remedy="cut it to the part",
        )
