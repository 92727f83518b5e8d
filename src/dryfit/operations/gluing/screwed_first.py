"""What is screwed dry before the glue is opened: cleats that carry what is then glued on them."""

from __future__ import annotations

from dryfit.operations.members import all_copies
from dryfit.placing.model import Assembly, Joint, Model


def screwed_first(assembly: Assembly, model: Model) -> tuple[Joint, ...]:
    """Return the dry screws in a glue-up of what something else is glued onto in it."""
    joints = (model.joint(name) for name in assembly.joints)
    carry = {joint.host for joint in joints if joint.kind == "glued butt"}
    inside = set(all_copies(assembly, model))
    return tuple(
        joint
        for joint in model.joints
        if joint.kind == "screws"
        and not joint.glued
        and joint.guest in carry
        and {joint.guest, joint.host} <= inside
    )
