"""TRADE H28: what stands free lies on something, or is hung by what is bought for it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction

from dryfit.checks.finding import finding
from dryfit.diagnostics import Diagnostic, Severity
from dryfit.geometry.box import Box
from dryfit.piece.declared import thing_of
from dryfit.placing.model import Model, Part

_UP = 2
_A_GAP = Fraction(5)
"""No more than this above what lies below, mm, is a gap, and not a place of its own (common
practice: 1 to 3 round a drawer)."""


def check_carried(model: Model) -> Iterator[Diagnostic]:
    """Yield what is joined to nothing of the rest and has nothing under it: a tray between ledgers.

    The largest group of joined parts is the piece itself, which may hang on a wall.
    Findings: lies-on-nothing.
    """
    owner = {copy.name: part for part in model.parts for copy in part.copies}
    boxes = {copy.name: copy.box for part in model.parts for copy in part.copies}
    groups = _groups(model, owner)
    piece = max(groups, key=lambda names: sum(boxes[name].volume() for name in names), default=None)
    told: set[str] = set()
    for names in groups:
        first = owner[min(names)]
        thing = thing_of(first.name)
        free = any(owner[name].opening or thing != owner[name].name for name in names)
        if names is piece or not free or thing in told or _is_hung(model, names, owner):
            # What stands in no opening and is joined to nothing is told by `held`.
            continue
        if any(joint.kind == "runner" and joint.host in names for joint in model.joints):
            # Its runners carry it; what they are fastened to is told by `held`.
            continue
        if not _lies_on_something(names, boxes):
            told.add(thing)
            yield _close_above(model, names, owner) or _told(thing, first)


def _groups(model: Model, owner: Mapping[str, Part]) -> list[frozenset[str]]:
    """Return the copies that hang together by joints, each group once."""
    group_of = {name: {name} for name in owner}
    for joint in model.joints:
        one, two = group_of.get(joint.guest), group_of.get(joint.host)
        if one is not None and two is not None and one is not two:
            one |= two
            for name in two:
                group_of[name] = one
    found = {id(group): frozenset(group) for group in group_of.values()}
    return list(found.values())


def _lies_on_something(names: frozenset[str], boxes: Mapping[str, Box]) -> bool:
    others = [box for name, box in boxes.items() if name not in names]
    return any(
        boxes[name].low[_UP] == 0 or any(_carries(box, boxes[name]) for box in others)
        for name in names
    )


def _carries(below: Box, above: Box) -> bool:
    touch = above.contact(below)
    return touch is not None and touch[0] == _UP and below.high[_UP] == above.low[_UP]


def _close_above(
    model: Model, names: frozenset[str], owner: Mapping[str, Part]
) -> Diagnostic | None:
    """Return that a thing in an opening stands a little above what would carry it.

    Such a gap was meant for its top: a drawer runs on what lies below it.
    """
    gaps: list[tuple[Fraction, str, str]] = []
    for name in sorted(names):
        above = model.copy(name).box
        for other in sorted(owner.keys() - names):
            below = model.copy(other).box
            gap = above.low[_UP] - below.high[_UP]
            beside = any(
                above.high[axis] <= below.low[axis] or below.high[axis] <= above.low[axis]
                for axis in (0, 1)
            )
            if 0 < gap <= _A_GAP and not beside:
                gaps.append((gap, owner[name].name, other))
    opening = next((owner[name].opening for name in sorted(names) if owner[name].opening), None)
    if not gaps or opening is None:
        return None
    gap, part, below_it = min(gaps)
    thing = thing_of(part)
    first = owner[min(names)]
    shown = model.display.with_unit(gap, fitted=True)
    return finding(
        "H28",
        "lies-on-nothing",
        Severity.WARNING,
        f"{thing} stands {shown} above the {below_it}, and so lies on nothing",
        first.spans[0] if first.spans else None,
        figures={"gap": gap},
        remedy=f"write `0 above the bottom of {opening}`, and all its play is above it",
    )


def _is_hung(model: Model, names: frozenset[str], owner: Mapping[str, Part]) -> bool:
    # Hinges for doors, pins for shelves, runners for drawers.
    words = {owner[name].written.lower() for name in names}
    words |= {thing_of(owner[name].name) for name in names}
    return any(word in thing.purpose.lower() for thing in model.bought for word in words)


def _told(thing: str, part: Part) -> Diagnostic:
    return finding(
        "H28",
        "lies-on-nothing",
        Severity.WARNING,
        f"{thing} lies on nothing: nothing touches it from below, and nothing holds it",
        part.spans[0] if part.spans else None,
        figures={},
        remedy="set it on what should carry it, join it, or name what is bought to hang it: "
        "`bought 4 hinges, for doors`",
    )
