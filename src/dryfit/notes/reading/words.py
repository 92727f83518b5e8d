"""The words of the language: each phrase with the terminals of the grammar that it can stand for.

This table is all that is English in the reader; the grammar names no word.  A phrase is kept in
its canonical form (`names.canonical`), so that case and plural never matter.  Where a phrase can
stand for several terminals, the first that the parser can take is meant.
"""

from __future__ import annotations

from dryfit.notes.names import plural, singular
from dryfit.notes.reading.words_of_air import AIR
from dryfit.notes.reading.words_of_cuts import CUTS
from dryfit.notes.reading.words_of_joints import JOINTS
from dryfit.notes.reading.words_of_limits import LIMITS
from dryfit.notes.reading.words_of_lips import LIPS
from dryfit.notes.reading.words_of_loads import LOADS
from dryfit.notes.reading.words_of_places import PLACES
from dryfit.notes.reading.words_of_site import SITE
from dryfit.notes.reading.words_of_stock import STOCK_WORDS
from dryfit.notes.reading.words_of_work import WORK

OPENERS = {
    "PIECE": "piece",
    "NOTE": "note",
    "UNITS": "units",
    "OVERALL": "overall",
    "TIMBER": "timber",
    "HAVE": "have",
    "INVENTORY": "stock from",
    "BOUGHT": "bought",
    "GLUEUP": "glue up",
    "FINISH": "finish",
    "BARE": "no finish on",
    "MEASURED": "measured",
    "DONE": "done",
    "SPOILED": "spoiled",
    "PATTERN": "pattern",
}

_WORDS: tuple[tuple[str, dict[str, str]], ...] = (
    # openers
    ("PIECE", {"piece": "piece"}),
    ("NOTE", {"note": "note"}),
    ("UNITS", {"units": "units"}),
    ("OVERALL", {"overall": "overall", "overall size": "overall"}),
    ("TIMBER", {"timber": "timber", "wood": "timber"}),
    ("HAVE", {"have": "have"}),
    ("GLUEUP", {"glue up": "glue up"}),
    ("FINISH", {"finish": "finish"}),
    ("PATTERN", {"pattern": "pattern"}),
    ("ENDBLOCK", {"end": "end", "end pattern": "end", "end of pattern": "end"}),
    ("_AS", {"as": "as", "as a": "as", "as an": "as", "made as": "as"}),
    ("_LET", {"let": "let"}),
    # deeds in a wish
    (
        "ACTION",
        {
            "finish": "finish",
            "finishing": "finish",
            "glue up": "glue up",
            "gluing up": "glue up",
            "cut": "cut",
            "cutting": "cut",
            "sand": "sand",
            "sanding": "sand",
        },
    ),
    ("STAGE", {"glue up": "glue up", "gluing up": "glue up", "the glue up of": "glue up"}),
    ("ORDER", {"before": "before", "after": "after"}),
    # sizes
    ("DIM", {word: word for word in ("length", "width", "thickness", "depth", "height")}),
    ("DIMADJ", {"long": "length", "wide": "width", "thick": "thickness", "deep": "depth"}),
    ("DIMADJ", {"high": "height", "tall": "height"}),
    ("LEFTOUT", {"to suit": "?", "to fit": "?"}),
    ("BY", {"x": "x", "by": "x"}),
    ("_OFF", {"off": "off"}),
    ("_HALF", {"half": "half"}),
    # what joins words
    ("_OF", {"of": "of"}),
    ("_WITH", {"with": "with"}),
    ("_TO", {"to": "to"}),
    ("_IN", {"in": "in", "on": "in", "along": "in"}),
    ("_AND", {"and": "and"}),
    ("_IS", {"is": "is", "be": "be"}),
    # joints
    ("_GLUEDFROM", {"glued from": "glued from", "glued up from": "glued from"}),
    ("_STAVES", {"stave": "staves", "strip": "staves", "board": "staves"}),
    ("_CUTAFTER", {"cut after": "cut after"}),
    ("FITTED", {"cut as drawn": "as drawn", "cut to the drawing": "as drawn"}),
    ("FITTED", {"plane to fit": "plane", "planed to fit": "plane"}),
    ("FITTED", {"cut to measure": "to measure", "cut to fit": "to measure"}),
    ("_AFTER", {"after": "after"}),
    # units
    ("UNIT", {"mm": "mm", "millimetre": "mm", "millimeter": "mm", "cm": "cm"}),
    ("UNIT", {"centimetre": "cm", "centimeter": "cm", "m": "m", "metre": "m", "meter": "m"}),
    ("UNIT", {"in": "in", "inch": "in", "inches": "in"}),
    ("_NEAREST", {"nearest": "nearest", "the nearest": "nearest"}),
    ("DECIMALCOMMA", {"decimal comma": "decimal comma"}),
    ("FIRST", {"thickness first": "thickness", "length first": "length"}),
    *STOCK_WORDS,
    *LIMITS,
    *AIR,
    *LOADS,
    *LIPS,
    *PLACES,
    *JOINTS,
    *WORK,
    *SITE,
    *CUTS,
)


def _table() -> dict[str, tuple[tuple[str, str], ...]]:
    table: dict[str, tuple[tuple[str, str], ...]] = {}
    for terminal, phrases in _WORDS:
        for phrase, value in phrases.items():
            key = " ".join(map(singular, phrase.split(" ")))  # as `canonical`, but quicker
            table[key] = (*table.get(key, ()), (terminal, value))
    return table


def _spellings() -> dict[str, tuple[str, ...]]:
    spellings: dict[str, tuple[str, ...]] = {}
    for terminal, phrases in _WORDS:
        for phrase in phrases:
            forms = (phrase, plural(phrase)) if terminal in _COUNTED else (phrase,)
            spellings[terminal] = (*spellings.get(terminal, ()), *forms)
    return spellings


_COUNTED = frozenset(
    ["CORNERS", "ENDS", "STOCK", "FASTENER", "COATS", "EDGE", "JOINT", "NOUN", "_STAVES", "DEFECT"]
)

PHRASES = _table()
"""Canonical phrase -> (terminal, value) pairs, in order of preference."""

SPELLINGS = _spellings()
"""Terminal -> its phrases as a maker writes them, for suggestions."""
