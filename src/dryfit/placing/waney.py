"""Edges that the notes want left as they grew: which sides of a part they are (TRADE A2.6)."""

from __future__ import annotations

from dryfit.piece.declared import PLACE_SIDE, DeclaredPart


def waney_sides(part: DeclaredPart) -> tuple[int, ...]:
    """Return the sides, -1 and 1 along the axis of its width, whose edge stays waney.

    Where the line names no side it is the one towards the front, the left or the floor.
    """
    wishes = [wish for wish in part.wood if wish.kind == "waney"]
    places = {PLACE_SIDE[word] for wish in wishes for word in wish.words}
    sides = sorted(sign for axis, sign in places if axis == part.axes[1])
    return tuple(sides) if places or not wishes else (-1,)
