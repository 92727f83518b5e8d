"""The first board to buy where the wood is enough, but nothing may go wrong (M28)."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from dryfit.piece.declared import Have
from dryfit.shop.shop import Shop
from dryfit.stock.blanks.blank import Blank
from dryfit.stock.blanks.rough_sizes import Rough, rough_sizes
from dryfit.stock.board_edges import usable_face
from dryfit.stock.laid_out import BoardLayout, Bought, FirstToBuy
from dryfit.stock.laying.buying import large_enough
from dryfit.stock.pricing import price_of


def first_to_buy(
    tightest: str,
    layouts: Sequence[BoardLayout],
    blanks: Sequence[Blank],
    yard: Sequence[Have],
    shop: Shop,
) -> FirstToBuy | None:
    """Return the cheapest board that gives the longest blank of the tightest board once more.

    Of what the yard sells; else one that is just large enough.  What a leftover gives once more
    needs no board: where that is so of all on the tightest board, those of the others count.
    """
    kinds = {name: blank for blank in blanks for name in blank.names}
    # A strip that is sawn into more leaves than are asked for gives one more as it is.
    parts = [
        (layout.board.label == tightest, one.blank.length, one.blank.width, one.blank)
        for layout in layouts
        for one in layout.placed
        if one.blank.what == "part"
        and one.blank.leaves <= max(1, len(one.blank.pieces))
        and not _left_over(kinds[one.blank.name], layouts, shop)
    ]
    if not parts:
        return None
    named = max(parts, key=lambda one: one[:3])[3]
    blank = kinds[named.name]
    serving = [line for line in yard if _gives(line, blank, shop)]
    if not serving:
        board = large_enough([blank], shop)
        return None if board is None else FirstToBuy(Bought(board, 1, None, at_yard=False), named)
    line = min(serving, key=_cost)
    return FirstToBuy(Bought(line, 1, price_of(line)), named)


def _left_over(blank: Blank, layouts: Sequence[BoardLayout], shop: Shop) -> bool:
    """Return whether what is kept of a board gives the blank once more."""
    for layout in layouts:
        line = layout.board.line
        rough = rough_sizes(blank, line, shop)
        clear = [fallen.clear for fallen in layout.fallen if fallen.keep and fallen.clear]
        for along, across in clear if rough is not None else ():
            room = (along[1] - along[0], across[1] - across[0])
            turned = line.kind == "sheet" and not line.grain
            if _fits(rough, room) or (turned and _fits(rough, room[::-1])):
                return True
    return False


def _fits(rough: Rough | None, room: tuple[Fraction, Fraction]) -> bool:
    return rough is not None and rough.length <= room[0] and rough.width <= room[1]


def _gives(line: Have, blank: Blank, shop: Shop) -> bool:
    """Return whether a board of the line is long, wide and thick enough for the blank."""
    return _fits(rough_sizes(blank, line, shop), usable_face(line, shop))


def _cost(line: Have) -> tuple[bool, Fraction, Fraction]:
    """Return what counts of a line: a price that is known, the price, how much wood it is."""
    price, wood = price_of(line), Fraction(1)
    for size in line.sizes:
        wood *= size or 1
    return price is None, price or Fraction(0), wood
