"""Gaps in which a child's finger or head may be caught (M20)."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from itertools import combinations, pairwise

from dryfit.checks.finding import finding
from dryfit.diagnostics import Diagnostic, Severity
from dryfit.geometry.box import Box
from dryfit.geometry.solid import Solid
from dryfit.placing.model import Copy, Model, Part

_FINGER = (Fraction(5), Fraction(12))
_DEEP = Fraction(10)
"""Between 5 and 12 mm a finger goes in and may stay there (RoSPA, read: no gaps of 5 to 12 mm;
CEN/TR 13387, read second hand: where they are over 10 mm deep)."""

_COVERED = ((1, True), (2, False))
"""From behind, where a wall is, and from below no finger gets in."""

_HEAD = (Fraction(65), Fraction(230))
"""Between bars at most 65 mm (RoSPA, read, of cots); from 230 mm on a head comes out again (from
memory, of playground standards)."""


def check_gaps(model: Model) -> Iterator[Diagnostic]:
    """Yield each pair of parts with a gap for a finger, and bars with a gap for a head.

    Findings: finger-gap, head-gap.
    """
    boxes = [copy.box for part in model.parts for copy in part.copies]
    pairs = [(part, copy) for part in model.parts for copy in part.copies]
    told: set[tuple[str, ...]] = set()
    for (part, copy), (other_part, other) in combinations(pairs, 2):
        for axis in range(3):
            found = _between(copy.box, other.box, axis)
            if found is None or not _finger(found, axis):
                continue
            names = (part.name, other_part.name, "finger")
            if names not in told and _reached(found, axis, boxes, model):
                told.add(names)
                yield _caught(model, part, other_part, found.extent(axis))
    yield from _bars(model)


def _between(one: Box, other: Box, axis: int) -> Box | None:
    """Return the space between two boxes that face each other along an axis, or None."""
    low, high = (one, other) if one.high[axis] <= other.low[axis] else (other, one)
    start, end = [Fraction(0)] * 3, [Fraction(0)] * 3
    for each in range(3):
        if each == axis:
            start[each], end[each] = low.high[each], high.low[each]
        else:
            start[each] = max(one.low[each], other.low[each])
            end[each] = min(one.high[each], other.high[each])
        if start[each] >= end[each]:
            return None
    return Box((start[0], start[1], start[2]), (end[0], end[1], end[2]))


def _finger(gap: Box, axis: int) -> bool:
    others = sorted(gap.extent(each) for each in range(3) if each != axis)
    return _FINGER[0] < gap.extent(axis) < _FINGER[1] and others[0] > _DEEP


def _reached(gap: Box, axis: int, boxes: list[Box], model: Model) -> bool:
    """Return whether the gap is open: free of other copies, and on one side up to the outside."""
    if not Solid(gap, tuple(box for box in boxes if box.overlap(gap))).cells():
        return False
    for each in range(3):
        if each == axis:
            continue
        for upper in (False, True):
            if (each, upper) in _COVERED:
                continue
            low, high = list(gap.low), list(gap.high)
            if upper:
                low[each], high[each] = gap.high[each], model.overall[each] + 1
            else:
                low[each], high[each] = Fraction(-1), gap.low[each]
            way = Box((low[0], low[1], low[2]), (high[0], high[1], high[2]))
            if not any(box.overlap(way) for box in boxes):
                return True
    return False


def _caught(model: Model, part: Part, other: Part, gap: Fraction) -> Diagnostic:
    shown = model.display.with_unit
    names = part.written.lower() if part is other else f"{part.name} and {other.name}"
    return finding(
        "M20",
        "finger-gap",
        Severity.WARNING,
        f"between {names} is a gap of {shown(gap)}, in which a child's finger may be caught",
        part.spans[0] if part.spans else None,
        figures={"gap": gap},
        remedy=f"make it at most {shown(_FINGER[0])} or at least {shown(_FINGER[1])}",
    )


def _bars(model: Model) -> Iterator[Diagnostic]:
    for part in model.parts:
        if part.run != "upright" or len(part.copies) < 3:
            continue
        gap = _widest(part.copies)
        if gap is not None:
            shown = model.display.with_unit
            yield finding(
                "M20",
                "head-gap",
                Severity.WARNING,
                f"{part.written.lower()}: {shown(gap)} apart, a child's body goes through and its "
                "head does not",
                part.spans[0] if part.spans else None,
                figures={"gap": gap},
                remedy=f"set them at most {shown(_HEAD[0])} apart",
            )


def _widest(copies: tuple[Copy, ...]) -> Fraction | None:
    """Return the widest gap for a head between neighbours of a row, or None."""
    for axis in (0, 1):
        row = sorted((copy.box for copy in copies), key=lambda box: box.low[axis])
        gaps = [after.low[axis] - box.high[axis] for box, after in pairwise(row)]
        if all(gap > 0 for gap in gaps):
            caught = [gap for gap in gaps if _HEAD[0] < gap < _HEAD[1]]
            return max(caught, default=None)
    return None
