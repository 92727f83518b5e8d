"""What is said of boards, blanks and the verdict, the same on the terminal and in the booklet."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from fractions import Fraction

from dryfit.piece.declared import Have
from dryfit.placing.model import Model
from dryfit.quantities import Display
from dryfit.shop.shop import Shop
from dryfit.stock.boards import flat
from dryfit.stock.laid_out import BoardLayout, Bought, Lacking, LaidOut, NamedBlank, StockBoard
from dryfit.stock.telling.have_lines import with_currency
from dryfit.stock.telling.said import Fine, Said, between, measured, times

TIGHT = Fraction(10)
"""Blanks that could not be so much longer or wider lie tight, mm (M28, common practice)."""


def written_names(model: Model) -> Mapping[str, str]:
    """Return what several copies of each part are called, by its name: ``slats``."""
    return {part.name: part.written.lower() for part in model.parts}


def verdict_in_words(laid: LaidOut, written: Mapping[str, str]) -> tuple[Said, ...]:
    """Return the verdict in one sentence, then what it rests on; `written` as `written_names`."""
    proofs = (
        f"{proof[:1].upper()}{proof[1:]}{'' if proof.endswith('.') else '.'}"
        for proof in laid.proofs
    )
    return (_verdict(laid, written), *((proof,) for proof in proofs), *_besides(laid))


def _besides(laid: LaidOut) -> Iterator[Said]:
    """Yield how the parts are made otherwise than usual, and which were not laid out."""
    if laid.way:
        serves = laid.verdict == "enough"
        yield (f"{'So that the wood serves' if serves else 'As it is laid out here'}: {laid.way}.",)
    if laid.unlisted and laid.blanks:
        yield (f"Not laid out, because no line tells of their wood: {', '.join(laid.unlisted)}.",)
    placed = laid.placed
    nowhere = [blank.name for blank in laid.blanks if blank.name not in placed]
    if nowhere and any(each.at_yard for each in laid.buy):
        yield (f"Also with what is bought these lie on no board: {', '.join(nowhere)}.",)


def _verdict(laid: LaidOut, written: Mapping[str, str]) -> Said:
    if not laid.blanks:
        parts = ", ".join(laid.unlisted)
        return (f"No verdict: no line tells of the wood of {parts or 'the parts'}.",)
    if laid.verdict == "enough":
        count = len(laid.layouts)
        boards = "1 board holds" if count == 1 else f"{count} boards hold"
        blanks = "the one blank" if len(laid.blanks) == 1 else f"all {len(laid.blanks)} blanks"
        tight = "Tight" if is_tight(laid) else "Room to spare"
        enough = "Enough wood for what is laid out" if laid.unlisted else "Enough wood"
        return (f"{enough}: {boards} {blanks}. {tight}: ", *_margin(laid), ".")
    missing = ", ".join(counted(each.part, each.copies, written) for each in laid.missing)
    what = f" Missing: {missing}." if missing else ""
    if laid.verdict == "not enough":
        short_of = " short of resawing" if _could_be_resawn(laid) else ""
        return (f"Not enough wood, for certain: no way of cutting{short_of} can do it.{what}",)
    found = "no layout was found, and no proof that there is none"
    return (f"Not enough wood as far as was searched: {found}.{what}",)


def _could_be_resawn(laid: LaidOut) -> bool:
    """Return whether a board on hand is twice as thick as a blank that lies nowhere on hand.

    What is missing might be had by sawing such a board into leaves (TRADE A8).
    """
    thick = max((board.sizes[2] for board in laid.boards if board.on_hand), default=Fraction(0))
    there = {one.blank.name for each in laid.layouts if each.board.on_hand for one in each.placed}
    return any(
        2 * (blank.thickness - blank.allowance[2]) < thick
        for blank in laid.blanks
        if blank.name not in there and blank.leaves == 1
    )


def _margin(laid: LaidOut) -> Said:
    spare = "with a spare" if has_spare(laid) else "without a spare"
    if laid.spare_room is None:
        return (f"{spare}; how close the blanks lie was not worked out",)
    closest = f"where they lie closest, on board {laid.tightest}"
    if laid.spare_room <= 0:
        return (f"{spare}, but no blank could be longer or wider {closest}",)
    return (f"{spare}; the blanks could be ", laid.spare_room, f" larger {closest}")


def is_tight(laid: LaidOut) -> bool:
    """Return whether the wood is enough without margin: under 10 mm, or no spare (M28)."""
    if laid.verdict != "enough":
        return False
    return not has_spare(laid) or (laid.spare_room is not None and laid.spare_room < TIGHT)


def has_spare(laid: LaidOut) -> bool:
    """Return whether a spare blank is laid out, or a board that could stand in stays whole."""
    spare = any(each.blank.what == "spare" for lay in laid.layouts for each in lay.placed)
    return spare or laid.spare_board is not None


def counted(name: str, copies: int, written: Mapping[str, str]) -> str:
    """Return copies of a part or staves with their count: ``apron``, ``3 slats``."""
    return name if copies == 1 else f"{copies} {written.get(name, f'{name}s')}"


def missing_in_words(row: Lacking, written: Mapping[str, str]) -> str:
    """Return what has no wood, and why not: ``3 slats: no board is long enough``."""
    why = row.why.removeprefix(f"{row.part}: ")
    return f"{counted(row.part, row.copies, written)}{f': {why}' if why else ''}"


def board_in_words(board: StockBoard) -> Said:
    """Return what kind of board it is: ``board of ash, 2400 × 160 × 34, rough, cup 4``."""
    line = board.line
    of = f" of {line.timber}" if line.timber else ""
    return between((f"{line.kind}{of}", measured(board.sizes), *state_in_words(line)), ", ")


def state_in_words(line: Have) -> Iterator[Said]:
    """Yield how a board is planed, how far out of flat, where it has bark and bad wood."""
    if line.kind != "sheet":
        yield ("rough" if line.rough else "hit and miss" if line.hit_and_miss else "planed",)
    elif not line.grain:
        yield ("no grain",)
    for name, much in (("cup ", line.cup), ("bow ", line.bow), ("twist ", line.twist)):
        if much:
            yield (name, much)
    if line.waney:
        yield ("one waney edge" if line.waney == 1 else "two waney edges",)
    yield from zones_in_words(line)


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
    long, wide, _ = board.sizes
    whole = flat(board.line, long, wide, shop)
    widths: dict[Fraction, Fraction] = {}
    for each in layout.placed if layout is not None else ():
        across, along = each.across[1] - each.across[0], each.along[1] - each.along[0]
        if across < wide:
            widths[across] = max(widths.get(across, along), along)
    ripped = {
        _as_cut(board, along, across, display): flat(board.line, along, across, shop)
        for across, along in sorted(widths.items(), reverse=True)
    }
    return {"whole": whole, **{name: much for name, much in ripped.items() if much != whole}}


def _as_cut(board: StockBoard, along: Fraction, across: Fraction, display: Display) -> str:
    """Return what a board gives more thickness for: cup goes with the width, bow with the length.

    A1.5: of a bow so much is lost as the square of the length that is left of it.
    """
    wide = display.shown(across, fitted=True)
    if (board.line.bow or board.line.twist) and along < board.sizes[0]:
        return f"in pieces of {display.shown(along, fitted=True)} x {wide}"
    return f"ripped to {wide}"


def flat_in_words(
    board: StockBoard, layout: BoardLayout | None, display: Display, shop: Shop
) -> Said:
    """Return ``planed flat it gives 29 whole, 32.6 ripped to 50``; nothing of a sheet."""
    if board.line.kind == "sheet":
        return ()
    usable = usable_thickness(board, layout, display, shop)
    much = between(((Fine(size), f" {name}") for name, size in usable.items()), ", ")
    return ("planed flat it gives ", *much)


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
    """Return what is bought: ``ash 2400 × 180 × 27``."""
    return (f"{bought.line.timber or bought.line.kind} ", *times(bought.line.sizes))


def from_line(bought: Bought) -> str:
    """Return which line says so, or that none does."""
    if bought.at_yard:
        return bought.line.place
    return "such a board would do; no line says what the yard has"
