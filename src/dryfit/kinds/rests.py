"""Faces that lie on one another, with glue or without (TRADE B11)."""

from __future__ import annotations

from dryfit.kinds.kind import JointKind

REST_KINDS: tuple[JointKind, ...] = (
    JointKind(
        "glued butt",
        "glued butt joint",
        "glued butt joints",
        "Butt joint: two flat faces glued together, with nothing cut in either.",
        example="long rails under seat: glued",
        cut=False,
        glued=True,
    ),
    JointKind(
        "rest",
        "place where a part rests",
        "places where parts rest",
        "Rest: a part lies on another and is held by what is said of it elsewhere.",
        example="seat onto long rails",
        cut=False,
    ),
)
