"""TRADE H06, H17: cuts with no mate that run into joints."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from dryfit.checks.finding import finding, told_together
from dryfit.checks.regions import solid_parts
from dryfit.diagnostics import Diagnostic, Note, Severity
from dryfit.geometry.box import Box
from dryfit.joinery.cut import from_side
from dryfit.joinery.feature import Feature
from dryfit.joinery.form import Region
from dryfit.kinds.joints import is_panelled, joint_kinds
from dryfit.kinds.roles import PIN_HOLE, POCKET
from dryfit.placing.model import Copy, Joint, Model, Part

EASED = frozenset({"chamfer", "round-over", "profile"})
LONE = EASED | {"groove", "rabbet", "hole", "taper", "curve", "notch", "slot", "bevel"}
"""The jobs of cuts with no mate that are made before parts are joined."""

_SHAPING = frozenset({"taper", "curve", "notch", "slot"})
_MITRED = "mitre"
_FITTED = frozenset(
    {
        *("half lap", "bridle", "mortise and tenon", "housing", "rabbet", "runner", _MITRED),
        *("tongue and groove", "ship lap", "round tenon"),
        *(kind.name for kind in joint_kinds() if kind.panelled or kind.corner),
    }
)
"""Joints whose parts fill one box: what is cut there takes of it."""
_POCKETED = "pocket screws"
_BORED = frozenset(kind.name for kind in joint_kinds() if kind.hardware)
"""Joints that hold in holes, recesses and slots: what is cut into these takes their hold."""
_HOLDING = frozenset(
    {
        *("screw hole", "pilot hole", "counterbore", "screw slot"),
        *("hinge recess", "plate recess", "button slot"),
    }
)
_SCREWS = frozenset({"screw hole", "pilot hole"})
"""A trench beside these is told by `checks.screws`."""
_THINS = EASED | {"bevel", "rabbet"}
"""What thins the edge of a panel, so that it goes into its groove."""
_HAIR = Fraction(1, 100)
_MUCH = Fraction(1, 5)
"""What a trench or an eased edge may take of a joint's wood: less than this share does no harm,
as where the rabbet for a back runs past the end of a housing (common practice)."""

_TOLD = _FITTED | _BORED | {_POCKETED}
Own = tuple[Feature, Region]


def check_cuts_in_joints(model: Model) -> Iterator[Diagnostic]:
    """Yield, once for a line of the notes, cuts that take wood from a joint.

    What is cut after the glue-up may lie in a joint: the joint is one piece of wood by then (M6).
    Findings: cut-in-joint.
    """
    joints = _Joints(model)
    yield from told_together(
        each for part in solid_parts(model) for each in _in_joints(joints, part)
    )


class _Joints:
    """The joints of each copy that share wood or loose pieces, and the copies with their parts."""

    def __init__(self, model: Model) -> None:
        self.part_of = {copy.name: part for part in model.parts for copy in part.copies}
        self.box_of = {copy.name: copy.box for part in model.parts for copy in part.copies}
        self.of: dict[str, list[Joint]] = {}
        for joint in model.joints:
            if joint.kind in _TOLD or joint.loose_pieces:
                self.of.setdefault(joint.guest, []).append(joint)
                self.of.setdefault(joint.host, []).append(joint)


def _in_joints(joints: _Joints, part: Part) -> Iterator[Diagnostic]:
    told: set[tuple[object, str, str]] = set()
    for copy in part.copies:
        own = lone_cuts_of(part, copy)
        for joint in joints.of.get(copy.name, ()) if own else ():
            mate = joints.part_of[joint.guest if joint.host == copy.name else joint.host]
            for feature, region in own:
                cause = (feature.span, joint.kind, mate.name)
                common = None if cause in told else _common(joints, copy, joint, (feature, region))
                if common is not None:
                    told.add(cause)
                    yield _in_joint(part, mate, joint, feature, common)


def lone_cuts_of(part: Part, copy: Copy) -> list[Own]:
    """Return the cuts with no mate of a copy that are made before it is joined, as they lie."""
    return [
        (feature, feature.region(copy.box, copy.frame))
        for feature in part.features
        if feature.role in LONE
        and feature.mate is None
        and feature.after is None
        and copy.hand in feature.hands
    ]


def _common(joints: _Joints, copy: Copy, joint: Joint, own: Own) -> Fraction | None:
    """Return the narrowest size of what a cut takes at most of a joint, or None; mm."""
    feature, region = own
    if feature.role == "groove" and joint.kind == "mortise and tenon":
        # A groove may cross a mortise, and one along a rail is held against its tenon (H06).
        return None
    # A sliver of a dowel or biscuit shows; a sliver of wood that fills a joint does no harm.
    whole = feature.role in _SHAPING or feature.role == "hole" or bool(joint.loose_pieces)
    if joint.kind == _MITRED and not whole:
        # A rabbet or a groove runs on round the corner, in both members alike.
        return None
    if is_panelled(joint.kind) and joint.guest == copy.name:
        if feature.role in _THINS:
            return None
        whole = whole and feature.role != "notch"
    zones = [
        zone
        for box in _shared(joints, copy, joint, feature)
        if (zone := box.overlap(copy.box)) is not None
    ]
    shoulder = _shoulder(joints, copy, joint) if feature.role != "hole" else None
    if shoulder is not None:
        zones.append(shoulder)
    shared = (
        region.box.overlap(zone)
        for zone in zones
        if region.meets(zone) and (whole or _share(region, zone) > _MUCH)
    )
    return next((min(map(each.extent, range(3))) for each in shared if each is not None), None)


def _shared(joints: _Joints, copy: Copy, joint: Joint, feature: Feature) -> tuple[Box, ...]:
    """Return the boxes that a joint needs whole in one of its copies.

    Butted faces share no wood, but what lies in both does, such as dowels.
    """
    part, mate = joints.part_of[copy.name], joints.part_of[_other(joint, copy)]
    if joint.kind == _POCKETED:
        return _pockets(part, copy, mate)
    if joint.kind in _BORED:
        return _holds(part, copy, joint, mate, feature)
    return joint.loose_pieces or (joint.region,)


def _holds(part: Part, copy: Copy, joint: Joint, mate: Part, lone: Feature) -> tuple[Box, ...]:
    """Return the holes, recesses and slots of a copy by which a mate is held."""
    return tuple(
        each.box(copy.box, copy.frame)
        for each in part.features
        if copy.hand in each.hands
        and (
            (each.role in _HOLDING and each.mate == mate.name)
            or (each.role == PIN_HOLE and joint.kind == "shelf pins")
        )
        and (each.role not in _SCREWS or lone.role == "hole")
    )


def _other(joint: Joint, copy: Copy) -> str:
    return joint.guest if joint.host == copy.name else joint.host


def _pockets(part: Part, copy: Copy, mate: Part) -> tuple[Box, ...]:
    return tuple(
        feature.box(copy.box, copy.frame)
        for feature in part.features
        if feature.role == POCKET and feature.mate == mate.name and copy.hand in feature.hands
    )


def _share(region: Region, zone: Box) -> Fraction:
    common = region.box.overlap(zone)
    return common.volume() / zone.volume() if common else Fraction(0)


def _shoulder(joints: _Joints, copy: Copy, joint: Joint) -> Box | None:
    """Return the wood just under the face of a host against which the guest's shoulder stands."""
    if joint.kind != "mortise and tenon" or joint.host != copy.name:
        return None
    guest = joints.box_of[joint.guest]
    for axis in range(3):
        for side in (-1, 1):
            within = guest.low[axis] if side > 0 else guest.high[axis]
            face = copy.box.high[axis] if side > 0 else copy.box.low[axis]
            beyond = guest.high[axis] if side > 0 else guest.low[axis]
            enters = copy.box.low[axis] < within < copy.box.high[axis]
            if enters and (beyond - face) * side > 0:
                return from_side(copy.box, axis, side, _HAIR).overlap(guest)
    return None


def _in_joint(
    part: Part, mate: Part, joint: Joint, feature: Feature, common: Fraction
) -> Diagnostic:
    shaping = feature.role in _SHAPING
    stands = "are" if joint.kind.endswith("s") else "is"
    return finding(
        "H06",
        "cut-in-joint",
        Severity.ERROR if shaping else Severity.WARNING,
        f"{part.name}: {feature.id} takes wood where the {joint.kind} with the {mate.name} "
        f"{stands}",
        feature.span,
        figures={"common": common},
        remedy=_clear_of(joint, feature.role),
        notes=(Note("the joint", joint.span),),
    )


def _clear_of(joint: Joint, role: str) -> str:
    if role in _SHAPING:
        return "let it begin or end clear of the joint"
    if joint.loose_pieces:
        return f"move it clear of the {joint.kind}, or take fewer or smaller ones"
    if role == "hole":
        return "move it clear of the joint, or bore it after the glue-up with `after glue up`"
    return "stop it before the joint, or cut it after the glue-up with `after glue up`"
