"""How little there is to spare where the wood is enough (M28): the tightest board, and a spare."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from dryfit.shop.shop import Shop
from dryfit.stock.blanks.blank import Blank
from dryfit.stock.blanks.rough_sizes import rough_sizes
from dryfit.stock.board_edges import bad_places, usable_face
from dryfit.stock.laid_out import BoardLayout, Fallen, Placed, Reach, StockBoard
from dryfit.stock.saws import exact, rules_for

ZERO = Fraction(0)


@dataclass(frozen=True, slots=True)
class Margin:
    """The board that its blanks lie tightest in, and its room in mm.

    `spare` is a board that stays whole and could take its place, None where there is none.
    """

    board: str
    room: Fraction
    spare: str | None


def margin_of(
    layouts: Sequence[BoardLayout],
    boards: Sequence[StockBoard],
    blanks: Sequence[Blank],
    shop: Shop,
) -> Margin | None:
    """Return how tight the layouts are; None where nothing lies on a board."""
    rooms = [(room, layout) for layout in layouts for room in _rooms(layout, shop)]
    if not rooms:
        return None
    room, layout = min(rooms, key=lambda one: one[0])
    used = {one.board.label for one in layouts}
    free = [board for board in boards if board.on_hand and board.label not in used]
    spare = next((one.label for one in free if _takes(one, layout, blanks, shop)), None)
    return Margin(layout.board.label, room, spare)


def _rooms(layout: BoardLayout, shop: Shop) -> Iterator[Fraction]:
    """Yield by how much the blanks side by side, and one after another, fall short of the board."""
    rules = rules_for(shop, sheet=layout.board.line.kind == "sheet")
    usable = usable_face(layout.board.line, shop)
    kerfs = exact(rules.crosscut_kerf), exact(rules.rip_kerf)
    bad = bad_places(layout.board)
    for own in (0, 1):
        reaches = [_reach(one, 1 - own) for one in layout.placed]
        for low, high in pairwise(sorted({edge for reach in reaches for edge in reach})):
            row = [one for one in layout.placed if _over(_reach(one, 1 - own), low, high)]
            if row and bad:
                yield _free(layout.fallen, own, low, high)
            elif row:
                taken = sum((_reach(one, own)[1] - _reach(one, own)[0] for one in row), ZERO)
                yield max(ZERO, usable[own] - taken - (len(row) - 1) * kerfs[own])


def _free(fallen: Sequence[Fallen], own: int, low: Fraction, high: Fraction) -> Fraction:
    """Return the sound wood that falls along one line through a board with bad places."""
    sizes = (
        one.clear[own][1] - one.clear[own][0]
        for one in fallen
        if one.clear is not None and _over(one.clear[1 - own], low, high)
    )
    return sum(sizes, ZERO)


def _reach(one: Placed, way: int) -> Reach:
    return one.across if way else one.along


def _over(reach: Reach, low: Fraction, high: Fraction) -> bool:
    return reach[0] < high and low < reach[1]


def _takes(board: StockBoard, layout: BoardLayout, blanks: Sequence[Blank], shop: Shop) -> bool:
    """Return whether a board could take each of the blanks of another."""
    kinds = {name: blank for blank in blanks for name in blank.names}
    long, wide = usable_face(board.line, shop)
    for one in layout.placed:
        rough = rough_sizes(kinds[one.blank.name], board.line, shop)
        if rough is None or rough.length > long or rough.width > wide:
            return False
    return True
