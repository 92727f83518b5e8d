"""Pocket screws: where a part may be bored for them, and whether it is (TRADE B16)."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from dryfit.geometry.box import Box
from dryfit.geometry.frame import THICKNESS
from dryfit.rehearsal.fault import Reason, Trouble
from dryfit.rehearsal.goal import WantedCopy, WantedJoint

POCKETED = "pocket screws"
_SLOPE = Fraction(374, 100)
"""How far along the part a bore of 15 degrees runs for each mm of depth, 1 / 0.268, rounded up."""

_MOUTH = Fraction(20)
"""Half of what a bore of 9.5 mm takes of the face at that slant: 4.75 / 0.259, rounded up."""


def for_pockets(joint: WantedJoint, copy: WantedCopy) -> Iterator[Box]:
    """Yield where a copy may be bored for the pocket screws of a joint.

    A bore comes out in the middle of the thickness, so no more than half of it is climbed.
    """
    if joint.kind != POCKETED:
        return
    axis = joint.normal()
    deep = copy.frame.axes[THICKNESS][0]
    if deep == axis:
        return
    reach = copy.box.extent(deep) / 2 * _SLOPE + _MOUTH
    low, high = list(joint.region.low), list(joint.region.high)
    low[deep], high[deep] = copy.box.low[deep], copy.box.high[deep]
    low[axis], high[axis] = low[axis] - reach, high[axis] + reach
    whole = Box((low[0], low[1], low[2]), (high[0], high[1], high[2]))
    inside = whole.overlap(copy.box)
    if inside is not None:
        yield inside


def unbored(
    joint: WantedJoint, members: Sequence[tuple[WantedCopy, Sequence[Box]]]
) -> Iterator[tuple[str, Trouble]]:
    """Yield a joint of pocket screws in which no pocket leads from either member to the other.

    `members` are guest and host, each with what is cut from it, in the piece frame.
    """
    if joint.kind != POCKETED:
        return
    if not any(_pocketed(joint, *each) for each in members):
        yield (
            joint.guest,
            Trouble(
                Reason.FIT,
                f"no pocket leads a screw from it into {joint.host}, or back",
                "the pockets bored before the parts are put together",
            ),
        )
    for copy, cuts in members:
        deep = copy.frame.axes[THICKNESS][0]
        zones = tuple(for_pockets(joint, copy))
        bores = [cut for cut in cuts if any(zone.contains(cut) for zone in zones)]
        if any(_reaches(joint, cut) and _is_through(cut, copy, deep) for cut in bores):
            yield (
                copy.name,
                Trouble(
                    Reason.FIT,
                    f"a pocket for {joint.id} comes out at its other face",
                    "a drill that is stopped in the middle of the thickness",
                ),
            )


def _pocketed(joint: WantedJoint, copy: WantedCopy, cuts: Sequence[Box]) -> bool:
    zones = tuple(for_pockets(joint, copy))
    return any(zone.contains(cut) and _reaches(joint, cut) for zone in zones for cut in cuts)


def _reaches(joint: WantedJoint, cut: Box) -> bool:
    axis = joint.normal()
    return joint.region.low[axis] in {cut.low[axis], cut.high[axis]}


def _is_through(cut: Box, copy: WantedCopy, deep: int) -> bool:
    return cut.extent(deep) == copy.box.extent(deep)
