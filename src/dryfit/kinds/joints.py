"""The families of joints: a row each, with all that other rooms ask of a family by its name.

Proportions stand in `joinery`, the search for a family's joints in `placing/families`; here is what
the reader, the checks, the glue-ups and the booklet need to know of it (TRADE B, B25, B26).
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from dryfit.kinds.corners import CORNER_KINDS
from dryfit.kinds.kind import JointKind

JOINT_KINDS: tuple[JointKind, ...] = (
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
        spread="spread mitre",
        glue_noun=("mitre", "mitres"),
    ),
    *CORNER_KINDS,
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
        sizes=("depth",),
        details=frozenset({"stopped", "through"}),
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
    ),
    JointKind(
        "slid panel",
        "slid-in panel",
        "slid-in panels",
        "Slid-in panel: its edges slide into grooves from the one side that is open, under a lower "
        "part on which it is screwed, as the bottom of a drawer does.",
        example="1 bed, 6 thick, inside short rails and back long rail, under front long rail",
    ),
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
    JointKind(
        "runner",
        "runner in its groove",
        "runners in their grooves",
        "Runner: a strip of hard wood in a groove of the drawer's side, on which the drawer slides "
        "in and out.",
        example="2 runners, on the inside of legs, running in short rails",
    ),
    JointKind(
        "screws",
        "screwed place",
        "screwed places",
        "Screws: a hole as wide as the shank through one part, a thinner pilot in the other.",
        example="seat onto long rails: screws",
        written="screws",
        cut=False,
        fastener=True,
    ),
    JointKind(
        "buttons",
        "buttoned place",
        "buttoned places",
        "Button: a block screwed under a solid top whose tongue slides in a slot of the rail, so "
        "that the top is held down and can still move.",
        example="seat onto long rails: 6 buttons",
        written="buttons",
        counted=True,
        cut=False,
        fastener=True,
    ),
    JointKind(
        "clips",
        "clipped place",
        "clipped places",
        "Clip: a bent piece of steel screwed under a solid top, whose lip stands in a saw kerf of "
        "the rail, so that the top is held down and can still move.",
        example="seat onto long rails: clips",
        written="clips",
        counted=True,
        cut=False,
        fastener=True,
    ),
    JointKind(
        "figure-8 plates",
        "place with a figure-8 plate",
        "places with figure-8 plates",
        "Figure-8 plate: two discs of steel in one; one is let into the edge of the rail, the "
        "other screwed under a solid top, and it swings as the top moves.",
        example="seat onto long rails: figure-8 plates",
        written="figure-8 plates",
        counted=True,
        cut=False,
        fastener=True,
    ),
    JointKind(
        "slotted screws",
        "screwed place with a slot",
        "screwed places with slots",
        "Slotted screw: a screw up through a rail into a solid top, in a slot across the grain of "
        "the top, so that it can move; at the middle of the top the hole is round.",
        example="seat onto long rails: slotted screws",
        written="slotted screws",
        counted=True,
        cut=False,
        fastener=True,
    ),
    JointKind(
        "hinges",
        "hinged place",
        "hinged places",
        "Hinge: two leaves on a pin, one let into the edge of a door or lid and one into what "
        "carries it, so deep that the gap between them stays as it is drawn.",
        example="seat to left legs: 2 hinges",
        written="hinges",
        sizes=("length", "width", "thickness"),
        counted=True,
        rowed=True,
    ),
    JointKind(
        "shelf pins",
        "place on shelf pins",
        "places on shelf pins",
        "Shelf pins: rows of holes in two uprights, in which pins carry a loose shelf at the "
        "height that suits.",
        example="1 shelf, flat, 18 thick, between short rails, shelf pins, gap 1 at ends",
        written="shelf pins",
        sizes=("thickness", "depth"),
        same={"diameter": "thickness"},
        rowed=True,
        details=frozenset({"apart"}),
    ),
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
"""In the order in which they are told."""

_BY_NAME = {kind.name: kind for kind in JOINT_KINDS}
_BY_WORD = {kind.written: kind for kind in JOINT_KINDS if kind.written is not None}


def joint_kind(name: str) -> JointKind:
    """Return the family of a joint of the placed piece."""
    return _BY_NAME[name]


def kind_written(word: str) -> JointKind | None:
    """Return the family that a line names by a word, or None for what is no family (`glue`)."""
    return _BY_WORD.get(word)


def is_lapped(name: str) -> bool:
    """Return whether parts lie in one another in joints of that name, as in a half lap."""
    kind = _BY_NAME.get(name)
    return kind is not None and kind.lapped


def is_clamped_over(name: str) -> bool:
    """Return whether a clamp stands over each such joint: laps, but no corner of fingers."""
    kind = _BY_NAME.get(name)
    return kind is not None and kind.lapped and not kind.corner


def overlaps_mate(name: str) -> bool:
    """Return whether each part runs to the far side of the other, as in laps and in mitres."""
    return is_lapped(name) or name == "mitre"


def is_crossed(word: str) -> bool:
    """Return whether parts that a line joins so run past one another, whatever it says of ends.

    How far fingers and tails reach follows from the end that is said to go into the other.
    """
    kind = kind_written(word)
    return kind is not None and overlaps_mate(kind.name) and not kind.corner


def joint_kinds() -> Iterator[JointKind]:
    """Yield all families."""
    yield from JOINT_KINDS


def glossary_of(names: Iterable[str]) -> tuple[tuple[str, str], ...]:
    """Return the families of joints of these kinds, each once: its name, and what it is."""
    used = set(names)
    told = (kind.glossary.partition(": ") for kind in JOINT_KINDS if kind.name in used)
    return tuple((word, says[0].upper() + says[1:]) for word, _, says in told)


BESIDE = "beside"
"""The preposition between the copies of one part that are joined with one another."""


def is_beside(word: str) -> bool:
    """Return whether what a line names joins the copies of its own part with one another."""
    kind = kind_written(word)
    return kind is not None and kind.beside


def is_fastener(word: str) -> bool:
    """Return whether what a line names holds parts that lie on one another, as screws do."""
    kind = kind_written(word)
    return kind is not None and kind.fastener
