"""Names as the notes mean them: case, plural, hyphens and blanks make no difference."""

from __future__ import annotations

import re
from functools import lru_cache

_BETWEEN_WORDS = re.compile(r"[\s_-]+")

# Plurals that no rule below gets right, of words that a workshop uses.
_IRREGULAR = {
    "arrises": "arris",
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


def plural(name: str) -> str:
    """Return a name with its last word in the plural, as a maker would write it."""
    start, blank, word = name.rpartition(" ")
    return f"{start}{blank}{_plural(word)}"


def _plural(word: str) -> str:
    for many, one in (_F_NOUNS | _IRREGULAR).items():
        if word == one:
            return many
    if word.endswith(("x", "ch", "sh", "ss")):
        return f"{word}es"
    if word.endswith("y") and word[-2:-1] not in tuple("aeiou"):
        return f"{word[:-1]}ies"
    return f"{word}s"
