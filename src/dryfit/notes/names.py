"""Names as the notes mean them: case, plural, hyphens and blanks make no difference."""

from __future__ import annotations

import re
from functools import lru_cache

_BETWEEN_WORDS = re.compile(r"[\s_-]+")

# Plurals that no rule below gets right, of words that a workshop uses.
_IRREGULAR = {
    "axes": "axe",
    "caches": "cache",
    "chassis": "chassis",
    "feet": "foot",
    "niches": "niche",
    "series": "series",
    "teeth": "tooth",
}
_F_NOUNS = {
    "calves": "calf",
    "halves": "half",
    "knives": "knife",
    "leaves": "leaf",
    "loaves": "loaf",
    "scarves": "scarf",
    "shelves": "shelf",
}
_STAYS = ("ss", "us", "is")
_DROPS_ES = ("xes", "ches", "shes", "sses", "zzes")
_SHORTEST_PLURAL = 4


def canonical(name: str) -> str:
    """Return the name in the singular and lower case, its words parted by single blanks."""
    return " ".join(singular(word) for word in _BETWEEN_WORDS.split(name.strip()) if word)


@lru_cache(maxsize=4096)
def singular(word: str) -> str:
    """Return one word in lower case and in the singular: legs, boxes, shelves; glass stays."""
    word = word.lower()
    known = _IRREGULAR.get(word) or _F_NOUNS.get(word)
    if known:
        return known
    if len(word) < _SHORTEST_PLURAL or not word.endswith("s") or word.endswith(_STAYS):
        return word
    if word.endswith("ies") and len(word) > _SHORTEST_PLURAL:
        return word[:-3] + "y"
    return word[:-2] if word.endswith(_DROPS_ES) else word[:-1]
