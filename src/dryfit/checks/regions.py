"""Regions of features inside a part, and how they lie to one another; mm in the part frame."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from fractions import Fraction
from itertools import combinations

from dryfit.geometry.box import Box
from dryfit.geometry.frame import SURFACES
from dryfit.joinery.feature import Feature, Range
from dryfit.placing.model import Model, Part

TRENCHES = frozenset({"end lap", "cross slot", "long slot"})
"""Kinds that run open through a face, from edge to edge or to an end."""

TENON_ROLES = frozenset({"tenon cheek", "tenon shoulder", "button tongue"})
"""Roles of cuts that leave something standing, so that their depth weakens nothing."""

Ranges = tuple[Range, Range, Range]


def sizes(part: Part) -> tuple[Fraction, Fraction, Fraction]:
    """Return length, width and thickness."""
    return (part.length, part.width, part.thickness)


def solid_parts(model: Model) -> Iterator[Part]:
    """Yield the parts that the notes name; what the tool makes itself is right by design."""
    return (part for part in model.parts if not part.made)


def ranges(part: Part, feature: Feature) -> Ranges:
    """Return where a feature lies along, across and deep in its part."""
    return feature.ranges(sizes(part))


def pairs(part: Part) -> Iterator[tuple[Feature, Feature]]:
    """Yield the pairs of features that occur on one copy together."""
    for first, second in combinations(part.features, 2):
        if set(first.hands) & set(second.hands):
            yield first, second


def overlap(first: Range, second: Range) -> Fraction:
    """Return how far two ranges overlap; less than nothing is the distance between them."""
    return min(first[1], second[1]) - max(first[0], second[0])


def on_opposite_surfaces(first: Feature, second: Feature) -> bool:
    """Return whether two features are cut from opposite faces, edges or ends."""
    (direction, side), (other, other_side) = SURFACES[first.surface], SURFACES[second.surface]
    return direction == other and side != other_side


def gap_beside(box: Box, others: Iterable[Box], axis: int, way: int) -> Fraction | None:
    """Return how far the nearest of the others stands from a box, or None where none does."""
    gaps: list[Fraction] = []
    for other in others:
        beside = all(
            other.low[each] < box.high[each] and box.low[each] < other.high[each]
            for each in range(3)
            if each != axis
        )
        gap = other.low[axis] - box.high[axis] if way > 0 else box.low[axis] - other.high[axis]
        if beside and gap >= 0:
            gaps.append(gap)
    return min(gaps, default=None)
