"""The families whose parts only touch: loose pieces and slanted screws (TRADE B4-B6, B16)."""

from __future__ import annotations

from dryfit.kinds.kind import JointKind

BUTT_KINDS: tuple[JointKind, ...] = (
    JointKind(
        "dowels",
        "dowelled joint",
        "dowelled joints",
        "Dowelled joint: two faces that touch, with round pins glued into matching holes of both.",
        example="short rails into legs: 2 dowels 8 dia",
        written="dowels",
        sizes=("thickness", "length"),
        same={"diameter": "thickness"},
        counted=True,
        rowed=True,
        glued=True,
        enters=True,
        spread="spread dowel",
        glue_noun=("dowel", "dowels"),
    ),
    JointKind(
        "biscuits",
        "biscuit joint",
        "biscuit joints",
        "Biscuit joint: two faces that touch, with flat ovals of pressed wood that swell in the "
        "glue of matching slots.",
        example="short rails into legs: biscuits",
        written="biscuits",
        sizes=("length",),
        counted=True,
        rowed=True,
        glued=True,
        enters=True,
        spread="spread biscuit",
        glue_noun=("biscuit", "biscuits"),
    ),
    JointKind(
        "loose tenon",
        "loose-tenon joint",
        "loose-tenon joints",
        "Loose tenon: a mortise in both members, and a strip of wood glued into both.",
        example="short rails into legs: loose tenon 25 long",
        written="loose tenon",
        sizes=("length", "thickness", "width"),
        counted=True,
        glued=True,
        enters=True,
        spread="spread tenon",
    ),
    JointKind(
        "pocket screws",
        "pocket-screwed joint",
        "pocket-screwed joints",
        "Pocket screws: slanted holes in the face of one part, out of sight, from which screws go "
        "through its end or edge into the other.",
        example="short rails into legs: 2 pocket screws, pockets inside",
        written="pocket screws",
        sizes=("length",),
        counted=True,
        rowed=True,
        details=frozenset({"pockets"}),
        glued=True,
        spread="spread lap",
        glue_noun=("pocket-screwed joint", "pocket-screwed joints"),
    ),
)
