"""Laying out: which blank comes out of which board, and whether the wood on hand is enough.

The library `dryfit.cutting` lays out; this room tells it what the boards give and what is needed,
and tells what it found in boards, blanks and cuts.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import replace

from dryfit.diagnostics import Findings
from dryfit.piece.declared import Have
from dryfit.placing.model import Model
from dryfit.shop.shop import Shop
from dryfit.stock.blanks.needs import Needs, needs_of, usual_way
from dryfit.stock.laid_out import Bought, LaidOut, StockBoard
from dryfit.stock.laying.choosing import Chosen, chosen, suffices
from dryfit.stock.laying.composed import composed, with_labels
from dryfit.stock.laying.first_to_buy import first_to_buy
from dryfit.stock.laying.if_room import with_what_finds_room
from dryfit.stock.laying.labels import labels
from dryfit.stock.laying.lacking import lacking, to_buy
from dryfit.stock.laying.margins import margin_of
from dryfit.stock.laying.reasons import NO_ROOM, NOT_SEEN, reasons_of
from dryfit.stock.laying.ways import as_laid
from dryfit.stock.stock_lines import usable_lines


def lay_out_stock(
    model: Model, shop: Shop, effort: int = 1
) -> tuple[Model, LaidOut | None, Findings]:
    """Return how all blanks of a piece come out of its boards; None where no line tells of wood.

    The model comes back because its panels may be glued from other staves where that saves wood.
    What is missing is no error: the piece is planned all the same.
    What lines lack is asked where they are declared.
    """
    if not (model.stock or model.yard):
        return model, None, ()
    lines, yard = usable_lines(model)
    boards = boards_of(lines)
    usual = usual_way(model, shop)
    if any(part.waney for part in model.parts):
        return _beside_waney(usual, boards, yard, model, shop, effort)
    ways = (usual,) if suffices(usual, boards, yard, shop) else needs_of(model, shop)
    found = chosen(ways, boards, yard, shop, effort, lambda some: _ways_of(some, model, shop))
    laid = _told(found, boards, yard, model, shop, len(boards))
    return found.needs.model, laid, ()


def _ways_of(boards: Sequence[StockBoard], model: Model, shop: Shop) -> tuple[Needs, ...]:
    """Return the ways to make all parts that the piece has with these boards on hand."""
    counts = Counter(id(board.line) for board in boards)
    lines = {id(board.line): board.line for board in boards}
    stock = tuple(replace(line, count=counts[name]) for name, line in lines.items())
    return needs_of(replace(model, stock=stock), shop)


def _beside_waney(
    usual: Needs,
    boards: tuple[StockBoard, ...],
    yard: Sequence[Have],
    model: Model,
    shop: Shop,
    effort: int,
) -> tuple[Model, LaidOut, Findings]:
    """Lay out what keeps a raw edge first, and all else on what that leaves of the wood."""
    from dryfit.stock.laying.waney import waney_first
    from dryfit.stock.laying.waney_cuts import with_waney

    waney = waney_first(usual.blanks, boards, shop)
    ways: tuple[Needs, ...] = (_without_waney(usual),)
    if not suffices(ways[0], waney.boards, yard, shop):
        ways = tuple(map(_without_waney, needs_of(model, shop)))

    def ways_of(some: Sequence[StockBoard]) -> tuple[Needs, ...]:
        return tuple(map(_without_waney, _ways_of(some, model, shop)))

    found = chosen(ways, waney.boards, yard, shop, effort, ways_of)
    others = _told(found, waney.boards, yard, model, shop, len(boards))
    laid = with_waney(others, waney, boards, shop, model.display)
    if laid.spare_room is not None and laid.tightest != others.tightest:
        blanks = (*usual.blanks, *found.needs.blanks)
        first = first_to_buy(laid.tightest, laid.layouts, blanks, yard, shop)
        laid = replace(laid, first_to_buy=first)
    return found.needs.model, laid, ()


def _without_waney(needs: Needs) -> Needs:
    return replace(needs, blanks=tuple(one for one in needs.blanks if not one.part.waney))


def boards_of(lines: Sequence[Have]) -> tuple[StockBoard, ...]:
    """Return every board of lines on hand, labelled in the order of the notes."""
    names = labels()
    return tuple(StockBoard(next(names), line) for line in lines for _ in range(line.count))


def _told(
    found: Chosen,
    on_hand: tuple[StockBoard, ...],
    yard: Sequence[Have],
    model: Model,
    shop: Shop,
    labelled: int,
) -> LaidOut:
    blanks = found.needs.blanks
    reasons = reasons_of(found.on_hand, found.proved, on_hand, model, shop)
    final, buy = found.on_hand, tuple[Bought, ...]()
    if found.bought is not None:
        buy = tuple(to_buy(found.bought, yard))
        final = found.bought if yard else found.on_hand
    final = with_what_finds_room(final, [one for one in blanks if one.if_room], on_hand, shop)
    final, boards = with_labels(final, on_hand, labelled)
    named, layouts = composed(final, blanks, boards, shop)
    enough = found.verdict == "enough"
    margin = margin_of(layouts, boards, blanks, shop) if enough else None
    first = None
    if margin is not None and margin.spare is None:
        first = first_to_buy(margin.board, layouts, blanks, yard, shop)
    otherwise = NO_ROOM if found.verdict == "not enough" else NOT_SEEN
    return LaidOut(
        verdict=found.verdict,
        proofs=reasons.proofs,
        boards=boards,
        blanks=named,
        layouts=layouts,
        missing=tuple(lacking(blanks, named, layouts, reasons.alone, otherwise)),
        buy=buy,
        searched=found.work,
        spare_room=None if margin is None else margin.room,
        tightest="" if margin is None else margin.board,
        spare_board=None if margin is None else margin.spare,
        first_to_buy=first,
        unlisted=tuple(dict.fromkeys(blank.part.name for blank in found.unlisted)),
        way=as_laid(found.needs.why, layouts),
    )
