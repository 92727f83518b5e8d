"""Places in a text as the Language Server Protocol counts them.

The protocol numbers lines and characters from 0 and counts characters in UTF-16 code units unless
the client asks for another encoding; ours are numbered from 1 and count characters.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from dryfit.diagnostics import Span

Encoding = Literal["utf-8", "utf-16", "utf-32"]

_BEYOND_TWO_BYTES = 0x10000


@dataclass(frozen=True, slots=True)
class Place:
    """Part of a line in the protocol's count: line, first character and the one after the last."""

    line: int
    start: int
    end: int


def column_of(line: str, character: int, encoding: Encoding) -> int:
    """Return the column, from 1, at which so many code units of the line have passed.

    A place beyond the line is taken as its end, as the protocol asks; one inside a character as
    the place before it.
    """
    passed = 0
    for column, sign in enumerate(line, start=1):
        passed += _units(sign, encoding)
        if passed > character:
            return column
    return len(line) + 1


def character_of(line: str, column: int, encoding: Encoding) -> int:
    """Return how many code units stand before the column, which is from 1."""
    return sum(_units(sign, encoding) for sign in line[: column - 1])


def place_of(span: Span, encoding: Encoding) -> Place:
    """Return where the span is."""
    line = span.source.lines()[span.line - 1]
    start = character_of(line, span.column, encoding)
    return Place(span.line - 1, start, character_of(line, span.end_column, encoding))


def _units(sign: str, encoding: Encoding) -> int:
    if encoding == "utf-32":
        return 1
    if encoding == "utf-16":
        return 2 if ord(sign) >= _BEYOND_TWO_BYTES else 1
    return len(sign.encode("utf-8", "surrogatepass"))
