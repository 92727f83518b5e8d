"""Words for parts that a maker may not know: one sentence each for the glossary."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from types import MappingProxyType

PART_WORDS: Mapping[str, str] = MappingProxyType(
    {
        "cleat": "Cleat: a strip screwed to the inside of a frame or case, on which a panel or a "
        "shelf lies; across solid wood only its middle screw holds fast.",
        "batten": "Batten: a strip across boards or a panel that keeps them flat or together; it "
        "is screwed and never glued, with slots for all screws but the middle one.",
    }
)
"""By the word as it stands in the name of a part."""


def parts_explained(names: Iterable[str]) -> tuple[tuple[str, str], ...]:
    """Return the words that occur in names of parts, each once, and what it says of them."""
    used = {word for name in names for word in name.split(" ")}
    told = (says.partition(": ") for word, says in PART_WORDS.items() if word in used)
    return tuple((word, says[0].upper() + says[1:]) for word, _, says in told)
