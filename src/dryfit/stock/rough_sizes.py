"""How large a blank is sawn out of a board: allowances by kind and state of the wood (TRADE A5)."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from dryfit.piece.declared import Have
from dryfit.shop.shop import Shop
from dryfit.stock.blanks import Blank, crosscut_kerf, shortest_fed
from dryfit.stock.boards import flat, rip_room, serves, sizes

ZERO = Fraction(0)


@dataclass(frozen=True, slots=True)
class Rough:
    """One blank as it is sawn out of a certain board, in mm; `thickness` is that of the board.

    `allowance` is what of length, width and thickness is lost until its pieces have their sizes,
    saw cuts between them included.  `reason` says what decides the length, and `trued` and `planed`
    whether a face and an edge have to be made true, and whether it is brought to a thickness: wood
    that is used at the thickness that it has is neither.
    """

    length: Fraction
    width: Fraction
    thickness: Fraction
    allowance: tuple[Fraction, Fraction, Fraction]
    reason: str
    trued: bool = True
    planed: bool = True


def rough_sizes(blank: Blank, line: Have, shop: Shop) -> Rough | None:
    """Return how the blank is sawn out of a board of that line, None where it cannot be.

    It cannot be of another timber, of sheet goods for solid wood, or of a board that leaves less
    than its thickness when it is flat (A1.5, at the blank's own length and width).  Whether the
    board is long and wide enough is left to whoever lays out.
    """
    if not serves(line, blank.part):
        return None
    if blank.sheet:
        return _of_sheet(blank, line)
    thick = sizes(line)[2]
    keeps = not line.rough and not line.warped and thick == blank.to_thickness
    length, reason = _length(blank, line, shop, keeps=keeps)
    width = blank.to_width + rip_room(line, shop)
    spare = shop.allowances["hand_margin"] if line.rough or line.warped else ZERO
    if flat(line, length, width, shop) < blank.to_thickness + spare:
        return None
    lost = (length - blank.each * blank.part.cut_length, width - blank.to_width)
    return Rough(
        length,
        width,
        thick,
        (*lost, thick - blank.to_thickness),
        reason,
        trued=not keeps,
        planed=not keeps,
    )


def _length(blank: Blank, line: Have, shop: Shop, *, keeps: bool) -> tuple[Fraction, str]:
    room = shop.allowances
    own = blank.each * blank.part.cut_length + (blank.each - 1) * crosscut_kerf(shop)
    ends = room[
        "panel_length" if blank.staves else "rough_length" if line.rough else "planed_length"
    ]
    reason = "its ends are trimmed"
    snipe = 2 * room["snipe"] if "planer" in shop.stations and not keeps else ZERO
    if snipe > ends:
        ends, reason = snipe, "the planer bites deeper at both ends"
    if own + ends < shortest_fed(shop):
        ends, reason = shortest_fed(shop) - own, "the machines take nothing shorter"
    steps = (own + ends) / blank.step
    long = blank.step * -(-steps.numerator // steps.denominator)
    return long, f"{blank.each} in one piece: {reason}" if blank.each > 1 else reason


def _of_sheet(blank: Blank, line: Have) -> Rough:
    lost = (blank.length - blank.part.length, blank.width - blank.to_width, ZERO)
    thick = sizes(line)[2]
    return Rough(blank.length, blank.width, thick, lost, "sawn to size", trued=False, planed=False)
