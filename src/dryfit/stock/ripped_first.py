"""A board that is parted before it is planed, because whole it would be too thin when it is flat.

TRADE H44, A1.5: cup goes with the width, bow with the length, each as its square.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction

from dryfit.shop.shop import Shop
from dryfit.stock.boards import flat, reserve
from dryfit.stock.laid_out import NamedBlank, StockBoard


@dataclass(frozen=True, slots=True)
class TooThinWhole:
    """The board planed flat as a whole would be `whole` thick, and the blank takes `needed`, mm."""

    whole: Fraction
    needed: Fraction
    blank: NamedBlank


def too_thin_whole(
    board: StockBoard, blanks: Iterable[NamedBlank], shop: Shop
) -> TooThinWhole | None:
    """Return what is too thin of a board that is planed flat whole; None where nothing is."""
    if board.line.kind == "sheet":
        return None
    long, wide, thick = board.sizes
    whole, room = flat(board.line, long, wide, shop), reserve(board.line, shop)
    found = [
        TooThinWhole(whole, thick - blank.allowance[2] + room, blank)
        for blank in blanks
        if blank.what == "part" and whole < thick - blank.allowance[2] + room
    ]
    return max(found, key=lambda each: each.needed, default=None)


def parting(board: StockBoard) -> str:
    """Return in a word how that is done: a bowed or twisted board is cut shorter as well."""
    return "cut up" if board.line.bow or board.line.twist else "ripped"
