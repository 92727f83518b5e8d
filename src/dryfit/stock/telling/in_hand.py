"""The pieces that a board becomes on the way from cut to cut: what each cut gives and leaves."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from dryfit.stock.laid_out import BoardLayout, Fallen, NamedBlank, Reach, SawCut, StockBoard
from dryfit.stock.laying.reasons import listed
from dryfit.stock.telling.said import Said, at_the_saw, times


@dataclass(frozen=True, slots=True)
class InHand:
    """A piece of a board that comes off a saw.

    `blanks` are what comes out of it in the end; `cut_on` is whether a further cut parts it.
    `fallen` is the entry of what falls, where it becomes no blank, and `worth` how much of it is
    worth keeping, long and wide, where that is less than all.
    """

    along: Reach
    across: Reach
    blanks: tuple[NamedBlank, ...]
    cut_on: bool
    fallen: Fallen | None
    worth: tuple[Fraction, Fraction] | None = None

    @property
    def sizes(self) -> tuple[Fraction, Fraction]:
        """Return how long and how wide it is in mm."""
        return self.along[1] - self.along[0], self.across[1] - self.across[0]


@dataclass(frozen=True, slots=True)
class Sawn:
    """One cut with the two pieces that it parts: `first` at the reference end or edge, `rest`."""

    cut: SawCut
    first: InHand
    rest: InHand


def sawn(layout: BoardLayout) -> tuple[Sawn, ...]:
    """Return the cuts of a board in their order, each with what it gives."""
    return tuple(_sawn(layout))


def _sawn(layout: BoardLayout) -> Iterator[Sawn]:
    goes_on = {(cut.after, cut.side) for cut in layout.cuts}
    for cut in layout.cuts:
        first, rest = halves(cut)
        yield Sawn(
            cut,
            _in_hand(layout, first, cut.first, cut_on=(cut.number, "first") in goes_on),
            _in_hand(layout, rest, cut.rest, cut_on=(cut.number, "rest") in goes_on),
        )


def halves(cut: SawCut) -> tuple[tuple[Reach, Reach], tuple[Reach, Reach]]:
    """Return where the two sides of a cut lie in the board, each as (along, across)."""
    crosscut = cut.saw == "crosscut"
    begin, end = cut.along if crosscut else cut.across
    near, far = (begin, begin + cut.at), (begin + cut.at + cut.kerf, end)
    if crosscut:
        return (near, cut.across), (far, cut.across)
    return (cut.along, near), (cut.along, far)


def _in_hand(
    layout: BoardLayout, half: tuple[Reach, Reach], names: tuple[str, ...], *, cut_on: bool
) -> InHand:
    along, across = half
    blanks = tuple(
        each.blank for name in names for each in layout.placed if each.blank.name == name
    )
    if blanks or cut_on:
        return InHand(along, across, blanks, cut_on, None)
    here = (fallen for fallen in layout.fallen if (fallen.along, fallen.across) == half)
    fallen = next(here, None)
    worth = None if fallen is None else layout.worth(fallen)
    if worth is None or worth == half:
        return InHand(along, across, blanks, cut_on, fallen)
    (begin, end), (low, high) = worth
    return InHand(along, across, blanks, cut_on, fallen, (end - begin, high - low))


def origin(cut: SawCut, board: StockBoard) -> str:
    """Return which piece a cut is made on: ``board A``, ``piece from 2``, ``rest of 3``."""
    if cut.after is None:
        return f"{board.line.kind} {board.label}"
    return f"piece from {cut.after}" if cut.side == "first" else f"rest of {cut.after}"


def becomes(piece: InHand, *, named: bool = True) -> Said:
    """Return what a side of a cut is: a blank, a piece for several blanks, a leftover, waste.

    A blank is called by its letter, and by its name as well where it is to be `named`; else all is
    said as short as a terminal wants it.
    """
    if piece.cut_on:
        letters = _letters(piece.blanks)
        sizes = at_the_saw(piece.sizes)
        return (*sizes, f"{', for' if named else ':'} {letters}") if letters else sizes
    if piece.blanks:
        names = dict.fromkeys(blank.name for blank in piece.blanks)
        return (f"{_letters(piece.blanks)}{f': {listed(tuple(names))}' if named else ''}",)
    if piece.fallen is not None and piece.fallen.keep:
        sound = "" if piece.worth is None else "sound "
        sizes = at_the_saw(piece.sizes) if piece.worth is None else times(piece.worth)
        if named:
            return (f"leftover{', ' if sound else ' '}{sound}", *sizes, ", keep")
        return (f"keep {sound}", *sizes)
    return ("waste",) if min(piece.sizes) > 0 else ("only what the saw takes",)


def _letters(blanks: tuple[NamedBlank, ...]) -> str:
    letters = {blank.letter for blank in blanks}
    return ", ".join(sorted(letters, key=lambda letter: (len(letter), letter)))
