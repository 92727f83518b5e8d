"""Clips, figure-8 plates and slotted screws: where a rail is cut for them, and whether it is.

TRADE B22: a kerf in the rail's side, a shallow recess in its top edge, a hole right up through it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from dryfit.geometry.box import Box
from dryfit.rehearsal.fault import Reason, Trouble
from dryfit.rehearsal.goal import WantedCopy, WantedJoint

UP = 2
_PLATE = Fraction(3)
"""A plate is 2 to 3 mm thick at most (common practice)."""

_KERF = Fraction(25)
"""A clip reaches no further down than this, mm (TRADE B22: 11 to 13)."""

_BORED = frozenset({"figure-8 plates", "slotted screws"})


def for_fixings(joint: WantedJoint, host: WantedCopy) -> Iterator[Box]:
    """Yield where a rail may be bored for one fixing of a top.  Kerfs are shapes of their own."""
    if joint.kind not in _BORED:
        return
    low, high = list(joint.region.low), list(joint.region.high)
    if joint.kind == "slotted screws":
        low[UP] = host.box.low[UP]
    else:
        low[UP] = joint.region.low[UP] - _PLATE
    yield Box((low[0], low[1], low[2]), (high[0], high[1], high[2]))


def unfixed(joint: WantedJoint, host: WantedCopy, cuts: Sequence[Box]) -> Iterator[Trouble]:
    """Yield a fixing that finds nothing cut for it in the rail; `cuts` in the piece frame."""
    if joint.kind == "clips" and not any(_is_kerf(joint, host, cut) for cut in cuts):
        yield Trouble(
            Reason.FIT, "it finds no kerf for its clip", "a kerf near the top of the rail"
        )
    elif joint.kind == "figure-8 plates" and not any(_opens(joint, cut) for cut in cuts):
        yield Trouble(Reason.FIT, "it finds no recess for its plate", "a recess in the rail's edge")
    elif joint.kind == "slotted screws" and not _goes_through(joint, host, cuts):
        yield Trouble(Reason.FIT, "no hole leads its screw up to it", "a hole up through the rail")


def _is_kerf(joint: WantedJoint, host: WantedCopy, cut: Box) -> bool:
    top = host.box.high[UP]
    deep = cut.low[UP] > top - _KERF and cut.high[UP] < top
    along = all(
        cut.low[axis] <= joint.region.low[axis] and joint.region.high[axis] <= cut.high[axis]
        for axis in (0, 1)
        if axis == _along(host)
    )
    return deep and along


def _along(host: WantedCopy) -> int:
    return host.frame.axes[0][0]


def _opens(joint: WantedJoint, cut: Box) -> bool:
    return cut.high[UP] == joint.region.low[UP] and _inside(joint, cut)


def _goes_through(joint: WantedJoint, host: WantedCopy, cuts: Sequence[Box]) -> bool:
    own = sorted((cut.low[UP], cut.high[UP]) for cut in cuts if _inside(joint, cut))
    reached = host.box.low[UP]
    for low, high in own:
        if low <= reached:
            reached = max(reached, high)
    return reached == host.box.high[UP]


def _inside(joint: WantedJoint, cut: Box) -> bool:
    return all(
        joint.region.low[axis] <= cut.low[axis] and cut.high[axis] <= joint.region.high[axis]
        for axis in (0, 1)
    )
