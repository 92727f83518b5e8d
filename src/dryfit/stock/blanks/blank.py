"""Blanks: the rough pieces that parts are made from, with simple allowances (TRADE A5, A6.1)."""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction
from typing import Literal

from dryfit.joinery.resawing import LEAVES, leaf_for
from dryfit.placing.model import Model, Part
from dryfit.placing.strips import milled_parts
from dryfit.quantities.units import INCH
from dryfit.shop.shop import Shop
from dryfit.stock.boards import Lack, lack, lines_for, sizes, to_be_resawn, wanted
from dryfit.stock.saws import WANEY_ROOM, crosscut_kerf

ROUGH_STEP_MM = Fraction(5)
ROUGH_STEP_IN = INCH / 4

What = Literal["part", "test piece", "spare"]
Rule = Literal["", "same board", "in sequence"]


@dataclass(frozen=True, slots=True)
class Blank:
    """`count` equal rough pieces of which each makes `each` pieces of a part; lengths in mm.

    `subject` names the pieces (``post``, ``top stave``), `pieces` each of them.  `length`, `width`
    and `thickness` are rough, `to_width` and `to_thickness` what the machines bring it to, and
    `sawn_width` is what the table saw leaves when a second edge is jointed after it.

    How large one is when it is sawn hangs on the board: `rough_sizes.rough_sizes` says it.  `first`
    is the number of the first of them, where others of the part come before.  With more than 1 of
    `leaves` each is a strip, trued to `strip` and resawn into that many of its pieces, of which
    `along` lie one after another.  `what` is a test piece or a spare where it becomes no part
    (`pieces` is empty then, and `count` says how many); with `if_room` it is laid out only where it
    costs no board.  All of one `group` come out of one board by `rule`, named there in their order.
    With a `state` it comes out of boards of that state alone, see `states.STATES`.
    What is fed through the planer `between_strips` is not bitten by it, and so much shorter.
    `step` is what rough lengths are whole steps of.
    """

    subject: str
    part: Part
    pieces: tuple[str, ...]
    each: int
    count: int
    length: Fraction
    width: Fraction
    thickness: Fraction
    to_thickness: Fraction
    to_width: Fraction
    sawn_width: Fraction
    leaves: int = 1
    strip: Fraction = Fraction(0)
    first: int = 1
    what: What = "part"
    if_room: bool = False
    group: str = ""
    rule: Rule = ""
    between_strips: bool = False
    state: str = ""
    step: Fraction = ROUGH_STEP_MM

    @property
    def sheet(self) -> bool:
        """Return whether it comes out of sheet goods."""
        return self.part.stock == "sheet"

    @property
    def along(self) -> int:
        """Return how many pieces lie one after another in one blank."""
        return -(-self.each // self.leaves)

    @property
    def trued_thickness(self) -> Fraction:
        """Return how thick it has to be when both its faces are true, in mm."""
        return self.strip if self.leaves > 1 else self.to_thickness

    @property
    def names(self) -> tuple[str, ...]:
        """Return the name of each rough piece, ``post blank 1``; no two kinds share one."""
        numbers = range(self.first, self.first + self.count)
        if self.what == "part":
            return tuple(f"{self.subject} blank {number}" for number in numbers)
        return tuple(f"{self.subject} {self.what} {number}" for number in numbers)

    def pieces_of(self, index: int) -> tuple[str, ...]:
        """Return what the rough piece of that index, from 0, becomes; none for test and spare."""
        return self.pieces[index * self.each : (index + 1) * self.each]

    @property
    def staves(self) -> bool:
        """Return whether the pieces are boards of a glued panel."""
        return self.part.staves is not None


def blank_of(part: Part, model: Model, shop: Shop) -> Blank:
    """Return the blanks of a solid part: ganged while several fit the longest gang of the shop."""
    room = shop.allowances
    staves = part.staves
    jointed = part.width if staves is None else staves.width
    to_thickness = part.thickness + (room["panel_flattening"] if staves else 0)
    each = 1 if staves or part.waney else _ganged(part, shop)
    pieces = _pieces(part)
    return Blank(
        subject=part.name if staves is None else f"{part.name} stave",
        part=part,
        pieces=pieces,
        each=each,
        count=-(-len(pieces) // each),
        length=rough_length(part, each, model.display.unit, shop),
        width=jointed + (WANEY_ROOM if part.waney else room[_rip_allowance(shop)]),
        thickness=_rough_thickness(part, to_thickness, model, shop),
        to_thickness=to_thickness,
        to_width=jointed,
        sawn_width=jointed + (room["edge_joint"] if staves else 0),
        step=step_of(model.display.unit),
    )


def gangs_from_boards(model: Model, shop: Shop) -> Shop:
    """Return the shop with no gang longer than the boards on hand that its parts come out of."""
    if not model.stock:
        return shop
    longest = [shop.allowances["longest_gang"]]
    for part in milled_parts(model.parts, shop.allowances):
        if part.stock == "sheet" or part.made or len(part.copies) < 2:
            continue
        piece = wanted(part, shop)
        fitting = [
            each for each in lines_for(part, model) if lack(each, piece, shop) is Lack.NOTHING
        ]
        if fitting:
            longest.append(max(sizes(line)[0] for line in fitting))
    step = step_of(model.display.unit)
    most = min(longest) // step * step
    return replace(shop, allowances={**shop.allowances, "longest_gang": most})


def step_of(unit: str) -> Fraction:
    """Return what rough lengths are whole steps of, in mm, for the maker's unit."""
    return ROUGH_STEP_IN if unit == "in" else ROUGH_STEP_MM


def _pieces(part: Part) -> tuple[str, ...]:
    if part.staves is None:
        return tuple(copy.name for copy in part.copies)
    return tuple(
        f"{copy.name} stave {number}"
        for copy in part.copies
        for number in range(1, part.staves.count + 1)
    )


def _ganged(part: Part, shop: Shop) -> int:
    each = 1
    while (
        each < len(part.copies)
        and gang_length(part, each + 1, shop) <= (shop.allowances["longest_gang"])
    ):
        each += 1
    # Equal gangs: four parts of which three would fit are cut from two blanks of two.
    blanks = -(-len(part.copies) // each)
    return -(-len(part.copies) // blanks)


def gang_length(part: Part, each: int, shop: Shop) -> Fraction:
    """Return the length in mm that a blank of `each` copies needs, its ends included."""
    return in_a_row(part, each, shop) + _ends(part, shop)


def in_a_row(part: Part, count: int, shop: Shop) -> Fraction:
    """Return how long so many copies are end to end, with the saw cuts between them; mm."""
    return count * part.cut_length + (count - 1) * crosscut_kerf(shop)


def as_long_as_fed(length: Fraction, step: Fraction, shop: Shop) -> Fraction:
    """Return a rough length in whole steps, no shorter than the machines take."""
    steps = max(length, shortest_fed(shop)) / step
    return step * -(-steps.numerator // steps.denominator)


def _ends(part: Part, shop: Shop) -> Fraction:
    """Return what both ends together lose: snipe of the planer, or the least that is trimmed."""
    least = shop.allowances["panel_length" if part.staves else "rough_length"]
    snipe = 2 * shop.allowances["snipe"] if "planer" in shop.stations else Fraction(0)
    return max(snipe, least)


def shortest_fed(shop: Shop) -> Fraction:
    """Return the shortest piece that jointer, planer and rip fence all take, 0 without them.

    A blank is left that long until it is cut to length (TRADE A6.1, common practice).
    """
    wanted = (
        ("jointer", "shortest"),
        ("jointer", "shortest_edge"),
        ("planer", "shortest"),
        ("table saw", "shortest_rip"),
    )
    return max(
        (
            shop.stations[name].limits.get(limit, Fraction(0))
            for name, limit in wanted
            if name in shop.stations
        ),
        default=Fraction(0),
    )


def rough_length(part: Part, each: int, unit: str, shop: Shop) -> Fraction:
    """Return the length in mm of a blank of `each` copies, in whole steps of the maker's unit."""
    return as_long_as_fed(gang_length(part, each, shop), step_of(unit), shop)


def made_of(blank: Blank, part: Part, each: int, shop: Shop) -> Blank:
    """Return the blank for so many copies of a part, as long as that asks for."""
    length = as_long_as_fed(gang_length(part, each, shop), blank.step, shop)
    return replace(blank, part=part, each=each, length=length)


def fed_length(part: Part, unit: str, shop: Shop) -> Fraction:
    """Return the length in mm of what is fed until the part is cut to length."""
    if part.stock == "sheet":
        return part.length
    single = part.staves is not None or part.waney
    return rough_length(part, 1 if single else _ganged(part, shop), unit, shop)


def _rip_allowance(shop: Shop) -> str:
    return "rough_width_band_saw" if "band saw" in shop.stations else "rough_width"


def _rough_thickness(part: Part, to_thickness: Fraction, model: Model, shop: Shop) -> Fraction:
    """Return the thinnest rough board on hand that the piece comes out of, or the usual allowance.

    Where it comes out of none, it is the thinnest that is thick enough.  Nothing is chosen that is
    thinner than the jointer takes.
    """
    piece = replace(wanted(part, shop), turned=False)
    lacks = [(lack(line, piece, shop), line) for line in lines_for(part, model) if line.rough]
    best = Lack.NOTHING if any(each is Lack.NOTHING for each, _ in lacks) else Lack.WARPED
    enough = [line.sizes[2] for each, line in lacks if each >= best]
    if part.bookmatched or to_be_resawn(part):
        # Leaves are as thick as they are resawn, with one sawn face to plane (A8.1).
        return leaf_for(to_thickness, LEAVES, shop)
    jointer = shop.stations.get("jointer")
    thinnest = jointer.limits.get("thinnest", Fraction(0)) if jointer is not None else Fraction(0)
    usual = max(to_thickness + shop.allowances["rough_thickness"], thinnest)
    return min((thickness for thickness in enough if thickness is not None), default=usual)
