"""How a distance from a side of the piece is said: up is to the underside, down to the top side."""

from __future__ import annotations

from dryfit.placing.site import SIDE_WORDS

_LABELS = {
    (2, -1): "underside of {} above the floor",
    (2, 1): "top side of {} below the overall height",
}
_CLAUSES = {
    (2, -1): "its underside stands {} above the floor",
    (2, 1): "its top side lies {} below the overall height",
}


def from_label(part: str, axis: int, side: int) -> str:
    """Return the name of a distance in a sum: ``underside of shelf above the floor``."""
    word = SIDE_WORDS[axis, side]
    return _LABELS.get((axis, side), f"{{}} from {word}").format(part)


def from_clause(shown: str, axis: int, side: int) -> str:
    """Return a clause of a sentence: ``its underside stands 185 above the floor``."""
    word = SIDE_WORDS[axis, side]
    return _CLAUSES.get((axis, side), f"it lies {{}} from the {word}").format(shown)
