"""Mitred corners: each of two members has one half of the corner, and nothing is left over.

The half is told by two faces of the corner's box, the end that is cut into and the side toward
which the cut runs out; two halves close where each runs out toward the inside of the other.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from dryfit.geometry.box import Box
from dryfit.geometry.frame import LENGTH, SURFACES
from dryfit.rehearsal.blank import Blank
from dryfit.rehearsal.fault import Reason, Trouble
from dryfit.rehearsal.goal import WantedCopy, WantedJoint
from dryfit.rehearsal.state import State

Direction = tuple[int, int]


@dataclass(frozen=True, slots=True)
class Half:
    """The half of a box that is gone: next to one of its faces and to another beside it."""

    box: Box
    end: Direction
    toward: Direction

    def completes(self, other: Half) -> bool:
        """Return whether what one takes of the box is what the other leaves."""
        return (
            self.box == other.box
            and self.toward == (other.end[0], -other.end[1])
            and other.toward == (self.end[0], -self.end[1])
        )


def halves(copy: WantedCopy, blank: Blank) -> tuple[Half, ...]:
    """Return the slanting cuts of a copy where they are in the finished piece."""
    return tuple(
        Half(
            copy.frame.to_piece(copy.box, slant.ranges),
            _facing(copy, slant.end),
            _facing(copy, slant.toward),
        )
        for slant in blank.slants
    )


def shared_out(state: State, first: str, second: str) -> list[Box]:
    """Return the corners of which two copies have one half each."""
    one, two = (halves(state.copies[name], state.blanks[name]) for name in (first, second))
    return [half.box for half in one for other in two if half.completes(other)]


def open_mitre(state: State, joint: WantedJoint) -> Iterator[tuple[str, Trouble]]:
    """Yield a mitre whose two cuts do not make up the corner between them."""
    if joint.kind != "mitre":
        return
    if joint.region not in shared_out(state, joint.guest, joint.host):
        yield (
            joint.guest,
            Trouble(
                Reason.FIT,
                f"its mitre with {joint.host} does not close",
                "both ends cut, to angles that make 90 degrees, from the outer corner to the inner",
            ),
        )


def shut_ways(state: State, joint: WantedJoint) -> Iterator[tuple[str, str, int, int]]:
    """Yield which member cannot be drawn off the other of a mitre: by axis and side, two each.

    Towards the corner along its own length, and towards the inside of the corner.
    """
    pair = (state.copies[joint.guest], state.copies[joint.host])
    for own, mate in (pair, pair[::-1]):
        axis, inner = own.frame.axes[LENGTH][0], mate.frame.axes[LENGTH][0]
        yield own.name, mate.name, axis, _corner(joint.region, own.box, axis)
        yield own.name, mate.name, inner, -_corner(joint.region, mate.box, inner)


def _corner(region: Box, box: Box, axis: int) -> int:
    return 1 if region.high[axis] == box.high[axis] else -1


def _facing(copy: WantedCopy, surface: str) -> Direction:
    direction, far = SURFACES[surface]
    axis, sign = copy.frame.axes[direction]
    return axis, sign if far else -sign
