"""How thick a board can be used, whole and ripped, and what is ripped first (TRADE A1, A2)."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction

from dryfit.piece.declared import Have
from dryfit.shop.shop import Shop
from dryfit.stock.blanks import Blank
from dryfit.stock.boards import UNKNOWN, flat, reserve, sizes
from dryfit.stock.rough_sizes import rough_sizes


@dataclass(frozen=True, slots=True)
class Usable:
    """How thick a board can be planed flat: `whole`, and `ripped` to each rough width, in mm.

    Each of `ripped` is (width, thickness), the widest first.
    """

    whole: Fraction
    ripped: tuple[tuple[Fraction, Fraction], ...]


@dataclass(frozen=True, slots=True)
class RipFirst:
    """That a blank is ripped before a face is made true, and why (A2.2).

    `whole` is what would be left of the board's full width at the blank's length, `ripped` what is
    left at the blank's own width, `needed` its thickness with what is kept for work by hand; in mm.
    `too_wide` is whether the jointer does not take the full width.
    """

    whole: Fraction
    ripped: Fraction
    needed: Fraction
    too_wide: bool


def usable(line: Have, blanks: Iterable[Blank], shop: Shop) -> Usable:
    """Return how thick a board of the line can be used for the blanks that come out of it."""
    long, wide, _ = sizes(line)
    found: dict[Fraction, Fraction] = {}
    for blank in blanks:
        rough = rough_sizes(blank, line, shop)
        if rough is not None and rough.width < wide:
            left = flat(line, rough.length, rough.width, shop)
            found[rough.width] = min(left, found.get(rough.width, left))
    ripped = tuple(sorted(found.items(), reverse=True))
    return Usable(flat(line, long, wide, shop), ripped)


def rip_first(blank: Blank, line: Have, shop: Shop) -> RipFirst | None:
    """Return that the blank has to be ripped out of the board before it is flat, or None.

    So it is where the board at its full width would be left too thin, or is wider than the jointer.
    None too where the blank takes the whole width, or does not come out of such a board.
    """
    rough, wide = rough_sizes(blank, line, shop), sizes(line)[1]
    if rough is None or not rough.trued or rough.width >= wide:
        return None
    jointer = shop.stations.get("jointer")
    too_wide = jointer is not None and wide > jointer.limits.get("widest", UNKNOWN)
    whole = flat(line, rough.length, wide, shop)
    needed = blank.trued_thickness + reserve(line, shop)
    if whole >= needed and not too_wide:
        return None
    return RipFirst(whole, flat(line, rough.length, rough.width, shop), needed, too_wide)
