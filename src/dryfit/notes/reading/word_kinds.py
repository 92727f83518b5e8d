"""Which words end a name, begin a clause, cannot be a name, or cannot be said in these notes."""

from __future__ import annotations

from dryfit.notes.names import canonical
from dryfit.notes.reading.words import OPENERS, PHRASES

FILLERS = frozenset({"the", "its", "their"})
PLACE_WORDS = frozenset(
    phrase for phrase, meanings in PHRASES.items() if any(kind == "PLACE" for kind, _ in meanings)
)

# Phrases that begin a line, and no name.
BEGINNERS = frozenset(
    [
        *OPENERS,
        "FEATURE",
        "BUY",
        "ENDBLOCK",
        "STANDS",
        "PLACED",
        "_SCRIBE",
        "_WAYIN",
        "HANGS",
        "FIXED",
        "_STANDSAT",
        "MOIST",
        "SHOPAIR",
        "_LET",
        "_ATMOST",
        "_ATLEAST",
        "_BETWEENSIZES",
    ]
)
# A name ends before these, whatever follows ...
NAME_STOPS = frozenset(
    [
        "_AT",
        "PREP",
        "_OF",
        "_WITH",
        "_FROM",
        "_SETIN",
        "_SETBACK",
        "_FLUSH",
        "_GLUEDFROM",
        "_CUTAFTER",
        "FITTED",
        "_LAPPING",
        "_HORNS",
        "LIPSIDE",
        "_FOR",
        "_CARRIES",
        "_AS",
        "_ATMOST",
        "_ATLEAST",
        "ORDER",
    ]
)
# ... and before these unless another plain word follows: a "glue block" and a "flat bar" are names.
LOOSE_STOPS = frozenset(
    [
        "RUN",
        "LIE",
        "DIM",
        "JOINT",
        "FASTENER",
        "_UP",
        "_DOWN",
        "_SPREAD",
        "_GAP",
        "HANDED",
        "_SPLAYED",
        "LIPPED",
        "DIRECTION",
        "WOOD",
        "WANEY",
        "_GRAIN",
        "STATE",
        "MARK",
        "MEASURES",
    ]
)

# Phrases that begin a clause of a part's line.
CLAUSE_KINDS = frozenset(
    [
        "RUN",
        "LIE",
        "DIM",
        "_AT",
        "_SETIN",
        "_SETBACK",
        "_UP",
        "_DOWN",
        "_FLUSH",
        "_SPREAD",
        "_GAP",
        "ENDGAP",
        "RIPPED",
        "_LAPPING",
        "_HORNS",
        "_SPLAYED",
        "LIPPED",
        "HANDED",
        "PREP",
        "JOINT",
        "FASTENER",
        "_GLUEDFROM",
        "_OF",
        "_CUTAFTER",
        "FITTED",
        "_CARRIES",
        "_WEIGHS",
    ]
)

# Phrases of these kinds would make sentences unreadable if a part or a value bore one as its whole
# name.  Words of places and of edges stay free: parts called top or ends
# are everyday.
_NAMING_NOTHING = frozenset(
    [
        "PIECE",
        "NOTE",
        "UNITS",
        "OVERALL",
        "TIMBER",
        "HAVE",
        "BUY",
        "INVENTORY",
        "GLUEUP",
        "FINISH",
        "FEATURE",
        "BOUGHT",
        "BARE",
        "STANDS",
        "_WAYIN",
        "HANGS",
        "FIXED",
        "MEASURED",
        "DONE",
        "SPOILED",
        "PATTERN",
        "_LET",
        "ACTION",
        "ORDER",
        "DIRECTION",
        "RUN",
        "LIE",
        "DIM",
        "DIMADJ",
        "BY",
        "_OFF",
        "_HALF",
        "HANDED",
        "_LAPPING",
        "_BELOW",
        "_ABOVE",
        "_AT",
        "_SETIN",
        "_SETBACK",
        "_UP",
        "_DOWN",
        "_FLUSH",
        "_SPREAD",
        "_GAP",
        "_FROM",
        "_OF",
        "_WITH",
        "_TO",
        "_IN",
        "_AND",
        "_IS",
        "PREP",
        "JOINT",
        "FASTENER",
        "GLUED",
        "_GLUEDFROM",
        "_CUTAFTER",
        "FITTED",
        "UNIT",
        "THROUGH",
        "STOPPED",
        "_BEYOND",
    ]
)
BOUGHT_TOO = frozenset({"hinge", "butt hinge", "shelf pin"})
"""Things that a line may buy, and place, as well as joints of these names."""

RESERVED = frozenset(
    phrase
    for phrase, meanings in PHRASES.items()
    if any(kind in _NAMING_NOTHING for kind, _ in meanings) and phrase not in BOUGHT_TOO
)

# Joints of the trade that the language does not have, so that a message can say so.
UNKNOWN_JOINTS = frozenset(
    canonical(joint)
    for joint in (
        "scarf",
        "sliding dovetail",
    )
)
