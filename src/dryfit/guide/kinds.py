"""The kinds of words, as a maker thinks of them, and how an editor colours each.

The word table (`notes.reading.words`) sorts its phrases by terminals of the grammar; a kind gathers
the terminals that mean much the same to whoever writes.  A terminal that stands in no kind is shown
under `OTHER` until it gets its place here, and a test says so.
"""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Kind:
    """A heading of the word list, the terminals under it, and the scope that colours them.

    The scopes are the usual names of TextMate grammars, which colour themes know.
    """

    heading: str
    scope: str
    terminals: tuple[str, ...]


OPENING = Kind(
    "Words that begin a line",
    "keyword.control",
    (
        "PIECE",
        "NOTE",
        "UNITS",
        "OVERALL",
        "TIMBER",
        "HAVE",
        "BUY",
        "INVENTORY",
        "_LET",
        "FEATURE",
        "BOUGHT",
        "GLUEUP",
        "FINISH",
        "BARE",
        "STANDS",
        "PLACED",
        "_SCRIBE",
        "_WAYIN",
        "HANGS",
        "FIXED",
        "_STANDSAT",
        "MOIST",
        "SHOPAIR",
        "MEASURED",
        "DONE",
        "SPOILED",
        "PATTERN",
        "ENDBLOCK",
    ),
)
OTHER = Kind("Other words", "keyword.other", ())

KINDS: tuple[Kind, ...] = (
    OPENING,
    Kind("Which way it runs, how it lies", "storage.modifier", ("RUN", "DIRECTION", "LIE")),
    Kind("Sizes", "support.type", ("DIM", "BY", "_HALF", "LEFTOUT")),
    Kind("Sizes, behind a figure", "support.type", ("DIMADJ", "CUTADJ")),
    Kind(
        "Places, faces and edges",
        "support.constant",
        ("PLACE", "CORNERS", "ENDS", "FLOOR", "EDGE", "SPLAYWAY", "STOCKSIDE"),
    ),
    Kind(
        "Where it is",
        "keyword.other.place",
        (
            "_AT",
            "_SETIN",
            "_SETBACK",
            "_UP",
            "_DOWN",
            "_ABOVE",
            "_BELOW",
            "_FLUSH",
            "_SPREAD",
            "_GAP",
            "ENDGAP",
            "RIPPED",
            "_BETWEENTHEM",
            "_LAPPING",
            "_HORNS",
            "_SPLAYED",
            "HANDED",
            "FITTED",
        ),
    ),
    Kind("Openings", "keyword.other.place", ("OPENING", "_WITHIN")),
    Kind("How parts meet", "keyword.operator.word", ("PREP",)),
    Kind(
        "Joints and fastenings",
        "support.function",
        (
            "JOINT",
            "FASTENER",
            "DETAIL",
            "_PROUD",
            "_SHOULDER",
            "_OFFSET",
            "SHOWS",
        ),
    ),
    Kind("Where glue goes", "support.function", ("GLUED", "GLUEWORDS")),
    Kind(
        "Cuts without a mate",
        "support.function",
        (
            "SURFACE",
            "NOUN",
            "EVERY",
            "MIDDLE",
            "THROUGH",
            "STOPPED",
            "_BEYOND",
            "_ROWS",
            "EACH",
            "PROFILE",
        ),
    ),
    Kind("Limits", "keyword.operator.word", ("_ATMOST", "_ATLEAST", "_BETWEENSIZES")),
    Kind("Panels of staves", "keyword.other", ("_GLUEDFROM", "_STAVES")),
    Kind(
        "What is asked of the wood",
        "keyword.other",
        ("WOOD", "SAWN", "WANEY", "_GRAIN", "SPARE", "_ONSTICKERS", "UNRESTED"),
    ),
    Kind("Edges that are covered", "keyword.other", ("LIPPED", "LIPPEDWITH", "LIPPING", "LIPSIDE")),
    Kind(
        "Order of work", "keyword.other.order", ("ACTION", "STAGE", "ORDER", "_CUTAFTER", "_AFTER")
    ),
    Kind("The place and the way in", "keyword.other", ("_CEILING", "_SKIRTING", "_OUT", "_TURN")),
    Kind("Patterns", "keyword.other", ("_AS",)),
    Kind("Bought things", "keyword.other", ("_FOR", "_ORDERED", "_WEIGHS", "_APIECE")),
    Kind("What it carries", "keyword.other", ("_CARRIES", "LOAD", "MASS", "PER")),
    Kind(
        "Glue and finish",
        "keyword.other",
        ("_CURE", "EVERYTHING", "PRESSED", "_PEOPLE", "COATS", "APART", "_THEN", "SEATS"),
    ),
    Kind(
        "Wood on hand",
        "storage.type",
        ("STOCK", "STATE", "MARK", "DEFECT", "SHEETGRAIN", "MEASURES"),
    ),
    Kind("What the yard asks", "storage.type", ("PRICED", "CURRENCY", "PERUNIT", "_AVAILABLE")),
    Kind("Units and numbers", "constant.language", ("UNIT", "_NEAREST", "DECIMALCOMMA", "FIRST")),
    Kind("Air and moisture, behind a figure", "constant.language", ("_PERCENT", "SCALE", "AIR")),
    Kind(
        "Small words",
        "keyword.operator",
        ("_FROM", "_OF", "_WITH", "_TO", "_IN", "_AND", "_IS", "_OFF"),
    ),
)


def kind_of(terminal: str) -> Kind:
    """Return the kind that the terminal belongs to, `OTHER` where none claims it."""
    return next((kind for kind in KINDS if terminal in kind.terminals), OTHER)
