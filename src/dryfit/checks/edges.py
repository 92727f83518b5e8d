"""Eased and moulded edges: two on one face must leave a flat between them, one on an edge only."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from itertools import combinations

from dryfit.checks.cuts_in_joints import EASED
from dryfit.checks.finding import finding
from dryfit.checks.regions import overlap, ranges, sizes, solid_parts
from dryfit.diagnostics import Diagnostic, Note, Severity
from dryfit.geometry.frame import SURFACES
from dryfit.joinery.feature import Feature
from dryfit.placing.model import Model, Part

Pair = tuple[Feature, Feature]


def check_edges(model: Model) -> Iterator[Diagnostic]:
    """Yield edges that are cut twice, and those that leave no flat between them.

    Findings: edge-cut-twice, edges-meet.
    """
    for part in solid_parts(model):
        told: set[tuple[str, frozenset[object]]] = set()
        eased = [each for each in part.features if each.role in EASED and each.form]
        for one, two in combinations(eased, 2):
            if not set(one.hands) & set(two.hands):
                continue
            found = _twice(part, one, two) or _meeting(model, part, one, two)
            cause = (found.code if found else "", frozenset({one.span, two.span}))
            if found is not None and cause not in told:
                told.add(cause)
                yield found


def _faces(feature: Feature) -> frozenset[str]:
    toward = feature.form.toward if feature.form else None
    return frozenset({feature.surface, toward or feature.surface})


def _twice(part: Part, one: Feature, two: Feature) -> Diagnostic | None:
    own, other = ranges(part, one), ranges(part, two)
    same = _faces(one) == _faces(two) and len(_faces(one)) == 2
    if not same or one.span == two.span or any(overlap(own[i], other[i]) <= 0 for i in range(3)):
        return None
    return finding(
        "B0",
        "edge-cut-twice",
        Severity.WARNING,
        f"{part.name}: the {one.role} and the {two.role} are on the same edge",
        two.span,
        figures={},
        remedy="name the edges that each is meant for",
        notes=(Note("the other one", one.span),) if one.span else (),
    )


def _meeting(model: Model, part: Part, one: Feature, two: Feature) -> Diagnostic | None:
    common = _faces(one) & _faces(two)
    apart = (_faces(one) | _faces(two)) - common
    directions = {SURFACES[surface][0] for surface in apart}
    if len(common) != 1 or len(apart) != 2 or len(directions) != 1:
        return None
    own, other = ranges(part, one), ranges(part, two)
    across = directions.pop()
    run = next(axis for axis in range(3) if axis != across and axis != SURFACES[min(common)][0])
    if overlap(own[run], other[run]) <= 0:
        return None
    wide = (own[across][1] - own[across][0]) + (other[across][1] - other[across][0])
    size = sizes(part)[across]
    if wide < size:
        return None
    show = model.display.shown
    return finding(
        "B0",
        "edges-meet",
        Severity.ERROR if wide > size else Severity.WARNING,
        f"{part.name}: {one.role} and {two.role} take {show(wide)} of the {show(size)} between "
        "their edges",
        two.span,
        figures={"together": wide, "between": size},
        remedy=f"make them less than {show(Fraction(size, 2))} each",
    )
