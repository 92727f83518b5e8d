"""How large a blank is sawn out of a board: allowances by kind and state of the wood (TRADE A5)."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from dryfit.joinery.resawing import WARP
from dryfit.piece.declared import Have
from dryfit.shop.shop import Shop
from dryfit.stock.blanks.blank import Blank, as_long_as_fed, in_a_row, shortest_fed
from dryfit.stock.boards import (
    UNKNOWN,
    as_thick,
    flat,
    reserve,
    room_across,
    serves,
    sizes,
    unplaned,
    used_as_it_is,
)

ZERO = Fraction(0)


@dataclass(frozen=True, slots=True)
class Rough:
    """One blank as it is sawn out of a certain board, in mm; `thickness` is that of the board.

    `allowance` is what of length, width and thickness is lost until its pieces have their sizes,
    saw cuts between them included.  `reason` says in words what decides them.  `trued` is whether
    a face has to be made true, `planed` whether it is brought to a thickness, and `ripped` whether
    it is brought to a width: wood that is used at the size that it has is not.
    """

    length: Fraction
    width: Fraction
    thickness: Fraction
    allowance: tuple[Fraction, Fraction, Fraction]
    reason: str
    trued: bool = True
    planed: bool = True
    ripped: bool = True


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
    if line.waney < len(blank.part.waney):
        return None
    if blank.state and not _of_state(blank, line, shop):
        return None
    thick, whole = sizes(line)[2], blank.leaves * blank.to_thickness
    keeps = not (unplaned(line) or line.warped) and thick == blank.to_thickness
    as_it_is = not blank.staves and used_as_it_is(line, blank.to_width, blank.to_thickness)
    width = blank.to_width + (ZERO if as_it_is else room_across(line, blank.part, shop))
    length, ends = _length(blank, width, line, shop, keeps=keeps)
    if _flat(blank, line, length, width, shop) < blank.trued_thickness + reserve(line, shop):
        return None
    lost = (
        length - blank.along * blank.part.cut_length,
        width - blank.to_width,
        thick - whole,
    )
    return Rough(
        length,
        width,
        thick,
        lost,
        "; ".join(each for each in (ends, _scarce(blank, line, thick, shop)) if each),
        trued=unplaned(line) or line.warped,
        planed=not keeps,
        ripped=not as_it_is,
    )


def state_of(blank: Blank, line: Have) -> str:
    """Return what is done to the blank out of such a board, as `states.STATES` says it."""
    if unplaned(line) or line.warped:
        return "trued"
    if not blank.staves and used_as_it_is(line, blank.to_width, blank.to_thickness):
        return "section"
    return "kept" if sizes(line)[2] == blank.to_thickness else "planed"


def _of_state(blank: Blank, line: Have, shop: Shop) -> bool:
    """Return whether the board may be used for blanks that all have the blank's state.

    A planed board may be made true as well, where it is thick enough for that.
    """
    own = state_of(blank, line)
    if own == blank.state or blank.state != "trued" or own == "trued":
        return own == blank.state
    room = shop.allowances["facing"] + shop.allowances["hand_margin"]
    return sizes(line)[2] >= blank.trued_thickness + room


def _flat(blank: Blank, line: Have, length: Fraction, width: Fraction, shop: Shop) -> Fraction:
    """Return how thick the blank is when it is true; what is resawn loses more (A8.1)."""
    left = flat(line, length, width, shop)
    if blank.leaves == 1 or not unplaned(line):
        return left
    return min(left, sizes(line)[2] - WARP + reserve(line, shop))


def _length(
    blank: Blank, width: Fraction, line: Have, shop: Shop, *, keeps: bool
) -> tuple[Fraction, str]:
    room, along = shop.allowances, blank.along
    own = in_a_row(blank.part, along, shop)
    ends = room["panel_length"] if blank.staves else room["rough_length"]
    if not blank.staves and not unplaned(line):
        ends = room["planed_length"]
    reason = ""
    snipe = ZERO if keeps else _snipe(width, shop)
    if blank.between_strips and snipe:
        snipe, reason = ZERO, "fed between strips, which the planer bites instead"
    if snipe > ends:
        ends, reason = snipe, "the planer bites deeper at both ends"
    if own + ends < shortest_fed(shop):
        reason = "the machines take nothing shorter"
    long = as_long_as_fed(own + ends, blank.step, shop)
    return long, f"ganged: {reason or 'its ends are trimmed once'}" if along > 1 else reason


def _snipe(width: Fraction, shop: Shop) -> Fraction:
    """Return what the planer spoils of a blank, both ends together; nothing where it is too wide.

    What no planer takes is planed by hand, or with a router on a sled (A7).
    """
    planer = shop.stations.get("planer")
    if planer is None or width > planer.limits.get("widest", UNKNOWN):
        return ZERO
    return 2 * shop.allowances["snipe"]


def _scarce(blank: Blank, line: Have, thick: Fraction, shop: Shop) -> str:
    """Return what to heed where a board of unknown warp is thinner than usual (A5.0)."""
    if not unplaned(line) or line.warped:
        return ""
    kind = "hit_and_miss_thickness" if line.hit_and_miss else "rough_thickness"
    if thick >= blank.trued_thickness + shop.allowances[kind]:
        return ""
    return "little to plane off: take the flattest part of the board"


def _of_sheet(blank: Blank, line: Have) -> Rough | None:
    thick = sizes(line)[2]
    if not as_thick(thick, blank.to_thickness):
        return None
    lost = (blank.length - blank.part.cut_length, blank.width - blank.to_width, ZERO)
    reason = "each edge is trimmed" if any(lost) else "factory edges are kept"
    return Rough(blank.length, blank.width, thick, lost, reason, trued=False, planed=False)
