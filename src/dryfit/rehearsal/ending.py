"""What must be true when the last step is done: the piece stands there, whole, and nothing else."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from dryfit.geometry.box import Box, spanning
from dryfit.rehearsal.blank import left_of
from dryfit.rehearsal.fault import Fault, Reason
from dryfit.rehearsal.goal import Mark, WantedCopy, WantedJoint
from dryfit.rehearsal.leaning import never_levelled
from dryfit.rehearsal.level_shelves import askew
from dryfit.rehearsal.lipping import never_lipped
from dryfit.rehearsal.moving_tops import held_across
from dryfit.rehearsal.pegging import unpegged
from dryfit.rehearsal.state import State, cuts_in_piece
from dryfit.rehearsal.together import put_together
from dryfit.rehearsal.zones import bored

_WAYS = ("width", "depth", "height")


def at_the_end(state: State) -> None:
    """Add a fault for everything that is not as the goal wants it."""
    for found in (
        _parts(state),
        _shapes(state),
        _screws(state),
        unpegged(state),
        held_across(state),
        askew(state),
        never_levelled(state),
        never_lipped(state),
        _glue_ups(state),
        _overall(state),
    ):
        state.faults += found


def _parts(state: State) -> Iterator[Fault]:
    for name in state.blanks:
        if name not in state.copies:
            yield Fault(Reason.COUNT, f"{name} is left over", "every blank used")
    for who, trouble in put_together(state, state.copies):
        yield Fault(trouble.reason, f"{who}: {trouble.message}", trouble.needed)


def _shapes(state: State) -> Iterator[Fault]:
    """Every shape that the notes ask for is there."""
    for part in state.goal.parts:
        for copy in part.copies:
            for mark in part.marks:
                if mark.declared and copy.hand in mark.hands:
                    yield from _missing(state, copy, mark)


def _missing(state: State, copy: WantedCopy, mark: Mark) -> Iterator[Fault]:
    blank = state.blanks.get(copy.name)
    if blank is None:
        return
    if mark.shape is not None:
        if (copy.name, mark.id) not in state.cut:
            yield Fault(Reason.CUT, f"{copy.name}: {mark.id} is never made", "the shape cut")
        elif (copy.name, mark.id) in state.rough:
            message = f"{copy.name}: {mark.id} is as the band saw left it"
            yield Fault(Reason.SURFACE, message, "the shape faired to its line")
        return
    if mark.kind == "profile" and (copy.name, mark.id) not in state.cut:
        yield Fault(Reason.CUT, f"{copy.name}: {mark.id} is never made", "the edge shaped")
        return
    box = copy.frame.to_piece(copy.box, mark.ranges)
    if left_of(box, cuts_in_piece(copy, blank)) and mark.kind != "hole":
        yield Fault(Reason.CUT, f"{copy.name}: {mark.id} is not cut whole", "the shape as marked")
    elif (copy.name, mark.id) not in state.cut:
        yield Fault(Reason.CUT, f"{copy.name}: {mark.id} is never made", "every hole bored")


LONGEST_SCREW = Fraction(80)
"""No longer wood screw is planned: what runs on further is a groove that ends there, mm."""


def _screws(state: State) -> Iterator[Fault]:
    """Every screw joint is bored in both parts, and no hole stands over uncut wood."""
    for joint in state.goal.joints:
        axis = bored(joint)
        if axis is None or joint.guest not in state.blanks or joint.host not in state.blanks:
            continue
        upper = _holes(state, joint, joint.guest, axis)
        lower = _holes(state, joint, joint.host, axis)
        if not any(_over(hole, lower, axis) for hole in upper):
            yield Fault(
                Reason.FIT,
                f"no hole of {joint.guest} stands over one of {joint.host}, into which it is "
                "screwed",
                "a clearance hole over a pilot hole for each screw",
            )
        others = [
            hole
            for other in state.goal.joints
            if other.guest == joint.guest and bored(other) == axis and other.host in state.blanks
            for hole in _holes(state, other, other.host, axis)
        ]
        if any(not _over(hole, others, axis) for hole in upper):
            yield Fault(
                Reason.FIT,
                f"a hole of {joint.guest} stands over no pilot hole in {joint.host}",
                "each screw in line through both parts",
            )


def _holes(state: State, joint: WantedJoint, name: str, axis: int) -> list[Box]:
    flat = [each for each in range(3) if each != axis]
    plane = joint.region.low[axis]
    return [
        box
        for box in cuts_in_piece(state.copies[name], state.blanks[name])
        if box.low[axis] <= plane <= box.high[axis]
        and box.extent(axis) <= LONGEST_SCREW
        and all(
            joint.region.low[each] <= box.low[each] and box.high[each] <= joint.region.high[each]
            for each in flat
        )
    ]


def _over(hole: Box, others: list[Box], axis: int) -> bool:
    """Return whether the middle of one of the others lies on the hole's middle line.

    A slot lies over its pilot hole at any place along it.
    """
    flat = [each for each in range(3) if each != axis]
    short = min(hole.extent(each) for each in flat)
    return any(
        all(
            (hole.extent(each) > short and hole.low[each] < _middle(other, each) < hole.high[each])
            or _middle(hole, each) == _middle(other, each)
            for each in flat
        )
        for other in others
    )


def _middle(box: Box, axis: int) -> Fraction:
    return (box.low[axis] + box.high[axis]) / 2


def _glue_ups(state: State) -> Iterator[Fault]:
    for assembly in state.goal.assemblies:
        if assembly.name not in state.closed:
            yield Fault(Reason.COUNT, f"{assembly.name} is never glued", "every glue-up done")


def _overall(state: State) -> Iterator[Fault]:
    there = [copy.box for name, copy in state.copies.items() if name in state.blanks]
    if len(there) < len(state.copies):
        return
    whole = spanning(tuple(there))
    for axis, size in enumerate(state.goal.overall):
        if whole.extent(axis) != size:
            yield Fault(
                Reason.SIZE,
                f"the {_WAYS[axis]} over all is {float(whole.extent(axis)):g} instead of "
                f"{float(size):g}",
                "the overall size as written",
            )
