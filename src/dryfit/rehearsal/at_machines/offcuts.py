"""What falls off where cuts meet: strips that two cuts free, and where they may lie (B0)."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from dryfit.geometry.box import Box
from dryfit.geometry.frame import LENGTH, SURFACES
from dryfit.plan.setting import Hold
from dryfit.rehearsal.blank import Blank, box_of, left_of
from dryfit.rehearsal.fault import Reason, Trouble
from dryfit.rehearsal.goal import Mark, Ranges

_HAIR = Fraction(1, 1000)


def fallen(blank: Blank, marks: Sequence[Mark], length: Fraction) -> tuple[Ranges, ...]:
    """Return what is left of marked cuts and hangs on nothing any more, as ranges of the part.

    What runs through a part `length` mm long runs through its longer blank.
    """
    gone = [box_of(ranges) for ranges in blank.cuts]
    free: list[Ranges] = []
    for mark in marks:
        along, across, deep = mark.ranges
        if along == (Fraction(0), length):
            along = (along[0], blank.sizes[LENGTH])
        drawn = blank.clipped((along, across, deep))
        rest = left_of(box_of(drawn), gone) if drawn is not None else ()
        if rest and not any(_hangs(box, blank, (*gone, *rest)) for box in rest):
            free += [_ranges(box) for box in rest]
    return tuple(free)


def trapped(hold: Hold, blank: Blank, waste: Sequence[Ranges], near: Fraction) -> Iterator[Trouble]:
    """Yield where waste comes free between the fence and a saw blade `near` mm from it."""
    if hold.against_fence is None:
        return
    direction = SURFACES[hold.against_fence][0]
    low, high = blank.measured_from(hold.against_fence, (Fraction(0), near))
    if any(low <= box[direction][0] and box[direction][1] <= high for box in waste):
        yield Trouble(
            Reason.HOLD,
            "what it saws off lies trapped between blade and fence, and is thrown back",
            "the wood that stays at the fence, the waste beyond the blade",
        )


def _hangs(box: Box, blank: Blank, other: Sequence[Box]) -> bool:
    """Return whether wood that stays touches one of the six sides of a box."""
    for axis in range(3):
        for low, high in (
            (box.low[axis] - _HAIR, box.low[axis]),
            (box.high[axis], box.high[axis] + _HAIR),
        ):
            ranges = list(_ranges(box))
            ranges[axis] = (low, high)
            beside = blank.clipped((ranges[0], ranges[1], ranges[2]))
            if beside is not None and left_of(box_of(beside), other):
                return True
    return False


def _ranges(box: Box) -> Ranges:
    along, across, deep = tuple(zip(box.low, box.high, strict=True))
    return along, across, deep
