"""How a part is the subject of a sentence."""

from __future__ import annotations

from dryfit.piece.declared import DeclaredPart


def verb(part: DeclaredPart, one: str, several: str) -> str:
    """Return the subject and verb of a sentence about a part: ``the legs stand``."""
    return f"the {part.written} {one if part.count == 1 else several}"
