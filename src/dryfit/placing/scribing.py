"""What is cut away on site where a side of the piece meets a wall, the floor or the ceiling."""

from __future__ import annotations

from fractions import Fraction

from dryfit.geometry.box import Box
from dryfit.joinery.cut import from_side
from dryfit.piece.declared.site import PlaceWords, Scribe
from dryfit.placing.model import Copy, Model

SCRIBED_ALONG = {"left": 0, "right": 0, "back": 1, "bottom": 2, "top": 2}
"""The axis across each side."""

_UPPER = frozenset({"right", "back", "top"})
_ZERO = Fraction(0)


def strip_along(model: Model, side: str, amount: Fraction) -> Box:
    """Return the space of the piece's box that lies within so many mm of a side."""
    axis, way = SCRIBED_ALONG[side], 1 if side in _UPPER else -1
    whole = Box((_ZERO, _ZERO, _ZERO), model.overall)
    return from_side(whole, axis, way, min(amount, model.overall[axis]))


def scribed_copies(model: Model, scribe: Scribe) -> tuple[Copy, ...]:
    """Return the copies that reach into that space."""
    cut = strip_along(model, scribe.side, scribe.amount)
    return tuple(c for part in model.parts for c in part.copies if c.box.overlap(cut))


def scribed(place: PlaceWords, axis: int) -> Fraction:
    """Return what may be cut away along an axis, on both sides together."""
    amounts = (each.amount for each in place.scribes if SCRIBED_ALONG[each.side] == axis)
    return sum(amounts, Fraction(0))
