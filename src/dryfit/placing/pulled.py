"""Which members of a joint a bar draws shut, each along its own run (TRADE C3.1)."""

from __future__ import annotations

from dryfit.kinds.joints import is_lapped, is_mitred, joint_kind
from dryfit.kinds.roles import PIN
from dryfit.placing.model import Joint, Model


def pulled(joint: Joint, model: Model) -> tuple[str, ...]:
    """Return the members that a bar pulls into the joint, none where both run on.

    Of a corner lap the member that lies level is pulled; both would be one bar too many.  Fingers
    are shut from both sides of their corner, tails between their pins, along the pin board.  A
    mitre is pressed both ways at once: along one member alone it slides open (TRADE B12).
    """
    if joint.kind == "box joint" or is_mitred(joint.kind):
        return joint.guest, joint.host
    if joint_kind(joint.kind).corner:
        return (pin_board(joint, model),)
    if is_face_glued(joint, model) or joint.kind == "round tenon":
        # A round tenon is driven home, and stays there by its fit.
        return ()
    if not is_lapped(joint.kind):
        return (joint.guest,)
    ending = [name for name in (joint.guest, joint.host) if _ends_in(joint, name, model)]
    return (min(ending, key=lambda name: run_of(name, model)),) if ending else ()


def is_face_glued(joint: Joint, model: Model) -> bool:
    """Return whether a board is glued on with its face or edge: a clamp goes across it there."""
    flat = [axis for axis in range(3) if joint.region.extent(axis) == 0]
    return joint.kind == "glued butt" and run_of(joint.guest, model) not in flat


def run_of(copy: str, model: Model) -> int:
    """Return the axis of the piece that a copy runs along."""
    return model.copy(copy).frame.axes[0][0]


def pin_board(joint: Joint, model: Model) -> str:
    """Return which of the two boards of a dovetailed corner carries the pins."""
    for name in (joint.guest, joint.host):
        copy, part = model.copy(name), model.part_of(name)
        for feature in part.features:
            if feature.role == PIN and feature.box(copy.box, copy.frame).overlap(joint.region):
                return name
    return joint.host


def _ends_in(joint: Joint, name: str, model: Model) -> bool:
    axis, outer = run_of(name, model), model.copy(name).box
    return joint.region.low[axis] <= outer.low[axis] or joint.region.high[axis] >= outer.high[axis]
