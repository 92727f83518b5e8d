"""Joint instances with their ids and marks, once the parts have theirs."""

from __future__ import annotations

from collections.abc import Sequence

from dryfit.geometry.frame import LENGTH
from dryfit.placing.found import Found
from dryfit.placing.model import Joint, Part


def joint_instances(found: Sequence[Found], parts: Sequence[Part]) -> tuple[Joint, ...]:
    """Return the joints in the order in which they were found, numbered by kind."""
    counts: dict[str, int] = {}
    joints = []
    copies = {copy.name: copy for part in parts for copy in part.copies}
    for each in found:
        counts[each.kind] = counts.get(each.kind, 0) + 1
        end = None
        if each.end is not None and each.guest in copies:
            axis, sign = copies[each.guest].frame.axes[LENGTH]
            if axis == each.end[0]:
                end = "R" if each.end[1] != sign else "R2"
        joints.append(
            Joint(
                id=f"{each.kind} {counts[each.kind]}",
                kind=each.kind,
                guest=each.guest,
                host=each.host,
                region=each.region,
                clearance=each.clearance,
                glued=each.glued,
                end=end,
                area=each.area,
                span=each.span,
                patches=each.patches or ((each.region,) if each.glued else ()),
                dry=each.dry,
                pinned=each.pinned,
                fastened=each.fastened,
                tenon=each.tenon,
                loose_pieces=each.loose_pieces,
                fingers=each.fingers,
            )
        )
    return tuple(joints)


def ids_by_mate(joints: Sequence[Joint], parts: Sequence[Part]) -> dict[tuple[str, str], str]:
    """Return the id of the first joint of each copy with each other part: (copy, part) to id."""
    part_of = {copy.name: part.name for part in parts for copy in part.copies}
    ids: dict[tuple[str, str], str] = {}
    for joint in joints:
        if joint.kind != "rest":
            ids.setdefault((joint.guest, part_of[joint.host]), joint.id)
            ids.setdefault((joint.host, part_of[joint.guest]), joint.id)
    return ids
