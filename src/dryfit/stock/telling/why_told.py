"""What `why` tells of a blank and of a board: what it is for, and where its figures come from."""

from __future__ import annotations

from collections.abc import Iterator

from dryfit.notes.names import canonical
from dryfit.placing.model import Model
from dryfit.shop.shop import Shop
from dryfit.stock.laid_out import BoardLayout, LaidOut, NamedBlank, StockBoard
from dryfit.stock.laying.reasons import listed
from dryfit.stock.telling.in_hand import sawn
from dryfit.stock.telling.in_words import (
    board_in_words,
    flat_in_words,
    made_in_words,
    place_in_words,
    written_names,
)
from dryfit.stock.telling.said import at_the_saw, spoken


def stock_told(laid: LaidOut | None, model: Model, shop: Shop) -> dict[str, str]:
    """Return what is told of each blank and each board, by name: ``post blank 1``, ``board A``."""
    if laid is None:
        return {}
    placed = laid.placed
    layouts = {layout.board.label: layout for layout in laid.layouts}
    told = {blank.name: _blank(blank, placed.get(blank.name), model) for blank in laid.blanks}
    for board in laid.boards:
        name = f"{board.line.kind} {board.label}"
        told[name] = _lines(_board(name, board, layouts.get(board.label), model, shop))
    return {canonical(name): words for name, words in told.items()}


def _lines(lines: Iterator[str]) -> str:
    return "\n".join(lines)


def _blank(blank: NamedBlank, layout: BoardLayout | None, model: Model) -> str:
    return _lines(_of_blank(blank, layout, model))


def _of_blank(blank: NamedBlank, layout: BoardLayout | None, model: Model) -> Iterator[str]:
    display = model.display.plain
    sizes = at_the_saw((blank.length, blank.width, blank.thickness))
    makes = listed(blank.pieces) or made_in_words(blank, written_names(model))
    yield f"{blank.name} ({blank.letter}): {spoken(sizes, display)}, for {makes}"
    names = ("length", "width", "thickness")
    lost = [
        f"{display.with_unit(much, fitted=True)} of the {name}"
        for name, much in zip(names, blank.allowance, strict=True)
        if much
    ]
    if lost:
        yield f"  lost until it has its sizes, saw cuts included: {listed(lost)}"
    if blank.reason:
        yield f"  {blank.reason}"
    if blank.if_room and blank.what == "spare":
        yield "  it has the most cuts, and one that is made later has another thickness"
    if layout is None:
        yield "  it lies in no board"
        return
    label = layout.board.label
    cuts = [f"{label}{cut.number}" for cut in layout.cuts if blank.name in cut.first + cut.rest]
    by = f" by cut{'s' if len(cuts) > 1 else ''} {listed(cuts)}" if cuts else ""
    yield f"  out of {layout.board.line.kind} {label}{by}"


def _board(
    name: str, board: StockBoard, layout: BoardLayout | None, model: Model, shop: Shop
) -> Iterator[str]:
    display = model.display.plain
    yield f"{name}: {spoken(board_in_words(board), display)} ({place_in_words(board)})"
    if said := flat_in_words(board, layout, display, shop):
        yield f"  {spoken(said, display)}"
    if layout is None:
        yield "  not cut"
        return
    blanks = sorted(
        (each.blank for each in layout.placed),
        key=lambda blank: (len(blank.letter), blank.letter),
    )
    yield "  out of it come:"
    yield from (f"    {blank.letter}  {blank.name}" for blank in blanks)
    for cut in sawn(layout):
        for piece, side in ((cut.first, "falls at"), (cut.rest, "is left beyond")):
            if piece.fallen is not None and piece.fallen.keep:
                sizes = spoken(at_the_saw(piece.sizes), display)
                yield f"  worth keeping: {sizes}, what {side} cut {board.label}{cut.cut.number}"
