"""What the parser could take, in the maker's words."""

from __future__ import annotations

from collections.abc import Collection

_WORDS = {
    "RUN": "a direction (upright, across, front to back)",
    "DIRECTION": "a direction (across, front to back, up and down)",
    "LIE": "how it lies (flat, on edge, facing front, facing side)",
    "MEASURE": "a measure",
    "NAME": "the name of a part",
    "PLACE": "a place (front, back, left, right, top, bottom)",
    "CORNERS": "corners",
    "JOINT": "a joint (tenon, half lap, housing, groove, glue)",
    "FASTENER": "screws or buttons",
    "_STAVES": "staves",
    "PATTERNNAME": "the name of a pattern",
    "INNER": "a part inside of it",
    "_WITHIN": "between",
    "PREP": "into, onto, under, between, inside or crossing",
    "DIM": "a dimension (length, width, thickness)",
    "STOCK": "board, offcut, sheet, slab or strip",
    "UNIT": "mm, cm, m or inches",
    "ORDER": "before or after",
    "BY": "x",
    "_COLON": "a colon",
    "_FROM": "from",
    "_EQ": "=",
    "_OF": "of",
    "GLUEUP": "glue up",
    "APART": "apart",
    "COATS": "coats",
    "SURFACE": "a face (inside, outside, top, bottom)",
    "STAGE": "glue up",
    "PHRASE": "a name",
    "TEXT": "some text",
}


def expected_words(takes: Collection[str], most: int = 3) -> str:
    """Return what is expected as the end of a sentence, or nothing when it is too much to help."""
    found = [words for terminal, words in _WORDS.items() if terminal in takes]
    if not found or len(found) > most:
        return ""
    *first, last = found
    return f": {', '.join(first)} or {last}" if first else f": {last}"
