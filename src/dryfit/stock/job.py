"""From boards and blanks to a job of the layout library, and which blank may lie on which board."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from dryfit.cutting import Area, Board, Job, Part
from dryfit.shop.shop import Shop
from dryfit.stock import saws
from dryfit.stock.boards import SAME_SHEET, flat
from dryfit.stock.laid_out import StockBoard
from dryfit.stock.lots import Lot

OFFCUT = (2, 5)
"""What an offcut is worth of a board of its size, so that offcuts are used first (our trials)."""
ANY = 1
"""Thickness of everything in a job: which board is thick enough is told board by board."""


@dataclass(frozen=True, slots=True)
class Split:
    """Blanks and boards that have to do with one another; `lots` are places in all of them."""

    lots: tuple[int, ...]
    boards: tuple[StockBoard, ...]
    job: Job


def thick_enough(lot: Lot, board: StockBoard, shop: Shop) -> bool:
    """Return whether the blank, as it is sawn out of the board, can be planed as thick as it must.

    What a warped board loses falls with the size of the blank (TRADE A1.5).
    """
    line, thick = board.line, board.sizes[2]
    if lot.sheet:
        return abs(thick - lot.to_thickness) <= SAME_SHEET
    left = flat(line, lot.length, lot.width, shop)
    spare = shop.allowances["hand_margin"] if line.rough or line.warped else Fraction(0)
    return left >= lot.to_thickness + spare


def serves(lot: Lot, board: StockBoard) -> bool:
    """Return whether the board is of the wood, and of the kind, that the blank is made of."""
    line, timber = board.line, lot.part.timber
    same = line.timber is None or timber is None or line.timber == timber
    return same and (line.kind == "sheet") == lot.sheet


def splits_of(
    lots: Sequence[Lot], boards: Sequence[StockBoard], shop: Shop
) -> tuple[tuple[Split, ...], tuple[int, ...]]:
    """Return jobs that share nothing, and the places of blanks that are made of no board at all."""
    open_to = [
        frozenset(
            board.label for board in boards if serves(lot, board) and thick_enough(lot, board, shop)
        )
        for lot in lots
    ]
    splits = tuple(
        _split(places, [lots[place] for place in places], open_to, boards, shop)
        for places in _joined(open_to)
    )
    return splits, tuple(place for place, allowed in enumerate(open_to) if not allowed)


def _joined(open_to: Sequence[frozenset[str]]) -> list[tuple[int, ...]]:
    """Blanks that may have a board in common, directly or by way of others."""
    groups: list[tuple[frozenset[str], tuple[int, ...]]] = []
    for place, allowed in enumerate(open_to):
        if not allowed:
            continue
        touched = [group for group in groups if group[0] & allowed]
        names = allowed.union(*(group[0] for group in touched))
        places = tuple(sorted((place, *(one for group in touched for one in group[1]))))
        groups = [group for group in groups if group not in touched] + [(names, places)]
    return [places for _, places in sorted(groups, key=lambda group: group[1])]


def _split(
    places: tuple[int, ...],
    lots: Sequence[Lot],
    open_to: Sequence[frozenset[str]],
    boards: Sequence[StockBoard],
    shop: Shop,
) -> Split:
    used = frozenset[str]().union(*(open_to[place] for place in places))
    there = tuple(board for board in boards if board.label in used)
    sheet = lots[0].sheet
    rules = saws.rules_for(shop, sheet=sheet)
    parts = tuple(
        Part(
            str(place),
            saws.up(lot.length),
            saws.up(lot.width),
            ANY,
            quantity=len(lot.pieces),
            boards=None if open_to[place] == used else open_to[place],
        )
        for place, lot in zip(places, lots, strict=True)
    )
    return Split(places, there, Job(parts, tuple(_board(one) for one in there), rules))


def _board(board: StockBoard) -> Board:
    long, wide, thick = board.sizes
    line = board.line
    more, less = OFFCUT if line.kind == "offcut" else (1, 1)
    return Board(
        board.label,
        saws.down(long),
        saws.down(wide - rough_edge(board)),
        ANY,
        zones=tuple(_zones(board)),
        grain=line.kind != "sheet" or line.grain,
        value=saws.down(long * wide * thick / 10**6) * more // less,
    )


def rough_edge(board: StockBoard) -> Fraction:
    """Return what of the width is left out because a rough edge is not straight (TRADE A2.6)."""
    line = board.line
    return saws.ROUGH_EDGE if line.rough or line.hit_and_miss else Fraction(0)


def _zones(board: StockBoard) -> Iterator[Area]:
    """Bad places of the board, rounded up."""
    long, wide, _ = board.sizes
    for avoid in board.line.avoid:
        start, end = avoid.along or (Fraction(0), long)
        low, high = avoid.across or (Fraction(0), wide)
        area = Area(saws.down(start), saws.up(end), saws.down(low), saws.up(high))
        if area.length > 0 and area.width > 0:
            yield area
