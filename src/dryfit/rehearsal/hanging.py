"""Hinges: where both parts may be recessed for them, and whether the recesses face one another."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from dryfit.geometry.box import Box
from dryfit.rehearsal.fault import Reason, Trouble
from dryfit.rehearsal.goal import WantedCopy, WantedJoint

_LEAF = Fraction(4)
"""A leaf is let in so far at most, mm (TRADE B23: 1.5 to 2.5)."""

_GAP = Fraction(6)
"""No wider does a door stand from what it hangs on, mm (a guess of ours; usual is 1 to 3)."""

Member = tuple[WantedCopy, Sequence[Box]]


def for_hinges(joint: WantedJoint, copy: WantedCopy) -> Iterator[Box]:
    """Yield the skin of a copy at the joint, from which leaves may take wood."""
    if joint.kind != "hinges":
        return
    axis = joint.normal()
    low, high = list(joint.region.low), list(joint.region.high)
    reach = _LEAF + _GAP
    low[axis], high[axis] = low[axis] - reach, high[axis] + reach
    whole = Box((low[0], low[1], low[2]), (high[0], high[1], high[2]))
    inside = whole.overlap(copy.box)
    if inside is None:
        return
    # Of the copy itself no more than a leaf's thickness goes.
    first, last = inside.low[axis], inside.high[axis]
    below = copy.box.low[axis] < joint.region.low[axis]
    bounds = (max(first, last - _LEAF), last) if below else (first, min(last, first + _LEAF))
    low, high = list(inside.low), list(inside.high)
    low[axis], high[axis] = bounds
    yield Box((low[0], low[1], low[2]), (high[0], high[1], high[2]))


def unhinged(joint: WantedJoint, members: Sequence[Member]) -> Iterator[tuple[str, Trouble]]:
    """Yield a hinge that finds a recess in one part only or in neither, or leaves let in unequally.

    A leaf that lies deeper than the other draws the door aside, and it binds (TRADE B23).
    """
    if joint.kind != "hinges":
        return
    axis = joint.normal()
    flat = [each for each in range(3) if each != axis]
    rows = [
        sorted(
            tuple((cut.low[each], cut.high[each]) for each in flat)
            for cut in cuts
            if any(zone.contains(cut) for zone in for_hinges(joint, copy))
        )
        for copy, cuts in members
    ]
    if not rows[0] or rows[0] != rows[1]:
        yield (
            joint.guest,
            Trouble(
                Reason.FIT,
                f"its hinges find no recesses that face one another in it and in {joint.host}",
                "a recess for each leaf in both parts",
            ),
        )
        return
    depths = {
        cut.extent(axis)
        for copy, cuts in members
        for cut in cuts
        if any(zone.contains(cut) for zone in for_hinges(joint, copy))
    }
    if len(depths) > 1:
        yield (
            joint.guest,
            Trouble(
                Reason.FIT,
                f"its leaves are let in more deeply on one side than in {joint.host}",
                "recesses of one depth",
            ),
        )
