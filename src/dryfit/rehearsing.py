"""What a placed piece wants of a plan: the Model without its joinery, as the rehearsal takes it."""

from __future__ import annotations

from dryfit.placing.model import Assembly, Coating, Joint, Model, Part
from dryfit.rehearsal.goal import (
    Goal,
    Mark,
    WantedAssembly,
    WantedCoats,
    WantedCopy,
    WantedJoint,
    WantedPart,
)

TENTHS = 10
"""Of a minute: the notes count minutes, the plan tenths."""


def goal_of(model: Model) -> Goal:
    """Return what the finished piece has to be, read from its boxes and from the notes."""
    fitted = (copy.name for thing in model.bought for copy in thing.copies)
    return Goal(
        overall=model.overall,
        parts=tuple(_part(part) for part in model.parts),
        joints=tuple(_joint(joint) for joint in model.joints),
        assemblies=tuple(_assembly(assembly) for assembly in model.assemblies),
        coats=tuple(_coats(coating) for coating in model.coatings),
        fitted=tuple(fitted),
    )


DECLARED = frozenset(
    {
        "rabbet",
        "hole",
        "taper",
        "chamfer",
        "round-over",
        "profile",
        "curve",
        "notch",
        "slot",
        "bevel",
        "key slot",
        "groove",
    }
)
"""Roles of features that have no mate when a line of the notes asks for them."""


def _part(part: Part) -> WantedPart:
    sizes = (part.length, part.width, part.thickness)
    return WantedPart(
        name=part.name,
        stock=part.stock,
        staves=part.staves.count if part.staves else 0,
        made=part.made,
        waits=part.measure.name if part.measure else None,
        copies=tuple(WantedCopy(c.name, c.hand, c.box, c.frame) for c in part.copies),
        marks=tuple(
            Mark(
                id=feature.id,
                kind=feature.kind,
                surface=feature.surface,
                ranges=feature.ranges(sizes),
                hands=feature.hands,
                declared=feature.mate is None and feature.role in DECLARED,
                after=feature.after,
            )
            for feature in part.features
        ),
    )


def _joint(joint: Joint) -> WantedJoint:
    return WantedJoint(
        id=joint.id,
        kind=joint.kind,
        guest=joint.guest,
        host=joint.host,
        region=joint.region,
        clearance=joint.clearance,
        patches=joint.patches,
    )


def _assembly(assembly: Assembly) -> WantedAssembly:
    cure = None if assembly.cure is None else assembly.cure * TENTHS
    return WantedAssembly(assembly.name, assembly.stage, assembly.of, assembly.glue, cure)


def _coats(coating: Coating) -> WantedCoats:
    return WantedCoats(
        copies=coating.copies,
        subject=coating.subject,
        products=tuple(
            (each.product, each.coats, None if each.apart is None else each.apart * TENTHS)
            for each in coating.products
        ),
        before=coating.before,
        surfaces=coating.surfaces,
    )
