"""Words for parts that a maker may not know: one sentence each for the glossary."""

from __future__ import annotations

from collections.abc import Mapping
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


def words_explained(name: str) -> tuple[str, ...]:
    """Return the sentences for what a part's name says, such as those for ``lid batten``."""
    return tuple(PART_WORDS[word] for word in name.split(" ") if word in PART_WORDS)
