"""The wood on paper: verdict, what to pull, how boards are cut, what is bought, what is left."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction

from dryfit.booklet.bench import Bench
from dryfit.booklet.boards import BlankRow, BoardView, blank_row, board_views, shown, with_unit
from dryfit.booklet.text import Say, Text, capital, joined, listed
from dryfit.booklet.wood_needed import area_as_sold, volume_as_sold
from dryfit.stock.laid_out import Bought, Lacking, LaidOut, StockBoard
from dryfit.stock.telling.have_lines import money_words
from dryfit.stock.telling.in_words import (
    bought_in_words,
    from_line,
    place_in_words,
    priced,
    sizes_in_words,
    state_in_words,
    total_price,
    wood_in_words,
    written_names,
)
from dryfit.stock.telling.left_over import left_over
from dryfit.stock.telling.said import between
from dryfit.stock.telling.short import missing_in_words, short_in_words, untold_in_words
from dryfit.stock.telling.verdict import verdict_in_words


@dataclass(frozen=True, slots=True)
class PullRow:
    """One board to fetch: its letter, what it is, its size, what to look for, where it is from."""

    label: str
    what: str
    sizes: Text
    look: Text
    place: str


@dataclass(frozen=True, slots=True)
class BuyRow:
    """One thing to buy: how many, what, how much wood that is, the price of one and of all.

    `like` says that no line tells what the yard has; `by` is its price where that is one by size.
    """

    count: int
    what: Text
    like: str
    amount: str
    by: str
    each: str
    price: str


@dataclass(frozen=True, slots=True)
class Buying:
    """What is to be bought, what it costs as far as prices are known, by what a foot counts."""

    rows: tuple[BuyRow, ...]
    total: str
    board_feet: bool


@dataclass(frozen=True, slots=True)
class WoodView:
    """All that is told of the wood.

    `short` is said on the cover where wood is missing, or where no line tells of it; it is empty
    where all is laid out.  `uncut` are the letters of boards that stay whole, `blanks` those that
    lie in a board.
    """

    verdict: tuple[Text, ...]
    short: tuple[Text, ...]
    pull: tuple[PullRow, ...]
    uncut: str
    boards: tuple[BoardView, ...]
    blanks: tuple[BlankRow, ...]
    missing: tuple[Text, ...]
    buying: Buying
    kept: tuple[str, ...]


def wood_view(laid: LaidOut, bench: Bench) -> WoodView:
    """Return what the booklet tells of the wood."""
    placed, say, written = laid.placed, bench.say, written_names(bench.model)
    cut = [layout.board for layout in laid.layouts]
    boards = {board.label for board in cut}
    rest = [board.label for board in laid.boards if board.on_hand and board.label not in boards]
    return WoodView(
        verdict=tuple(with_unit(said, say) for said in verdict_in_words(laid, written)),
        short=tuple(_short(laid, say, written)),
        pull=tuple(_pull(board, say) for board in cut),
        uncut=listed(rest),
        boards=board_views(laid, bench.shop, say),
        blanks=tuple(
            blank_row(blank, placed[blank.name].board.label, bench)
            for blank in sorted(laid.blanks, key=lambda blank: (len(blank.letter), blank.letter))
            if blank.name in placed
        ),
        missing=tuple(_missing(row, bench, written) for row in laid.missing),
        buying=_buying(laid.buy, say),
        kept=left_over(laid, say.display),
    )


def _missing(row: Lacking, bench: Bench, written: Mapping[str, str]) -> Text:
    """Return what has no wood, and what is cut for it out of what is bought."""
    words = missing_in_words(row, written)
    for step in bench.plan.steps:
        for each in step.operations:
            if each.part == row.part and each.rough is not None:
                rough = bench.rough(each.rough)
                return (f"{words}. Rough size of a blank, in step {step.number}: ", *rough)
    return (words,)


def _short(laid: LaidOut, say: Say, written: Mapping[str, str]) -> Iterator[Text]:
    """Yield what the cover says of wood that is missing, or of which no line tells."""
    short, untold = short_in_words(laid, written), untold_in_words(laid)
    if short and laid.blanks:
        yield (f"{capital(short)}.",)
    if untold:
        unknown = "Not laid out" if laid.blanks else "Whether there is enough wood is not known"
        yield (f"{unknown}: {untold}.",)
    if short and laid.buy:
        rows: list[Text] = [
            (
                f"{each.count} of ",
                *shown(bought_in_words(each), say),
                "" if each.at_yard else " or the like",
            )
            for each in laid.buy
        ]
        price = priced(total_price(laid.buy), laid.buy)
        yield ("Buy first: ", *joined(rows, "; "), f", {price} in all." if price else ".")


def _pull(board: StockBoard, say: Say) -> PullRow:
    line = board.line
    of = f" of {line.timber}" if line.timber else ""
    look = joined((shown(said, say) for said in state_in_words(line)), ", ")
    sizes = shown(sizes_in_words(board), say)
    place = place_in_words(board).replace("line ", "line\u00a0")
    return PullRow(board.label, f"{line.kind}{of}", sizes, look, place)


def _buying(bought: tuple[Bought, ...], say: Say) -> Buying:
    total = total_price(bought)
    known = all(each.price is not None for each in bought)
    words = (
        "" if total is None else f"{'' if known else 'What has a price: '}{priced(total, bought)}"
    )
    by_feet = any(
        each.line.price is not None and each.line.price.per == "board foot" for each in bought
    )
    return Buying(
        tuple(_bought(each, say) for each in bought),
        words if len(bought) > 1 else "",
        by_feet or (say.display.unit == "in" and any(each.line.kind != "sheet" for each in bought)),
    )


def _bought(bought: Bought, say: Say) -> BuyRow:
    each = None if bought.price is None else bought.price / bought.count
    what = between((wood_in_words(bought.line), *state_in_words(bought.line)), ", ")
    return BuyRow(
        bought.count,
        shown(what, say),
        "" if bought.at_yard else from_line(bought),
        _amount(bought),
        _by(bought),
        priced(each, (bought,)),
        priced(bought.price, (bought,)),
    )


def _by(bought: Bought) -> str:
    """Return the yard's price where it is one by size: ``£1200.00 per cubic metre``."""
    price = bought.line.price
    if price is None or price.per == "piece":
        return ""
    return f"{money_words(price.amount, price.currency)} per {price.per}"


def _amount(bought: Bought) -> str:
    """Return how much wood it is: a sheet by area, all else by volume."""
    long, wide, thick = (size or Fraction(0) for size in bought.line.sizes)
    area = long * wide * bought.count
    sheet = bought.line.kind == "sheet"
    return ", ".join(area_as_sold(area) if sheet else volume_as_sold(area * thick))
