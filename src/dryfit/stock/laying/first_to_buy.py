"""The first board to buy where the wood is enough, but nothing may go wrong (M28)."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from dryfit.piece.declared import Have
from dryfit.shop.shop import Shop
from dryfit.stock.blanks.blank import Blank
from dryfit.stock.blanks.rough_sizes import rough_sizes
from dryfit.stock.board_edges import usable_face
from dryfit.stock.laid_out import BoardLayout, Bought, FirstToBuy
from dryfit.stock.laying.buying import large_enough
from dryfit.stock.pricing import price_of


def first_to_buy(
    tightest: BoardLayout, blanks: Sequence[Blank], yard: Sequence[Have], shop: Shop
) -> FirstToBuy | None:
    """Return the cheapest board that gives the longest blank of the tightest board once more.

    Of what the yard sells; else one that is just large enough.
    """
    kinds = {name: blank for blank in blanks for name in blank.names}
    # A strip that is sawn into more leaves than are asked for gives one more as it is.
    parts = [
        one.blank
        for one in tightest.placed
        if one.blank.what == "part" and one.blank.leaves <= max(1, len(one.blank.pieces))
    ]
    if not parts:
        return None
    named = max(parts, key=lambda one: (one.length, one.width))
    blank = kinds[named.name]
    serving = [line for line in yard if _gives(line, blank, shop)]
    if not serving:
        board = large_enough([blank], shop)
        return None if board is None else FirstToBuy(Bought(board, 1, None, at_yard=False), named)
    line = min(serving, key=_cost)
    return FirstToBuy(Bought(line, 1, price_of(line)), named)


def _gives(line: Have, blank: Blank, shop: Shop) -> bool:
    """Return whether a board of the line is long, wide and thick enough for the blank."""
    rough, (long, wide) = rough_sizes(blank, line, shop), usable_face(line, shop)
    return rough is not None and rough.length <= long and rough.width <= wide


def _cost(line: Have) -> tuple[bool, Fraction, Fraction]:
    """Return what counts of a line: a price that is known, the price, how much wood it is."""
    price, wood = price_of(line), Fraction(1)
    for size in line.sizes:
        wood *= size or 1
    return price is None, price or Fraction(0), wood
