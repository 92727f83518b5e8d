"""What a cut is called: the words of ids, kinds, sentences and checks by the feature's job."""

from __future__ import annotations

from dryfit.joinery.feature import Feature
from dryfit.kinds.roles import FINGER, PIN, ROUND, TAIL, TENON_HOLE

ENDS = frozenset({"R", "R2"})
"""The surfaces that no machine of the shop takes a trench into."""

KINDS = {
    "lap": "lap",
    "housing": "housing",
    "tenon cheek": "tenon cheek",
    "tenon shoulder": "tenon shoulder",
    "mortise": "mortise",
    "groove": "groove",
    "button slot": "groove",
    "screw hole": "hole",
    "pilot hole": "hole",
    "slot": "mortise",
    "haunch": "mortise",
    "tenon gap": "tenon shoulder",
    "peg hole": "hole",
    "peg slot": "mortise",
    "dowel hole": "hole",
    "biscuit slot": "mortise",
    "pocket hole": "hole",
    "pin hole": "hole",
    "hinge recess": "mortise",
    "plate recess": "hole",
    "screw slot": "mortise",
    "counterbore": "hole",
    "loose mortise": "mortise",
    "open mortise": "mortise",
    "tongue": "groove",
    "tongue groove": "groove",
    "bridle trench": "tenon cheek",
    TENON_HOLE: "hole",
    ROUND: "tenon cheek",
    FINGER: "fingers",
    TAIL: "tails",
    PIN: "pins",
}

_SEVERAL = frozenset(
    {
        "tenon cheek",
        "tenon shoulder",
        "tenon gap",
        "screw hole",
        "pilot hole",
        "peg hole",
        "peg slot",
        "dowel hole",
        "pocket hole",
        "pin hole",
        "hinge recess",
        "plate recess",
        "screw slot",
        "counterbore",
        "biscuit slot",
        "button slot",
        TENON_HOLE,
        ROUND,
        FINGER,
    }
)

_OF_BOARDS = {"tongue": "tongue rabbets", "tongue groove": "groove for the tongue"}
_FOR_MATE = {
    "haunch": "haunch",
    "rabbet": "rabbet",
    "open mortise": "open mortise",
    "bridle trench": "trench",
}
"""Jobs that are told with the part that goes in."""

CHECKS = {
    "lap": "two test laps lie flush, and the joint closes on the real mate",
    "housing": "the real mate goes in by the push of a hand",
    "tenon cheek": "a test tenon slides into a mortise by hand and holds its own weight",
    "tenon shoulder": "the shoulder meets the lines of the cheeks all round",
    "mitre": "four test corners close and stand square; opposite sides laid together are equal",
    "mortise": "depth and both ends against the marks",
    "groove": "what belongs into the groove slides in it by hand",
    "hole": "the holes stand on their marks",
    "fingers": "two test pieces go together by hand, level at the edge and at the tips",
    "tails": "all cuts square to the face, the shoulder line straight between the tails",
    "pins": "each tail enters its socket by half on a light tap; then leave it for the glue",
}

_OWN_CHECKS = {
    "rabbet": "width and depth against the marks, and the corner square",
    "notch": "what goes into it, or its marks",
    "dowel hole": "a dowel goes in by hand, and the mates meet on it without a step",
    "hinge recess": "a leaf lies flush in it, and the gap stays equal",
    "pin hole": "a shelf laid on four pins does not rock",
    "plate recess": "the plate lies flush and swings",
    "peg slot": "the peg slides from end to end of it, along the width of the board",
    "screw slot": "the screw slides from end to end of it",
    "pocket hole": "a screw held in the first of them comes out in the middle of the thickness",
    "biscuit slot": "a dry biscuit goes in to its middle, and the faces of the mates meet level",
    "tongue": "the tongue slides in the groove by hand, and the faces meet level",
    "tongue groove": "depth against the mark, and both cheeks of the groove equally thick",
    "open mortise": "depth and both sides against the marks, and the end of the slot square",
    "bridle trench": "the slot of the mate slides over what is left between the two trenches",
    "slot": "its ends and sides against the marks, from both faces",
}

TESTED = {"lap": 2, "housing": 2, "tenon cheek": 2, "mortise": 1, "fingers": 2}
"""Test cuts at a new setting of a fitted joint (TRADE B0.3, B26)."""


def kind_of(feature: Feature) -> str:
    """Return the kind of operation that cuts the feature."""
    if feature.kind == "rabbet":
        return "groove" if runs_along(feature) else "housing"
    if feature.role == "groove" and feature.kind == "cross slot":
        return "housing"
    return KINDS.get(feature.role, feature.role)


def runs_along(feature: Feature) -> bool:
    """Return whether a trench is cut along the grain, between a fence and the cutter.

    A rabbet at an end lies the other way: it is as long across as it is short along.
    """
    if feature.kind != "rabbet":
        return feature.kind == "long slot"
    (start, end), (near, far) = feature.along, feature.across
    return feature.surface not in ENDS and end - start >= far - near


def check_of(feature: Feature) -> str | None:
    """Return what is looked at when the feature is cut."""
    if feature.role == "rabbet" and feature.mate and feature.fit == "free":
        return f"the {feature.mate} drops in, with a little play all round"
    if feature.role == "rabbet" and feature.mate and feature.fit == "slip":
        return "half of the thickness is left, and two boards lapped on a flat bench lie level"
    if feature.role == "rabbet" and feature.mate and feature.fit == "move":
        return "what is left slides in its groove by hand, and the shoulder stays clear of it"
    if feature.role == "rabbet" and feature.mate:
        return "the real mate stands in it against the shoulder, flush with the end"
    return _OWN_CHECKS.get(feature.role) or CHECKS.get(kind_of(feature))


def what_of(feature: Feature) -> str:
    """Return the deed in an operation's id, in the contract's words."""
    if feature.role in _SEVERAL:
        return f"{feature.role}{'es' if feature.role.endswith('s') else 's'}"
    if feature.role in _OF_BOARDS:
        return _OF_BOARDS[feature.role]
    if feature.role in _FOR_MATE and feature.mate:
        return f"{_FOR_MATE[feature.role]} for {feature.mate}"
    if feature.role in {"slot", "rabbet", "chamfer", "round-over", "taper", "curve", "bevel"} or (
        feature.role == "groove" and not feature.mate
    ):
        return feature.role
    if feature.kind == "mortise":
        return f"mortise for {feature.mate}" if feature.mate else "mortise"
    if feature.kind == "cross slot" or feature.role == "housing":
        return f"housing for {feature.mate}" if feature.mate else "housing"
    if feature.kind == "long slot":
        return f"groove for {feature.mate}" if feature.mate else "groove"
    return feature.kind


def plural(what: str) -> str:
    """Return the deed for several cuts: ``end laps``, ``housings for bottom rail``."""
    head, middle, mate = what.partition(" for ")
    if head.endswith("s"):
        return what
    return f"{head}{'es' if head.endswith('ch') else 's'}{middle}{mate}"
