"""The families of boards and panels: trenches, rabbets, edges (TRADE B7-B10, B20, B24)."""

from __future__ import annotations

from dryfit.kinds.kind import JointKind

BOARD_KINDS: tuple[JointKind, ...] = (
    JointKind(
        "housing",
        "housing",
        "housings",
        "Housing: a trench across a board, as wide as the board that stands in it is thick.",
        example="1 shelf, flat, 18 thick, between short rails, housing 6",
        written="housing",
        sizes=("depth",),
        glued=True,
        enters=True,
    ),
    JointKind(
        "rabbet",
        "rabbet joint",
        "rabbet joints",
        "Rabbet joint: a step cut at the end or edge of a board, in which another one stands; the "
        "lip that is left covers its end.",
        example="1 shelf, flat, 18 thick, rabbet 12 into short rails, flush with top of legs",
        written="rabbet",
        sizes=("depth",),
        glued=True,
        enters=True,
    ),
    JointKind(
        "groove",
        "groove",
        "grooves",
        "Groove: a trench along the grain that holds the edge of a panel, free to move.",
        example="1 back, upright, facing front, 8 thick, inside legs and long rails, groove 6",
        written="groove",
        sizes=("depth", "width"),
        details=frozenset({"stopped", "through"}),
        panelled=True,
    ),
    JointKind(
        "tongue and groove",
        "tongue-and-groove joint",
        "tongue-and-groove joints",
        "Tongue and groove: boards lie edge to edge, and a tongue along the edge of each stands in "
        "a groove of the next, dry, so that no light shows when they shrink.",
        example="4 slats, across, flat, 18 thick, onto long rails, tongue and groove",
        written="tongue and groove",
        sizes=("thickness", "length"),
        details=frozenset({"tongue"}),
        beside=True,
    ),
    JointKind(
        "ship lap",
        "ship lap",
        "ship laps",
        "Ship lap: boards lie edge to edge, each rabbeted to half of its thickness so that it lies "
        "over the next, dry and free to move.",
        example="4 slats, across, flat, 18 thick, onto long rails, ship lap",
        written="ship lap",
        sizes=("length",),
        beside=True,
    ),
    JointKind(
        "back rabbet",
        "back rabbet",
        "back rabbets",
        "Back rabbet: a step along the inner edges of a case in which its back lies, dropped in "
        "from behind and held by pins, screws or glue.",
        example="1 bed, 6 thick, inside legs and short rails and long rails, rabbet 6",
        panelled=True,
    ),
    JointKind(
        "slid panel",
        "slid-in panel",
        "slid-in panels",
        "Slid-in panel: its edges slide into grooves from the one side that is open, under a lower "
        "part on which it is screwed, as the bottom of a drawer does.",
        example="1 bed, 6 thick, inside short rails and back long rail, under front long rail",
        panelled=True,
    ),
)
