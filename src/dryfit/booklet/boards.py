"""The boards on paper: each with its drawing, the cuts that part it, and what comes out of it."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from dryfit.booklet.bench import Bench
from dryfit.booklet.drawing import Svg
from dryfit.booklet.drawing.board import board_drawing, scale_of
from dryfit.booklet.text import Amount, Say, Text, capital, sentence
from dryfit.shop.shop import Shop
from dryfit.stock.laid_out import BoardLayout, LaidOut, NamedBlank, StockBoard
from dryfit.stock.telling.in_hand import Sawn, becomes, origin, sawn
from dryfit.stock.telling.in_words import (
    flat_in_words,
    made_in_words,
    sizes_in_words,
    state_in_words,
    used_in_words,
    written_names,
)
from dryfit.stock.telling.said import Fine, Said, at_the_saw, between

_AS_LARGE = Fraction(11, 10)
"""Widths drawn so much larger than lengths are not told apart by eye."""


@dataclass(frozen=True, slots=True)
class CutRow:
    """One cut: where it stands in the order, what is set, on which piece, what both sides are."""

    number: int
    disc: bool
    saw: str
    at: Text
    on: str
    gives: Text
    rest: Text


@dataclass(frozen=True, slots=True)
class BlankRow:
    """One blank: its letter, its name, its rough size, what it becomes, the board it lies in."""

    letter: str
    name: str
    sizes: Text
    makes: str
    board: str
    reason: str


@dataclass(frozen=True, slots=True)
class BoardView:
    """One board that is cut.

    `thickness` says to what it can be planed flat, and is empty for a sheet; `used` is the share
    that becomes blanks; `stretch` says how much larger its width is drawn than its length, where it
    is.
    """

    label: str
    heading: Text
    thickness: Text
    used: str
    stretch: str
    drawing: Svg
    cuts: tuple[CutRow, ...]


def board_heading(board: StockBoard, say: Say) -> Text:
    """Return what a board is called on paper: its kind, letter, wood, size and state."""
    line = board.line
    said = between((sizes_in_words(board), *state_in_words(line)), ", ")
    wood = f"{line.timber}, " if line.timber else ""
    return (f"{capital(line.kind)} {board.label}: {wood}", *shown(said, say))


def board_views(laid: LaidOut, shop: Shop, say: Say) -> tuple[BoardView, ...]:
    """Return the boards that are cut, in the order of their letters."""
    return tuple(_view(layout, shop, say) for layout in laid.layouts)


def _view(layout: BoardLayout, shop: Shop, say: Say) -> BoardView:
    board = layout.board
    stretch = Fraction(scale_of(layout).stretch).limit_denominator(10)
    return BoardView(
        label=board.label,
        heading=board_heading(board, say),
        thickness=_thickness(layout, shop, say),
        used=used_in_words(layout),
        stretch=f"{float(stretch):.1f}".removesuffix(".0") if stretch >= _AS_LARGE else "",
        drawing=board_drawing(layout, say.display),
        cuts=tuple(_cut(each, board, say) for each in sawn(layout)),
    )


def _thickness(layout: BoardLayout, shop: Shop, say: Say) -> Text:
    """Return to what the board can be planed flat, whole and as its blanks are ripped."""
    said = flat_in_words(layout.board, layout, say.display, shop)
    return sentence(with_unit(said, say)) if said else ()


def _cut(each: Sawn, board: StockBoard, say: Say) -> CutRow:
    cut = each.cut
    return CutRow(
        number=cut.number,
        disc=cut.saw == "crosscut",
        saw=cut.saw,
        at=(say.setting(cut.at) if cut.at else "-",),
        on=capital(origin(cut, board)),
        gives=shown(becomes(each.first), say),
        rest=shown(becomes(each.rest), say),
    )


def blank_row(blank: NamedBlank, board: str, bench: Bench) -> BlankRow:
    """Return a blank as the list has it; `board` is the letter of the board it lies in."""
    sizes = at_the_saw((blank.length, blank.width, blank.thickness))
    copies = bench.by_part(blank.pieces, named=True)
    makes = ", ".join(f"{row.label} {row.place}" for row in copies)
    return BlankRow(
        blank.letter,
        blank.name,
        shown(sizes, bench.say),
        makes or made_in_words(blank, written_names(bench.model)),
        board,
        blank.reason if blank.pieces else "",
    )


def shown(said: Said, say: Say) -> Text:
    """Return words with their lengths as sizes, what was measured as settings are."""
    return tuple(_shown(each, say) for each in said)


def with_unit(said: Said, say: Say) -> Text:
    """Return words as a sentence, each of their lengths with its unit."""
    return tuple(_with_unit(each, say) for each in said)


def _with_unit(each: str | Fraction | Fine, say: Say) -> str | Amount:
    if isinstance(each, Fine):
        return say.setting_with_unit(each.length)
    return each if isinstance(each, str) else say.size_with_unit(each)


def _shown(each: str | Fraction | Fine, say: Say) -> str | Amount:
    if isinstance(each, Fine):
        return say.setting(each.length)
    return each if isinstance(each, str) else say.size(each)
