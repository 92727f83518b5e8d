"""A name that is free, for a word of the language that was written as a name."""

from __future__ import annotations

from dryfit.notes.reading.vocabulary import Vocabulary
from dryfit.notes.reading.word_kinds import RESERVED
from dryfit.notes.reading.words import PHRASES

# What stands before the word; the first that gives a free name is taken.
_BEFORE = ("frame", "board", "panel", "shelf")
_SIZES = ("DIM", "DIMADJ")


def free_name(word: str, vocabulary: Vocabulary) -> str:
    """Return a name of two words that no line declares: ``frame thickness`` for ``thick``."""
    noun = next((value for kind, value in PHRASES.get(word, ()) if kind in _SIZES), word)
    taken = vocabulary.parts | vocabulary.values | RESERVED
    for before in _BEFORE:
        # "frame thickness" would be the thickness of a part that is called frame.
        if before not in vocabulary.parts and f"{before} {noun}" not in taken:
            return f"{before} {noun}"
    return f"other {noun}"
