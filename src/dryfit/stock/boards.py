"""Boards and sheets on hand, held against one piece that has to come out of them (TRADE A1, A5).

A board is long, wide or thick enough when what sawing, jointing and planing take is there as well.
A size that its line does not give is never the one that is missing.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import IntEnum
from fractions import Fraction

from dryfit.piece.declared import Have
from dryfit.placing.model import Model, Part
from dryfit.shop.shop import Shop
from dryfit.stock.saws import WANEY_ROOM
from dryfit.wood.warp import Warp, flat_thickness

ZERO = Fraction(0)
UNKNOWN = Fraction(10**6)
"""More than any board: stands for a size that a line does not give."""


class Lack(IntEnum):
    """What keeps a piece from coming out of a board, what comes nearest last."""

    THIN = 0
    WARPED = 1
    """Thick enough, were it flat."""
    SHORT = 2
    NARROW = 3
    NOTHING = 4


@dataclass(frozen=True, slots=True)
class Wanted:
    """One piece of a part as the machines leave it, in mm; `thickness` before a panel is flattened.

    `turned` is whether it may lie with its width along the board's thickness.
    """

    part: Part
    length: Fraction
    width: Fraction
    thickness: Fraction
    turned: bool


def wanted(part: Part, shop: Shop) -> Wanted:
    """Return what has to come out of one board: the part, or one stave of a glued panel."""
    if part.staves is None:
        solid = part.stock == "solid"
        return Wanted(part, part.cut_length, part.width, part.thickness, solid)
    thick = part.thickness + shop.allowances["panel_flattening"]
    return Wanted(part, part.cut_length, part.staves.width, thick, turned=False)


def lines_for(part: Part, model: Model) -> tuple[Have, ...]:
    """Return the lines of wood on hand that the part may be made of."""
    return tuple(line for line in model.stock if serves(line, part))


def to_be_resawn(part: Part) -> bool:
    """Return whether the notes ask for the boards of a part to be resawn out of thicker ones."""
    return "resawn" in part.wishes


def serves(line: Have, part: Part) -> bool:
    """Return whether a line's wood is of the part's timber, and sheet or solid as the part is."""
    same = line.timber is None or part.timber is None or line.timber == part.timber
    return same and (line.kind == "sheet") == (part.stock == "sheet")


def lack(line: Have, piece: Wanted, shop: Shop) -> Lack:
    """Return what a board of the line lacks for the piece, in the way that it lies best."""
    if line.kind == "sheet":
        return _lack_of_sheet(line, piece)
    ways = [(piece.width, piece.thickness)]
    if piece.turned:
        ways.append((piece.thickness, piece.width))
    return max(_lack(line, piece, wide, thick, shop) for wide, thick in ways)


def _lack(line: Have, piece: Wanted, wide: Fraction, thick: Fraction, shop: Shop) -> Lack:
    long_enough = piece.length + trim(line, piece, shop)
    as_it_is = piece.part.staves is None and used_as_it_is(line, wide, thick)
    wide_enough = wide + (ZERO if as_it_is else room_across(line, piece.part, shop))
    spare = reserve(line, shop)
    if flat(line, ZERO, ZERO, shop) < thick + spare:
        return Lack.THIN
    if flat(line, long_enough, wide_enough, shop) < thick + spare:
        return Lack.WARPED
    if sizes(line)[0] < long_enough:
        return Lack.SHORT
    return Lack.NARROW if sizes(line)[1] < wide_enough else Lack.NOTHING


def _lack_of_sheet(line: Have, piece: Wanted) -> Lack:
    long, wide, thick = sizes(line)
    if not as_thick(thick, piece.thickness):
        return Lack.THIN
    (least, most), (narrow, broad) = sorted((piece.length, piece.width)), sorted((long, wide))
    if broad < most:
        return Lack.SHORT
    return Lack.NARROW if narrow < least else Lack.NOTHING


def as_thick(sheet: Fraction, part: Fraction) -> bool:
    """Return whether a sheet is as thick as a part of it, `UNKNOWN` taken to be.

    A sheet is never planed, and what it goes into is cut to what it measures (TRADE A5.5): one
    that is called the same and measures otherwise does not do.
    """
    return sheet in (UNKNOWN, part)


def sizes(line: Have) -> tuple[Fraction, Fraction, Fraction]:
    """Return length, width and thickness of a board, `UNKNOWN` where its line says nothing.

    The width is that of the wider end.  The thickness is as it was measured, where the line says
    that it was.
    """
    told = line.sizes[0], line.widest, line.sizes[2] if line.measured is None else line.measured
    long, wide, thick = (UNKNOWN if size is None else size for size in told)
    return long, wide, thick


def trim(line: Have, piece: Wanted, shop: Shop) -> Fraction:
    """Return how much longer than the piece its blank is at least, both ends together (A5)."""
    if piece.part.staves is not None:
        return shop.allowances["panel_length"]
    return shop.allowances["rough_length" if unplaned(line) else "planed_length"]


def unplaned(line: Have) -> bool:
    """Return whether a board is true nowhere: rough, or planed here and there."""
    return line.rough or line.hit_and_miss


def reserve(line: Have, shop: Shop) -> Fraction:
    """Return the thickness kept for work by hand where a board has to be made true (A1.5)."""
    return shop.allowances["hand_margin"] if unplaned(line) or line.warped else ZERO


def used_as_it_is(line: Have, wide: Fraction, thick: Fraction) -> bool:
    """Return whether a planed board has the very section that is wanted, so that it is only cut."""
    own = sizes(line)
    return not (unplaned(line) or line.warped) and (own[1], own[2]) == (wide, thick)


def room_across(line: Have, part: Part, shop: Shop) -> Fraction:
    """Return how much wider than a part its blank is; an edge that stays raw is not ripped."""
    return WANEY_ROOM if part.waney else rip_room(line, shop)


def rip_room(line: Have, shop: Shop) -> Fraction:
    """Return how much wider than the piece its blank is (A5)."""
    if line.hit_and_miss:
        return shop.allowances["hit_and_miss_width"]
    if not line.rough:
        return shop.allowances["planed_width"]
    return shop.allowances["rough_width_band_saw" if "band saw" in shop.stations else "rough_width"]


def flat(line: Have, length: Fraction, width: Fraction, shop: Shop) -> Fraction:
    """Return the greatest thickness to which a piece so long and wide can be planed flat (A1.5).

    Of size nothing it is what a flat board would give.  A planed board without a warp written is
    used as it is.
    """
    long, wide, thick = sizes(line)
    if not (unplaned(line) or line.warped):
        return thick
    board = Warp(long, wide, thick, line.cup, line.bow, line.twist)
    width = min(width, wide)
    return flat_thickness(board, min(length, long), width, _clean_up(width, shop))


def _clean_up(width: Fraction, shop: Shop) -> Fraction:
    """Return what both faces lose until they are clean, more where no machine is so wide (A7.2)."""
    facing = shop.allowances["facing"]
    reach = [
        shop.stations[name].limits.get("widest", UNKNOWN)
        for name in ("jointer", "planer")
        if name in shop.stations
    ]
    if not reach or width <= max(reach):
        return facing
    return max(facing, shop.allowances["wide_facing"])
