"""What a placed piece wants of a plan: the Model without its joinery, as the rehearsal takes it."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from dryfit.geometry.box import Box
from dryfit.geometry.frame import LENGTH, WIDTH, Frame
from dryfit.joinery.flare import halves
from dryfit.piece.declared import PIECE_DIMENSIONS
from dryfit.placing.model import Assembly, Coating, Joint, Model, Part
from dryfit.placing.staying_straight import staying_straight
from dryfit.placing.strips import FLUSH, strip_name, strip_parts
from dryfit.rehearsal.goal import (
    Goal,
    Mark,
    Pegs,
    Waits,
    WantedAssembly,
    WantedCoats,
    WantedCopy,
    WantedJoint,
    WantedLip,
    WantedPart,
    WantedStrip,
)

TENTHS = 10
"""Of a minute: the notes count minutes, the plan tenths."""


def goal_of(model: Model) -> Goal:
    """Return what the finished piece has to be, read from its boxes and from the notes."""
    # What has no place of its own, as knobs, is fitted by the name of its line.
    fitted = (
        name
        for thing in model.bought
        for name in (tuple(copy.name for copy in thing.copies) or (thing.name,))
    )
    boxes = {copy.name: copy.box for part in model.parts for copy in part.copies}
    frames = {copy.name: copy.frame for part in model.parts for copy in part.copies}
    straight = staying_straight(model)
    return Goal(
        overall=model.overall,
        parts=tuple(_part(part, straight=part.name in straight) for part in model.parts),
        joints=tuple(
            _joint(joint, frames[joint.guest], boxes[joint.guest]) for joint in model.joints
        ),
        assemblies=tuple(_assembly(assembly) for assembly in model.assemblies),
        coats=tuple(_coats(coating) for coating in model.coatings),
        fitted=tuple(fitted),
        strips=tuple(each for part in model.parts if part.lips for each in _strips(part)),
        room=tuple(dict.fromkeys(_room(model))),
    )


def _room(model: Model) -> Iterator[tuple[str, int, Fraction]]:
    for part in model.parts:
        for each in part.measures:
            if each.walls and each.taken is not None and each.taken > each.nominal:
                axis = PIECE_DIMENSIONS.index(each.name.rpartition(" ")[2])
                yield from ((wall, axis, each.taken - each.nominal) for wall in each.walls)


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


def _part(part: Part, *, straight: bool) -> WantedPart:
    sizes = (part.length, part.width, part.thickness)
    return WantedPart(
        name=part.name,
        stock=part.stock,
        staves=part.staves.count if part.staves else 0,
        made=part.made,
        waits=tuple(Waits(each.dimension, each.name, each.walls) for each in part.measures),
        # A stretcher leans only with its legs; by itself it is made square, as any other part.
        copies=tuple(
            WantedCopy(c.name, c.hand, c.box, c.frame, c.lean if part.sloped else None)
            for c in part.copies
        ),
        horns=part.horns,
        sloped=(part.sloped.length, part.sloped.shoulder) if part.sloped else None,
        slopes_out=part.slopes_out,
        timber=part.timber,
        lips=tuple(WantedLip(lip.surface, lip.thickness, lip.banded) for lip in part.lips),
        waney=frozenset(part.waney),
        stays_straight=straight,
        rested=part.rested,
        marks=tuple(
            Mark(
                id=feature.id,
                kind=feature.kind,
                surface=feature.surface,
                ranges=feature.ranges(sizes),
                hands=feature.hands,
                declared=feature.mate is None and feature.role in DECLARED,
                after=feature.after,
                toward=feature.form.toward
                if feature.form and feature.role in {"mitre", "taper", "bevel"}
                else None,
                shape=feature.role if feature.role in {"taper", "bevel", "curve"} else None,
                halves=halves(feature.ranges(sizes), feature.flare) if feature.flare else (),
            )
            for feature in part.features
        ),
    )


def _strips(part: Part) -> Iterator[WantedStrip]:
    """Yield the strips that a part is lipped with, as large as what they cover."""
    on = {
        strip_name(copy.name, lip.surface): (copy.name, lip.surface)
        for copy in part.copies
        for lip in part.lips
    }
    for strips in strip_parts(part, FLUSH):
        wanted, sizes = (
            _part(strips, straight=False),
            (strips.length, strips.width, strips.thickness),
        )
        for copy in strips.copies:
            yield WantedStrip(copy.name, wanted, on[copy.name], sizes)


def _joint(joint: Joint, guest: Frame, box: Box) -> WantedJoint:
    return WantedJoint(
        id=joint.id,
        kind=joint.kind,
        guest=joint.guest,
        host=joint.host,
        region=joint.region,
        clearance=joint.clearance,
        patches=joint.patches,
        haunch=_haunch(joint, guest) or _tongue(joint, guest, box),
        sliding_room=_sliding_room(joint, guest),
        pegs=_pegs(joint),
        loose_pieces=joint.loose_pieces,
        stands_out=_stands_out(joint),
        floats=joint.tenon.floats if joint.tenon else Fraction(0),
    )


def _stands_out(joint: Joint) -> bool:
    """Return whether ends of tenon, wedges or pegs stand out that the notes do not want proud."""
    tenon = joint.tenon
    if tenon is None or tenon.proud:
        return False
    return tenon.pegs > 0 or (joint.glued and (tenon.through or tenon.wedges > 0))


def _pegs(joint: Joint) -> Pegs | None:
    tenon = joint.tenon
    if tenon is None or not tenon.pegs:
        return None
    return Pegs(tenon.all_pegs, tenon.peg, tenon.drawn, max(tenon.plays, default=Fraction(0)))


def _tongue(joint: Joint, guest: Frame, whole: Box) -> Box | None:
    """Return the box of a tongue: from the shoulder, over the whole width, as thick as a tenon."""
    if joint.tenon is None or not joint.tenon.tongue:
        return None
    (along, sign), (wide, _) = guest.axes[LENGTH], guest.axes[WIDTH]
    low, high = list(joint.region.low), list(joint.region.high)
    if (joint.end == "R") == (sign > 0):
        low[along] = high[along] - joint.tenon.tongue
    else:
        high[along] = low[along] + joint.tenon.tongue
    low[wide], high[wide] = whole.low[wide], whole.high[wide]
    return Box((low[0], low[1], low[2]), (high[0], high[1], high[2]))


def _sliding_room(joint: Joint, guest: Frame) -> tuple[Box, ...]:
    """Return the room to both sides of each tenon that slides, between the tenons' ends."""
    tenon = joint.tenon
    if tenon is None or not any(tenon.plays):
        return ()
    wide = guest.axes[WIDTH][0]
    rooms: list[Box] = []
    for number, play in enumerate(tenon.plays):
        start = joint.region.low[wide] + number * (tenon.width + tenon.between)
        for near, far in ((start - play, start), (start + tenon.width, start + tenon.width + play)):
            low, high = list(joint.region.low), list(joint.region.high)
            low[wide], high[wide] = near, far
            if play:
                rooms.append(Box((low[0], low[1], low[2]), (high[0], high[1], high[2])))
    return tuple(rooms)


