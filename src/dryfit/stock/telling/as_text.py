"""The stock for the terminal: verdict, boards with their cuts, what is missing and bought."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from dryfit.placing.model import Model
from dryfit.quantities import Display
from dryfit.shop.shop import Shop
from dryfit.stock.laid_out import Bought, LaidOut, NamedBlank, StockBoard
from dryfit.stock.telling.in_hand import Sawn, becomes, origin, sawn
from dryfit.stock.telling.in_words import (
    board_in_words,
    bought_in_words,
    flat_in_words,
    from_line,
    made_in_words,
    place_in_words,
    priced,
    total_price,
    used_in_words,
    written_names,
)
from dryfit.stock.telling.left_over import left_over
from dryfit.stock.telling.said import at_the_saw, spoken, with_unit
from dryfit.stock.telling.short import missing_in_words
from dryfit.stock.telling.verdict import verdict_in_words

_NO_BOARDS = (
    "The notes name no board on hand and none for sale, so nothing was laid out. Write what there",
    "is in lines such as:",
)
_EXAMPLES = (
    "have 1 board of ash, {2400} x {160} x {34}, rough",
    "buy boards of ash, {2400} x {180} x {34}, rough, 48 each",
)


def no_boards(display: Display) -> str:
    """Return what is told where the notes name no wood."""
    return _lines((*_NO_BOARDS, *(f"  {display.examples(each)}" for each in _EXAMPLES)))


def stock_text(laid: LaidOut, model: Model, shop: Shop) -> str:
    """Return all that is told of the stock, a line each."""
    display, written = model.display.plain, written_names(model)
    lines = [with_unit(said, display) for said in verdict_in_words(laid, written)]
    for board in laid.boards:
        lines += ["", *_board(board, laid, model, shop)]
    for title, rows in (
        ("missing", [missing_in_words(row, written) for row in laid.missing]),
        ("to buy", list(_to_buy(laid.buy, display))),
        ("left over, ready for the next notes", list(left_over(laid, model.display))),
    ):
        if rows:
            lines += ["", title, *(f"  {row}" for row in rows)]
    return _lines(lines)


def _lines(lines: Sequence[str]) -> str:
    return "\n".join(lines) + "\n"


def _board(board: StockBoard, laid: LaidOut, model: Model, shop: Shop) -> Iterator[str]:
    display, written = model.display.plain, written_names(model)
    layout = next((each for each in laid.layouts if each.board.label == board.label), None)
    yield f"{board.label}  {spoken(board_in_words(board), display)} ({place_in_words(board)})"
    if said := flat_in_words(board, layout, display, shop):
        yield f"   {spoken(said, display)}"
    if layout is None:
        yield "   not cut"
        return
    yield f"   {used_in_words(layout)}:"
    yield from (
        f"   {row}" for row in _blanks([each.blank for each in layout.placed], display, written)
    )
    yield from (f"   {row}" for row in _cuts(sawn(layout), board, display))


def _blanks(
    blanks: Sequence[NamedBlank], display: Display, written: Mapping[str, str]
) -> list[str]:
    rows = [
        (
            blank.letter,
            blank.name,
            spoken(at_the_saw((blank.length, blank.width, blank.thickness)), display),
            made_in_words(blank, written),
        )
        for blank in blanks
    ]
    return _table(rows, numbers=())


def _cuts(cuts: Sequence[Sawn], board: StockBoard, display: Display) -> list[str]:
    rows = [("cut", "saw", "set", "on", "gives", "rest")]
    for each in cuts:
        cut = each.cut
        rows.append(
            (
                str(cut.number),
                cut.saw,
                display.shown(cut.at, fitted=True) if cut.at else "-",
                origin(cut, board),
                spoken(becomes(each.first, named=False), display),
                spoken(becomes(each.rest, named=False), display),
            )
        )
    return _table(rows, numbers=(0, 2)) if len(rows) > 1 else []


def _to_buy(bought: Sequence[Bought], display: Display) -> Iterator[str]:
    for each in bought:
        what = f"{each.count} of {spoken(bought_in_words(each), display)} ({from_line(each)})"
        price = priced(each.price, bought)
        yield f"{what}: {price}" if price else what
    total = total_price(tuple(bought))
    if len(bought) > 1 and total is not None:
        known = all(each.price is not None for each in bought)
        yield f"{'in all' if known else 'what has a price, in all'}: {priced(total, bought)}"


def _table(rows: Sequence[tuple[str, ...]], *, numbers: tuple[int, ...]) -> list[str]:
    if not rows:
        return []
    widths = [max(len(cell) for cell in column) for column in zip(*rows, strict=True)]
    return [
        "  ".join(
            cell.rjust(width) if at in numbers else cell.ljust(width)
            for at, (cell, width) in enumerate(zip(row, widths, strict=True))
        ).rstrip()
        for row in rows
    ]
