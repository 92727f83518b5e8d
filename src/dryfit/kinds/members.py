"""The families that join members: rails, stiles, legs (TRADE B1-B6, B12, B16)."""

from __future__ import annotations

from dryfit.kinds.kind import JointKind

MEMBER_KINDS: tuple[JointKind, ...] = (
    JointKind(
        "half lap",
        "half lap",
        "half laps",
        "Half lap: two members cross, or meet at their ends, and each gives up half of the "
        "joint's thickness to the other.",
        example="legs crossing short rails: half lap",
        written="half lap",
        sizes=("depth",),
        details=frozenset({"shows"}),
        glued=True,
        lapped=True,
        spread="spread lap",
    ),
    JointKind(
        "bridle",
        "bridle joint",
        "bridle joints",
        "Bridle joint: an open mortise, cut into the end of one member as a slot, goes over a "
        "tenon of the other that is as wide as the wood.",
        example="short rails into legs: bridle 10 thick",
        written="bridle",
        sizes=("thickness",),
        glued=True,
        lapped=True,
        spread="spread tenon",
    ),
    JointKind(
        "mitre",
        "mitre",
        "mitres",
        "Mitre: two members meet at a corner, each cut off at 45 degrees, so that no end grain "
        "shows.",
        example="legs crossing short rails: mitre",
        written="mitre",
        glued=True,
        mitred=True,
        spread="spread mitre",
        glue_noun=("mitre", "mitres"),
    ),
    JointKind(
        "mortise and tenon",
        "mortise and tenon",
        "mortises and tenons",
        "Mortise and tenon: the end of a rail is cut down to a tongue, the tenon, that fits a "
        "hole, the mortise, in another member.",
        example="2 long rails, across, 55 x 20, tenon 20 long into legs",
        written="tenon",
        sizes=("length", "thickness", "width"),
        counted=True,
        details=frozenset(
            {"tongue", "haunch", "through", "wedges", "pegs", "proud", "shoulder", "offset"}
        ),
        glued=True,
        enters=True,
        spread="spread tenon",
        glue_noun=("mortise and tenon", "mortises and tenons"),
    ),
    JointKind(
        "round tenon",
        "round tenon",
        "round tenons",
        "Round tenon: the end of a leg is rounded to a peg of its own wood, which goes into a hole "
        "bored for it; so it can lean.",
        example="legs into seat: through round tenon 25",
        written="round tenon",
        sizes=("thickness", "length"),
        same={"diameter": "thickness", "width": "thickness"},
        details=frozenset({"through", "wedges"}),
        glued=True,
        enters=True,
        spread="spread tenon",
        glue_noun=("round tenon", "round tenons"),
    ),
)
