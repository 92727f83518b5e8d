"""Gaps in which a child's finger or head may be caught (M20)."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from fractions import Fraction
from itertools import combinations, pairwise

from dryfit.checks.finding import finding
from dryfit.diagnostics import Diagnostic, Severity
from dryfit.geometry.box import Box
from dryfit.geometry.solid import Solid
from dryfit.placing.loads import comes_apart_into
from dryfit.placing.model import Copy, Model, Part

_FINGER = (Fraction(5), Fraction(12))
_DEEP = Fraction(10)
"""Between 5 and 12 mm a finger goes in and may stay there (RoSPA, read: no gaps of 5 to 12 mm;
CEN/TR 13387, read second hand: where they are over 10 mm deep).  Between thin parts it is as deep
as the room behind them."""

_COVERED = ((1, True), (2, False))
"""From behind, where a wall is, and from below no finger gets in."""

_HEAD = (Fraction(65), Fraction(230))
"""Between bars at most 65 mm (RoSPA, read, of cots); from 230 mm on a head comes out again (from
memory, of playground standards)."""


def check_gaps(model: Model) -> Iterator[Diagnostic]:
    """Yield each pair of parts with a gap for a finger, and bars with a gap for a head.

    Findings: finger-gap, head-gap.
    """
    boxes = {copy.name: copy.box for part in model.parts for copy in part.copies}
    opened = _swings(model)
    pairs = [(part, copy) for part in model.parts for copy in part.copies]
    told: set[tuple[str, ...]] = set()
    for (part, copy), (other_part, other) in combinations(pairs, 2):
        for axis in range(3):
            found = _between(copy.box, other.box, axis)
            if found is None or not _finger(found, axis):
                continue
            names = (part.name, other_part.name, "finger")
            if names in told or not _is_free(found, boxes.values()):
                continue
            # What swings open covers nothing but what moves with it.
            with_them = opened & {copy.name, other.name}
            lids = frozenset() if with_them else opened
            fixed = [box for name, box in boxes.items() if name not in lids]
            if _reached(found, axis, fixed, model):
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


def _swings(model: Model) -> frozenset[str]:
    """Return the copies that swing open: what hangs on hinges, with all that it carries."""
    hung = {joint.guest for joint in model.joints if joint.kind == "hinges"}
    if not hung:
        return frozenset()
    groups = comes_apart_into(model)
    found = {name for group in groups if hung & set(group) for name in group}
    # What is screwed on and could come off swings along, unless it also meets what stays.
    mates: dict[str, set[str]] = {}
    for joint in model.joints:
        for one, other in ((joint.guest, joint.host), (joint.host, joint.guest)):
            mates.setdefault(one, set()).add(other)
    return frozenset(found | {name for name, others in mates.items() if others <= found})


def _finger(gap: Box, axis: int) -> bool:
    longest = max(gap.extent(each) for each in range(3) if each != axis)
    return _FINGER[0] < gap.extent(axis) < _FINGER[1] and longest > _DEEP


def _is_free(gap: Box, boxes: Iterable[Box]) -> bool:
    """Return whether the space is not filled by other copies."""
    return bool(Solid(gap, tuple(box for box in boxes if box.overlap(gap))).cells())


def _reached(gap: Box, axis: int, boxes: list[Box], model: Model) -> bool:
    """Return whether on one side the gap is open up to the outside, and deep enough from there."""
    for each in range(3):
        if each == axis:
            continue
        along = 3 - axis - each
        for upper in (False, True):
            if (each, upper) in _COVERED:
                continue
            way, behind = _beyond(gap, each, model, upper=upper)
            inside = (way,) if gap.extent(each) > _DEEP else (way, behind)
            stops = [box for box in boxes if any(box.overlap(room) for room in inside)]
            if _longest_free(gap, along, stops) > (_FINGER[0] if len(inside) == 1 else _DEEP):
                return True
    return False


def _longest_free(gap: Box, along: int, stops: Iterable[Box]) -> Fraction:
    """Return the longest stretch of a gap that no box stands before."""
    at, longest = gap.low[along], Fraction(0)
    for low, high in sorted((box.low[along], box.high[along]) for box in stops):
        longest = max(longest, low - at)
        at = max(at, high)
    return max(longest, gap.high[along] - at)


def _beyond(gap: Box, axis: int, model: Model, *, upper: bool) -> tuple[Box, Box]:
    """Return the way from a gap to the outside, and what a finger reaches through a thin one."""
    low, high = list(gap.low), list(gap.high)
    inner, outer = list(gap.low), list(gap.high)
    if upper:
        low[axis], high[axis] = gap.high[axis], model.overall[axis] + 1
        inner[axis], outer[axis] = gap.high[axis] - _DEEP - 1, gap.low[axis]
    else:
        low[axis], high[axis] = Fraction(-1), gap.low[axis]
        inner[axis], outer[axis] = gap.high[axis], gap.low[axis] + _DEEP + 1
    if inner[axis] >= outer[axis]:  # deep enough in itself
        inner[axis], outer[axis] = gap.low[axis], gap.high[axis]
    (a, b, c), (x, y, z) = low, high
    (d, e, f), (u, v, w) = inner, outer
    return Box((a, b, c), (x, y, z)), Box((d, e, f), (u, v, w))


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
