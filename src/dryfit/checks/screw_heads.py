"""TRADE H57: screws through one part into two others, each of which covers the other's heads."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations

from dryfit.checks.finding import finding
from dryfit.checks.regions import solid_parts
from dryfit.diagnostics import Diagnostic, Note, Severity
from dryfit.geometry.box import Box
from dryfit.joinery.cut import bounded
from dryfit.joinery.feature import Feature
from dryfit.placing.model import Copy, Joint, Model

_HEAD = "screw hole"


def check_screw_heads(model: Model) -> Iterator[Diagnostic]:
    """Yield, once for two parts, that whichever is screwed on first keeps the other from it.

    Findings: screw-heads-covered.
    """
    screwed: dict[str, list[Joint]] = {}
    for joint in model.joints:
        if joint.kind == "screws":
            screwed.setdefault(joint.host, []).append(joint)
            screwed.setdefault(joint.guest, []).append(joint)
    told: set[frozenset[str]] = set()
    for part in solid_parts(model):
        for copy in part.copies:
            heads = _heads(model, copy, screwed.get(copy.name, ()))
            for (one, mine), (two, other) in combinations(heads, 2):
                parts = frozenset({part.name, one, two})
                both = _covers(model.copy(two), mine) and _covers(model.copy(one), other)
                if both and parts not in told:
                    told.add(parts)
                    yield _told(model, copy, (one, mine[0][0]), (two, other[0][0]))


Heads = list[tuple[Feature, Box]]
"""Clearance holes of one copy for one mate, each with the mouth at which its head lies."""


def _heads(
    model: Model, copy: Copy, joints: tuple[Joint, ...] | list[Joint]
) -> list[tuple[str, Heads]]:
    """Return, for each copy that is screwed on through this one, the mouths of those screws."""
    part = model.part_of(copy.name)
    found: list[tuple[str, Heads]] = []
    for joint in joints:
        mate = joint.guest if joint.host == copy.name else joint.host
        name = model.part_of(mate).name
        own: Heads = []
        for hole in part.features:
            if hole.role != _HEAD or hole.mate != name or copy.hand not in hole.hands:
                continue
            if _goes_into(hole, copy, joint):
                own.append((hole, _mouth(hole, copy)))
        if own:
            found.append((mate, own))
    return found


def _mouth(hole: Feature, copy: Copy) -> Box:
    """Return the flat place at the surface into which a hole is bored."""
    region = hole.region(copy.box, copy.frame)
    axis, side = region.face
    at = copy.box.high[axis] if side > 0 else copy.box.low[axis]
    return bounded(region.box, axis, at, at)


def _goes_into(hole: Feature, copy: Copy, joint: Joint) -> bool:
    """Return whether a hole comes out where a joint's two parts touch."""
    box = hole.box(copy.box, copy.frame)
    return all(
        box.low[axis] <= joint.region.high[axis] and joint.region.low[axis] <= box.high[axis]
        for axis in range(3)
    )


def _covers(copy: Copy, heads: Heads) -> bool:
    """Return whether a copy lies on one of the mouths."""
    return any(all(_meet(copy.box, mouth, axis) for axis in range(3)) for _, mouth in heads)


def _meet(box: Box, mouth: Box, axis: int) -> bool:
    low, high = mouth.low[axis], mouth.high[axis]
    if low == high:
        return box.low[axis] <= low <= box.high[axis]
    return box.low[axis] < high and low < box.high[axis]


def _told(
    model: Model, copy: Copy, one: tuple[str, Feature], two: tuple[str, Feature]
) -> Diagnostic:
    (first, hole), (second, other) = sorted(
        (one, two), key=lambda each: (each[1].span.line if each[1].span else 0, each[0])
    )
    show = model.display.with_unit
    figures = {"thickness": copy.box.extent(hole.region(copy.box, copy.frame).face[0])}
    return finding(
        "H57",
        "screw-heads-covered",
        Severity.ERROR,
        f"{first} and {second} are both screwed on through the {copy.name}, "
        f"{show(figures['thickness'])} thick, and each lies over the heads of the other's screws",
        other.span,
        figures=figures,
        remedy="set the two at unequal heights, or join one of them with `dowels` or a housing",
        notes=(Note(f"the screws of {first}", hole.span),) if hole.span else (),
    )
