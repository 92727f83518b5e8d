"""How a board was sawn out of the log: which way its year rings lie, read from a timber's name."""

from __future__ import annotations

from dryfit.kinds.sawn import SPELLINGS


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
