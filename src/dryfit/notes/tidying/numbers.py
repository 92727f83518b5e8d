"""The blanks inside a number: its spelling stays the maker's."""

from __future__ import annotations

import re

from dryfit.notes.reading.numbers import GLYPHS

_GLYPH = f"[{''.join(GLYPHS)}]"
# In this order: each is written for what those before it leave.
_STEPS = (
    (re.compile(r" +"), " "),
    (re.compile("''"), '"'),
    (re.compile(rf" (?=[\"'°]|{_GLYPH})"), ""),
    (re.compile(r" ?- ?"), "-"),
    (re.compile(rf"(?<=[0-9]|{_GLYPH})(?=[^\W\d_])(?!{_GLYPH})"), " "),
    (re.compile(rf"(?<=')(?=[.0-9]|{_GLYPH})"), " "),
)


def spaced_number(text: str) -> str:
    """Return a number with its blanks in order: `22 mm`, `17 3/4"`, `2½`, `5' 6"`, `1 h 30 min`.

    A word of a unit stands off its number and a sign stands close (as in ISO 80000-1, which makes
    the same exception for degrees; from memory).
    """
    for pattern, written in _STEPS:
        text = pattern.sub(written, text)
    return text
