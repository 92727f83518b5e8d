"""What is said of boards and blanks, the same on the terminal and in the booklet."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from fractions import Fraction

from dryfit.piece.declared import Have
from dryfit.placing.model import Model
from dryfit.quantities import Display
from dryfit.shop.shop import Shop
from dryfit.stock.boards import flat
from dryfit.stock.laid_out import BoardLayout, Bought, NamedBlank, StockBoard
from dryfit.stock.ripped_first import parting, too_thin_whole
from dryfit.stock.telling.have_lines import with_currency
from dryfit.stock.telling.said import Fine, Said, between, measured, spoken, times
from dryfit.stock.telling.short import counted


def written_names(model: Model) -> Mapping[str, str]:
    """Return what several copies of each part are called, by its name: ``slats``."""
    return {part.name: part.written.lower() for part in model.parts}


def board_in_words(board: StockBoard) -> Said:
    """Return what kind of board it is: ``board of ash, 2400 × 160 × 34, rough, cup 4``."""
    line = board.line
    of = f" of {line.timber}" if line.timber else ""
    return between((f"{line.kind}{of}", sizes_in_words(board), *state_in_words(line)), ", ")


def sizes_in_words(board: StockBoard) -> Said:
    """Return how large a board is; of one that narrows both widths: ``1400 × 430 to 400 × 45``."""
    long, _, thick = board.sizes
    here, there = board.line.sizes[1], board.line.other_width
    if here is None or there is None or here == there:
        return measured(board.sizes)
    return between((long, between((here, there), " to "), (Fine(thick),)), " × ")


def state_in_words(line: Have) -> Iterator[Said]:
    """Yield how a board is planed, how far out of flat, where it has bark and bad wood."""
    if line.kind != "sheet":
        yield ("rough" if line.rough else "hit and miss" if line.hit_and_miss else "planed",)
    elif not line.grain:
        yield ("no grain",)
    for name, much in (("cup ", line.cup), ("bow ", line.bow), ("twist ", line.twist)):
        if much:
            yield (name, much)
    yield from bark_in_words(line)
    yield from zones_in_words(line)


def bark_in_words(line: Have) -> Iterator[Said]:
    """Yield how many edges of a board are raw, if any."""
    if line.waney:
        yield ("one waney edge" if line.waney == 1 else "two waney edges",)


def zones_in_words(line: Have) -> Iterator[Said]:
    """Yield the bad wood of a board: ``knot 300 to 380``."""
    for bad in line.avoid:
        said: list[Said] = []
        if bad.along is not None:
            said.append(between(bad.along, " to "))
        if bad.across is not None:
            said.append((*between(bad.across, " to "), " from the edge"))
        yield (f"{bad.why} ", *between(said, ", "))


def usable_thickness(
    board: StockBoard, layout: BoardLayout | None, display: Display, shop: Shop
) -> dict[str, Fraction]:
    """Return what a board can be planed flat to, in mm: whole, and more where it is ripped.

    TRADE A1.5: 34 thick and 160 wide with a cup of 4 gives 29, ripped to 50 it gives 32.6.  Of
    several blanks of one width the longest decides.
    """
    return {spoken(name, display): much for name, much in _usable(board, layout, shop).items()}


def _usable(board: StockBoard, layout: BoardLayout | None, shop: Shop) -> Mapping[Said, Fraction]:
    """Return the same with the lengths in the names as lengths."""
    long, wide, _ = board.sizes
    whole = flat(board.line, long, wide, shop)
    widths: dict[Fraction, Fraction] = {}
    for each in layout.placed if layout is not None else ():
        across, along = each.across[1] - each.across[0], each.along[1] - each.along[0]
        if across < wide:
            widths[across] = max(widths.get(across, along), along)
    ripped: dict[Said, Fraction] = {
        _as_cut(board, along, across): flat(board.line, along, across, shop)
        for across, along in sorted(widths.items(), reverse=True)
    }
    return {("whole",): whole} | {name: much for name, much in ripped.items() if much != whole}


def _as_cut(board: StockBoard, along: Fraction, across: Fraction) -> Said:
    """Return what a board gives more thickness for: cup goes with the width, bow with the length.

    A1.5: of a bow so much is lost as the square of the length that is left of it.
    """
    if (board.line.bow or board.line.twist) and along < board.sizes[0]:
        return "in pieces of ", Fine(along), " × ", Fine(across)
    return "ripped to ", Fine(across)


def flat_in_words(
    board: StockBoard, layout: BoardLayout | None, display: Display, shop: Shop
) -> Said:
    """Return ``planed flat it gives 29 whole, 32.6 ripped to 50``; nothing of a sheet.

    With why it is not planed whole, where it would be too thin then (H44).
    """
    if board.line.kind == "sheet":
        return ()
    alike = {
        spoken(name, display): (Fine(size), " ", *name)
        for name, size in _usable(board, layout, shop).items()
    }
    much = between(alike.values(), ", ")
    blanks = [each.blank for each in layout.placed] if layout is not None else []
    return ("planed flat it gives ", *much, *_not_whole(board, blanks, shop))


def _not_whole(board: StockBoard, blanks: Sequence[NamedBlank], shop: Shop) -> Said:
    """Return why a board is parted before it is planed; nothing where it need not be."""
    found = too_thin_whole(board, blanks, shop)
    if found is None:
        return ()
    of = f"; it is {parting(board)} before it is planed, since the {found.blank.subject} takes "
    return (of, Fine(found.needed), " and whole it would be ", Fine(found.whole))


def place_in_words(board: StockBoard) -> str:
    """Return which line tells of a board on hand: ``line 6``; else ``to buy``."""
    return board.line.place if board.on_hand else "to buy"


def used_in_words(layout: BoardLayout) -> str:
    """Return how much of a board is used: ``71 % of it becomes blanks``."""
    percent = (layout.used * 100 + Fraction(1, 2)) // 1
    return f"{percent} % of it becomes blanks"


def made_in_words(blank: NamedBlank, written: Mapping[str, str]) -> str:
    """Return what a blank becomes: ``2 posts``, ``top stave 3``, else what it is for."""
    if not blank.pieces:
        wish = ", if you like" if blank.if_room and blank.what == "spare" else ""
        return f"a {blank.what}{wish}"
    return (
        blank.pieces[0]
        if len(blank.pieces) == 1
        else counted(blank.subject, len(blank.pieces), written)
    )


def money(amount: Fraction | None) -> str | None:
    """Return an amount of money with two decimals, halves up; None where no price is known."""
    if amount is None:
        return None
    cents = (amount * 200 + 1) // 2
    return f"{cents // 100}.{cents % 100:02}"


def priced(amount: Fraction | None, bought: Iterable[Bought]) -> str:
    """Return an amount in the money of the yard: ``€48.00``, ``48.00 CHF``; empty without one."""
    told = money(amount)
    if told is None:
        return ""
    prices = (each.line.price for each in bought if each.line.price is not None)
    currency = next((price.currency for price in prices if price.currency), "")
    return with_currency(told, currency)


def total_price(bought: tuple[Bought, ...]) -> Fraction | None:
    """Return what all costs of which the price is known; None where none is."""
    prices = [each.price for each in bought if each.price is not None]
    return sum(prices, Fraction(0)) if prices else None


def bought_in_words(bought: Bought) -> Said:
    """Return what is bought: ``ash 2400 × 180 × 27``, and its raw edges."""
    return between((wood_in_words(bought.line), *bark_in_words(bought.line)), ", ")


def wood_in_words(line: Have) -> Said:
    """Return which wood in which sizes: ``ash 2400 × 180 × 27``."""
    return (f"{line.timber or line.kind} ", *times(line.sizes))


def from_line(bought: Bought) -> str:
    """Return which line says so, or that none does."""
    if bought.at_yard:
        return bought.line.place
    return "such a board would do; no line says what the yard has"
