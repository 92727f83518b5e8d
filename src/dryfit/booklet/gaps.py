"""What a spread row of loose parts is set by: the gap, and where the first of them stands."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise

from dryfit.booklet.text import Say, Text
from dryfit.placing.model import Copy, Part

SIDES = (("left", "right"), ("front", "back"), ("bottom", "top"))
"""Sides of the piece by axis x, y and z: where the coordinate is least, and where greatest."""


def spacing(part: Part, say: Say) -> Text:
    """Return the one gap between the copies of a part and the place of the first, in words.

    Nothing for a single copy, for copies that do not stand in one row, and for uneven gaps.
    """
    axis = _row_axis(part.copies)
    if axis is None:
        return ()
    row = sorted(part.copies, key=lambda copy: copy.box.low[axis])
    gaps = {after.box.low[axis] - before.box.high[axis] for before, after in pairwise(row)}
    gap = next(iter(gaps))
    if len(gaps) > 1 or gap <= 0:
        return ()
    side = SIDES[axis][0]
    first = row[0].box.low[axis]
    words: Text = ("Gap between two: ", say.setting_with_unit(gap))
    if first == Fraction(0):
        return (*words, f"; the first is flush with the {side} of the piece.")
    return (*words, "; the first is ", say.setting_with_unit(first), f" from the {side}.")


def _row_axis(copies: tuple[Copy, ...]) -> int | None:
    """Return the one axis along which the copies stand apart, or None."""
    axes = [axis for axis in range(3) if len({copy.box.low[axis] for copy in copies}) > 1]
    return axes[0] if len(axes) == 1 else None
