"""What is cut away on site where a side of the piece meets a wall, the floor or the ceiling."""

from __future__ import annotations

from fractions import Fraction

from dryfit.geometry.box import Box
from dryfit.piece.declared.site import PlaceWords, Scribe
from dryfit.placing.model import Copy, Model

SCRIBED_ALONG = {"left": 0, "right": 0, "back": 1, "bottom": 2, "top": 2}
"""The axis across each side."""

_UPPER = frozenset({"right", "back", "top"})


def scribed_box(model: Model, scribe: Scribe) -> Box:
    """Return the space along a side from which wood may be cut away."""
    axis = SCRIBED_ALONG[scribe.side]
    low, high = [Fraction(0)] * 3, list(model.overall)
    if scribe.side in _UPPER:
        low[axis] = max(high[axis] - scribe.amount, Fraction(0))
    else:
        high[axis] = min(scribe.amount, high[axis])
    return Box((low[0], low[1], low[2]), (high[0], high[1], high[2]))


def scribed_copies(model: Model, scribe: Scribe) -> tuple[Copy, ...]:
    """Return the copies that reach into that space."""
    cut = scribed_box(model, scribe)
    return tuple(c for part in model.parts for c in part.copies if c.box.overlap(cut))


def scribed(place: PlaceWords, axis: int) -> Fraction:
    """Return what may be cut away along an axis, on both sides together."""
    amounts = (each.amount for each in place.scribes if SCRIBED_ALONG[each.side] == axis)
    return sum(amounts, Fraction(0))