def _haunch(joint: Joint, guest: Frame) -> Box | None:
    """Return the box of a haunch: from the shoulder, beside the tenon, as thick as it."""
    if joint.tenon is None or joint.tenon.haunch is None:
        return None
    haunch = joint.tenon.haunch
    (along, sign), (wide, _) = guest.axes[LENGTH], guest.axes[WIDTH]
    low, high = list(joint.region.low), list(joint.region.high)
    # The frame's axis runs from end R, so that a tenon at R ends where it begins.
    if (joint.end == "R") == (sign > 0):
        low[along] = high[along] - haunch.length
    else:
        high[along] = low[along] + haunch.length
    if haunch.side > 0:
        low[wide], high[wide] = high[wide], high[wide] + haunch.reach
    else:
        low[wide], high[wide] = low[wide] - haunch.reach, low[wide]
    return Box((low[0], low[1], low[2]), (high[0], high[1], high[2]))


def _assembly(assembly: Assembly) -> WantedAssembly:
    cure = None if assembly.cure is None else assembly.cure * TENTHS
    return WantedAssembly(
        name=assembly.name,
        stage=assembly.stage,
        of=assembly.of,
        glue=assembly.glue,
        cure=cure,
        pressed=assembly.pressed is not None,
        people=assembly.people or 1,
    )


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
