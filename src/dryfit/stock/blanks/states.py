"""Boards of several states for one part: all its blanks go the same way through the shop.

What is planed already is not made true, and what is rough has to be.  A part whose blanks came out
of both would have either its planed blanks planed away or its rough ones left rough.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from dryfit.piece.declared import Have
from dryfit.shop.shop import Shop
from dryfit.stock.blanks.blank import Blank
from dryfit.stock.blanks.rough_sizes import rough_sizes, state_of

STATES = ("section", "kept", "planed", "trued")
"""Used at the section that it has, at its thickness, planed to a thickness, made true first."""


def in_one_state(blank: Blank, lines: Sequence[Have], shop: Shop, *, last: bool) -> Blank:
    """Return the blank for boards of one state, where boards of several would do.

    That is the one with the least work, or the `last`, with the most.
    """
    if blank.sheet:
        return blank
    found = {state_of(blank, line) for line in lines if rough_sizes(blank, line, shop) is not None}
    states = [state for state in STATES if state in found]
    if len(states) < 2:
        return blank
    return replace(blank, state=states[-1 if last else 0])
