"""TRADE H17, H36: late cuts lay bare no biscuit or dowel, and no hinge lies over a joint."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from dryfit.checks.finding import finding
from dryfit.checks.regions import overlap, pairs, ranges, solid_parts
from dryfit.diagnostics import Diagnostic, Note, Severity
from dryfit.geometry.frame import SURFACES
from dryfit.joinery.feature import Feature
from dryfit.kinds.roles import HINGE_RECESS, PIN_HOLE
from dryfit.placing.model import Joint, Model, Part

_PIECES = {"biscuits": "biscuit", "dowels": "dowel", "loose tenon": "loose tenon"}
_UNDER_A_LEAF = {
    "housing": "housing",
    "groove": "groove",
    "mortise": "mortise",
    "lap": "lap",
    "screw hole": "screw",
    "pilot hole": "screw",
    "dowel hole": "dowel",
    "biscuit slot": "biscuit",
    "loose mortise": "loose tenon",
    PIN_HOLE: "row of pin holes",
}
"""What a hinge's leaf should not lie over, by the role of its cut, and what is in it then."""


def check_bared(model: Model) -> Iterator[Diagnostic]:
    """Yield, once for a line, late cuts into what holds a joint.  Findings: loose-piece-bared."""
    joints: dict[str, list[Joint]] = {}
    for joint in model.joints:
        if joint.kind in _PIECES and joint.loose_pieces:
            joints.setdefault(joint.guest, []).append(joint)
            joints.setdefault(joint.host, []).append(joint)
    told: set[tuple[object, object]] = set()
    for part in solid_parts(model) if joints else ():
        for feature in part.features:
            if feature.after is None or (feature.mate is not None and not _is_leaf(feature)):
                continue
            for joint in _cut_into(joints, part, feature):
                if (feature.span, joint.span) not in told:
                    told.add((feature.span, joint.span))
                    yield _bared(model, part, feature, joint)


def _is_leaf(feature: Feature) -> bool:
    return feature.role == HINGE_RECESS


def _cut_into(joints: dict[str, list[Joint]], part: Part, feature: Feature) -> Iterator[Joint]:
    for copy in part.copies:
        if copy.hand not in feature.hands or copy.name not in joints:
            continue
        region = feature.region(copy.box, copy.frame)
        for joint in joints[copy.name]:
            if feature.role == "hole" and joint.kind == "loose tenon":
                # A peg through a loose tenon holds it.
                continue
            if any(region.meets(each) for each in joint.loose_pieces):
                yield joint


def _bared(model: Model, part: Part, feature: Feature, joint: Joint) -> Diagnostic:
    piece = _PIECES[joint.kind]
    mates = {model.part_of(name).name for name in (joint.guest, joint.host)} - {part.name}
    mate = next(iter(mates), part.name)
    display = model.display
    return finding(
        "H17",
        "loose-piece-bared",
        Severity.WARNING,
        f"{part.name}: the {feature.role}, {display.with_unit(feature.depth)} deep, is cut after "
        f"the glue-up into a {piece} between it and the {mate}, which shows then and holds no more",
        feature.span,
        figures={"depth": feature.depth},
        remedy=f"move the {feature.role}, make it shallower, or take fewer or smaller "
        f"{'loose tenons' if joint.kind == 'loose tenon' else joint.kind}",
        notes=(Note(f"the {joint.kind}", joint.span),),
    )


def check_leaves(model: Model) -> Iterator[Diagnostic]:
    """Yield, once for two lines, that a hinge is let in over another joint.

    Its screws then hold in a shelf's end, or meet other screws.  Findings: hinge-over-joint.
    """
    for part in solid_parts(model):
        told: set[tuple[object, object]] = set()
        for one, two in pairs(part):
            for leaf, cut in ((one, two), (two, one)):
                if not _is_leaf(leaf) or cut.role not in _UNDER_A_LEAF:
                    continue
                common = _under(part, leaf, cut)
                if common is not None and (leaf.span, cut.span) not in told:
                    told.add((leaf.span, cut.span))
                    yield _over(model, part, (leaf, cut), common)


def _under(part: Part, leaf: Feature, cut: Feature) -> Fraction | None:
    """Return how far along the leaf a cut lies under it, or None; mm."""
    deep = SURFACES[leaf.surface][0]
    first, second = ranges(part, leaf), ranges(part, cut)
    beside = [overlap(first[axis], second[axis]) for axis in range(3)]
    if min(beside) <= 0:
        return None
    longest = max(
        (axis for axis in range(3) if axis != deep), key=lambda a: first[a][1] - first[a][0]
    )
    return beside[longest]


def _over(model: Model, part: Part, pair: tuple[Feature, Feature], common: Fraction) -> Diagnostic:
    leaf, cut = pair
    what = _UNDER_A_LEAF[cut.role]
    mate = f" for the {cut.mate}" if cut.mate and cut.role != PIN_HOLE else ""
    return finding(
        "H36",
        "hinge-over-joint",
        Severity.WARNING,
        f"{part.name}: a hinge lies {model.display.with_unit(common)} over the {what}{mate}, where "
        "its screws hold badly",
        leaf.span,
        figures={"over": common},
        remedy="move what stands there, or write another number of hinges",
        notes=(Note(f"the {what}", cut.span),) if cut.span else (),
    )
