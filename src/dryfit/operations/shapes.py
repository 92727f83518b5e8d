"""Shapes that are no boxes: tapers, curves and bevels, cut when the joints of a part are (B0.5).

Each lies on faces that the ones before it have left whole, so bevels come first, curves last.
"""

from __future__ import annotations

from collections.abc import Iterable

from dryfit.geometry.frame import LENGTH, SURFACES
from dryfit.joinery.feature import Feature
from dryfit.operations.cut import Cut, Site
from dryfit.plan.operation import Operation, Rule

TAPER, CURVE, BEVEL = "taper", "curve", "bevel"
KINDS = (BEVEL, TAPER, CURVE)
"""In the order in which they are cut in one part."""

WHY_SHAPE_LATE = (
    "joints are cut while the faces that they are measured from are straight and parallel"
)
WHY_IN_THIS_ORDER = "the part has to lie and lean on faces that the next cut takes away"
WHY_LIES_ON_NEXT = "the part lies on the face that is tapered next, while that is still flat"
WHY_ENDS_FIRST = "what breaks out behind the cut across the grain goes with the one along it"
WHY_EDGE_AFTER_SHAPE = "the bit runs along the edge that the shape leaves"

Row = tuple[Operation, tuple[Cut, ...]]


def is_shape(feature: Feature) -> bool:
    """Return whether a feature is a taper, a curve or a bevel that a line of the notes asks for."""
    return feature.role in KINDS


def shaped_before(site: Site) -> frozenset[str]:
    """Return the surfaces of the hand's copies that shapes of an earlier kind have taken."""
    order = KINDS.index(site.feature.role)
    return frozenset(each.surface for each in _shapes(site) if KINDS.index(each.role) < order)


def of_one_kind(site: Site) -> tuple[Feature, ...]:
    """Return the shapes of the site's kind on the hand's copies, those cut in glued work apart."""
    return tuple(each for each in _shapes(site) if each.role == site.feature.role)


def _shapes(site: Site) -> tuple[Feature, ...]:
    hand = site.copies[0].hand
    return tuple(
        each
        for each in site.part.features
        if is_shape(each) and hand in each.hands and each.after == site.feature.after
    )


def _at_end(cut: Cut) -> bool:
    return SURFACES[cut.site.feature.surface][0] == LENGTH


def shape_rules(own: Iterable[Row]) -> list[Rule]:
    """Return, for one part: joints before shapes, and shapes in the order in which they can lie."""
    rows = [(operation, cuts[0]) for operation, cuts in own]
    rules: list[Rule] = []
    for operation, cut in rows:
        if operation.kind not in KINDS:
            continue
        for other, before in rows:
            if before.site.feature.after != cut.site.feature.after or other.kind == "profile":
                continue
            if other.kind not in KINDS:
                rules.append(Rule(other.id, operation.id, WHY_SHAPE_LATE))
            elif KINDS.index(other.kind) < KINDS.index(operation.kind):
                rules.append(Rule(other.id, operation.id, WHY_IN_THIS_ORDER))
            elif other.kind == operation.kind and before.turn < cut.turn:
                rules.append(Rule(other.id, operation.id, WHY_LIES_ON_NEXT))
            elif other.kind == operation.kind == BEVEL and _at_end(before) and not _at_end(cut):
                rules.append(Rule(other.id, operation.id, WHY_ENDS_FIRST))
    return rules
