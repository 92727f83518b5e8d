"""How a board was sawn out of the log: which way its year rings lie (TRADE G2)."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

FLATSAWN, QUARTERSAWN, RIFT = "flatsawn", "quartersawn", "rift"

SPELLINGS: Mapping[str, str] = MappingProxyType(
    {
        "flatsawn": FLATSAWN,
        "flat sawn": FLATSAWN,
        "plainsawn": FLATSAWN,
        "plain sawn": FLATSAWN,
        "slab sawn": FLATSAWN,
        "quartersawn": QUARTERSAWN,
        "quarter sawn": QUARTERSAWN,
        "riftsawn": RIFT,
        "rift sawn": RIFT,
        "rift": RIFT,
    }
)
"""What makers call each cut, hyphens as blanks; the longer of two that begin alike first."""


def cut_of(timber: str) -> str | None:
    """Return the cut that the name of a timber begins with (``quartersawn oak``), or None."""
    return _split(timber)[0]


def without_cut(timber: str) -> str:
    """Return the name of a timber without its cut: ``quarter-sawn white oak`` is white oak."""
    return _split(timber)[1]


def _split(timber: str) -> tuple[str | None, str]:
    words = timber.split()
    plain = " ".join(timber.lower().replace("-", " ").split())
    for spelling, cut in SPELLINGS.items():
        if plain.startswith(f"{spelling} "):
            kept = len(plain.removeprefix(f"{spelling} ").split())
            # Hyphens of the wood itself, as in yellow-poplar, are kept.
            left = words[len(words) - _words_in(words, kept) :]
            return cut, " ".join(left)
    return None, timber.strip()


def _words_in(words: list[str], kept: int) -> int:
    """Return how many words at the end of a name hold so many, those with hyphens as several."""
    count = 0
    for number, word in enumerate(reversed(words), start=1):
        count += len(word.replace("-", " ").split())
        if count >= kept:
            return number
    return len(words)
