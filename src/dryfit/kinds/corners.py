"""The families that hold two boards at a corner: fingers and tails (TRADE B13-B15)."""

from __future__ import annotations

from dryfit.kinds.kind import JointKind

CORNER_KINDS: tuple[JointKind, ...] = (
    JointKind(
        "box joint",
        "box joint",
        "box joints",
        "Box joint, or finger joint: square fingers of one width on the ends of two boards, each "
        "in a gap between those of the other.",
        example="long rails into short rails: box joint 8",
        written="box joint",
        sizes=("width",),
        glued=True,
        lapped=True,
        corner=True,
        spread="spread finger",
    ),
    JointKind(
        "through dovetail",
        "through dovetail",
        "through dovetails",
        "Through dovetail: tails that widen toward the end of one board, held between the pins of "
        "the other; both show on the outside.",
        example="long rails into short rails: 3 dovetails, short rails carry the tails",
        written="through dovetail",
        counted=True,
        details=frozenset({"tails"}),
        glued=True,
        lapped=True,
        corner=True,
        spread="spread dovetail",
        glue_noun=("dovetailed corner", "dovetailed corners"),
    ),
    JointKind(
        "half-blind dovetail",
        "half-blind dovetail",
        "half-blind dovetails",
        "Half-blind dovetail: the tails end in sockets of the other board, behind a lap of its "
        "wood, so that its face shows nothing of them.",
        example="short rails into long rails: 3 half-blind dovetails 14 deep",
        written="half-blind dovetail",
        sizes=("depth",),
        counted=True,
        glued=True,
        lapped=True,
        corner=True,
        spread="spread dovetail",
        glue_noun=("dovetailed corner", "dovetailed corners"),
    ),
)
