"""Edges that the notes want left as they grew: which sides of a part they are (TRADE A2.6)."""

from __future__ import annotations

from collections.abc import Iterator

from dryfit.diagnostics import Assumption
from dryfit.piece.declared import PLACE_SIDE, DeclaredPart
from dryfit.placing.lines import with_words


def waney_sides(part: DeclaredPart) -> tuple[int, ...]:
    """Return the sides, -1 and 1 along the axis of its width, whose edge shall stay waney.

    Where the line names no side it is the one towards the front, the left or the floor.
    """
    wishes = [wish for wish in part.wood if wish.kind == "waney"]
    places = {PLACE_SIDE[word] for wish in wishes for word in wish.words}
    sides = sorted(sign for axis, sign in places if axis == part.axes[1])
    return tuple(sides) if places or not wishes else (-1,)


def kept_sides(part: DeclaredPart) -> tuple[int, ...]:
    """Return those that a plan can keep: of no glued panel, and no leaf of a thick board."""
    resawn = any(wish.kind == "resawn" for wish in part.wood)
    return () if resawn or part.staves is not None else waney_sides(part)


def waney_assumptions(part: DeclaredPart) -> Iterator[Assumption]:
    """Yield which edge stays waney where nobody says it, and where the width counts."""
    sides = kept_sides(part)
    if not sides:
        return
    wish = next(wish for wish in part.wood if wish.kind == "waney")
    if not wish.words:
        word = next(name for name, side in PLACE_SIDE.items() if side == (part.axes[1], sides[0]))
        yield Assumption(
            f"the waney edge of the {part.name} is its {word} one",
            part.span,
            with_words(wish.span, f"{wish.span.text()} at {word}"),
        )
    yield Assumption(
        f"the {part.name} is as wide as told where it is narrowest, the bark off", part.span, None
    )
