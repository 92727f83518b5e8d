"""TRADE H-c: H44 what a warped board leaves, H45 a blank that no board is long enough for."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from dryfit.checks.finding import finding, listed
from dryfit.diagnostics import Diagnostic, Note, Severity
from dryfit.piece.declared import Have
from dryfit.placing.model import Model, Part
from dryfit.quantities import Display
from dryfit.quantities.units import INCH
from dryfit.shop.shop import Shop
from dryfit.stock.blanks.blank import Blank, blank_of, gang_length, gangs_from_boards, shortest_fed
from dryfit.stock.boards import Lack, Wanted, flat, rip_room, trim
from dryfit.stock.boards import sizes as sizes_of

MOST_STAVES = 40
"""Nobody is told to glue a panel from more; ours."""

_NEARLY = Fraction(3, 4)
"""A part is not offered to be made thinner than so much of what it is meant to be; ours."""


@dataclass(frozen=True, slots=True)
class Missing:
    """A piece that no board holds, the line that comes nearest, and what that lacks."""

    piece: Wanted
    line: Have
    lack: Lack

    @property
    def part(self) -> Part:
        """The part that the piece is, or is a stave of."""
        return self.piece.part


def flattened(line: Have, piece: Wanted, shop: Shop) -> Fraction:
    """Return how thick a piece of its rough size can be planed flat out of a board of the line."""
    return flat(
        line, piece.length + trim(line, piece, shop), piece.width + rip_room(line, shop), shop
    )


def too_warped(model: Model, group: Sequence[Missing], shop: Shop) -> Iterator[Diagnostic]:
    """H44: what cup, bow and twist take of a piece of its rough size (A1.5), once for a board."""
    for line in dict.fromkeys(each.line for each in group):
        found = [each for each in group if each.line == line]
        yield _warped(model, line, found, shop)


def _warped(model: Model, line: Have, found: Sequence[Missing], shop: Shop) -> Diagnostic:
    show, spare = model.display.with_unit, shop.allowances["hand_margin"]
    worst = max(found, key=lambda each: each.piece.thickness - flattened(line, each.piece, shop))
    piece, part = worst.piece, worst.part
    left, needed = flattened(line, piece, shop), piece.thickness + spare
    marks = [
        f"{word} {show(size)}"
        for word, size in (("cup", line.cup), ("bow", line.bow), ("twist", line.twist))
        if size
    ]
    rough = piece.width + rip_room(line, shop)
    flat_so = (
        f"{show(left, fitted=True)} thick when it is planed flat" if left > 0 else "planed away"
    )
    others = [each.part for each in found if each is not worst]
    return finding(
        "H44",
        "board-too-warped",
        Severity.WARNING,
        f"{part.name}: a piece {show(rough)} wide of this board, with {listed(marks)}, is {flat_so}"
        f"{'' if left > 0 else ' before it is flat'}; {thick(worst, show)} takes "
        f"{show(needed, fitted=True)}, so that it comes clean all over",
        line.span,
        figures={"left": left, "needed": needed, "rough width": rough},
        notes=(
            *(Note("the part", span) for span in part.spans[:1]),
            *(
                Note(f"so it is with the {other.name}", other.spans[0] if other.spans else None)
                for other in others
            ),
        ),
        remedy=_against_warp(worst, left - (needed - part.thickness), model.display, shop),
    )


def _against_warp(each: Missing, thickest: Fraction, display: Display, shop: Shop) -> str:
    count = _flat_enough(each, shop)
    step = display.step * (INCH if display.unit == "in" else 1)
    most = step * (thickest // step)
    if count is not None:
        return f"write `glued from {count}` in its line, or take a thicker or a flatter board"
    nearly = most >= each.part.thickness * _NEARLY
    thinner = f"make it {display.with_unit(most)} thick, or " if nearly else ""
    return f"{thinner}take a thicker or a flatter board"


def _flat_enough(each: Missing, shop: Shop) -> int | None:
    """Return from how many staves the part is glued so that each can be planed flat, or None."""
    part, line = each.part, each.line
    needed = part.thickness + sum(
        shop.allowances[name] for name in ("panel_flattening", "hand_margin")
    )
    first = 2 if part.staves is None else part.staves.count + 1
    for count in range(first, MOST_STAVES + 1):
        wide = (part.width + shop.allowances["panel_width"]) / count
        if wide < 2 * part.thickness:
            return None
        long = each.piece.length + trim(line, each.piece, shop)
        if flat(line, long, wide + rip_room(line, shop), shop) >= needed:
            return count
    return None


@dataclass(frozen=True, slots=True)
class Cramped:
    """A blank that is planned longer than the longest board that would hold its part, in mm."""

    blank: Blank
    longest: Fraction


def cramped(model: Model, part: Part, fitting: Sequence[Have], shop: Shop) -> Cramped | None:
    """Return the part's blank where none of the boards that hold the part is long for that.

    One that a board holds when it is fed between strips is planned so, and is no worry.
    """
    if part.stock == "sheet" or not fitting:
        return None
    longest = max(sizes_of(line)[0] for line in fitting)
    blank = blank_of(part, model, gangs_from_boards(model, shop))
    if blank.length <= longest or _cut_short_length(blank, shop) <= longest:
        return None
    return Cramped(blank, longest)


def _cut_short_length(blank: Blank, shop: Shop) -> Fraction:
    """Return the length of board that a blank takes that is cut short, with the board's ends."""
    from dryfit.stock.blanks.between_strips import cut_short  # seldom wanted, and loads the layouts

    return cut_short(blank, shop).length + 2 * shop.allowances["end_trim"]


def longer_than_boards(model: Model, found: Sequence[Cramped], shop: Shop) -> Diagnostic:
    """H45: the plan's blank, with what the planer bites at its ends, comes out of a board."""
    worst = max(found, key=lambda each: each.blank.length - each.longest)
    part, each, longest = worst.blank.part, worst.blank.each, worst.longest
    say, bitten = model.display.with_unit, shop.allowances["snipe"]
    why = (
        f"the planer would bite deeper into what is kept, for {say(bitten)} at both ends"
        if gang_length(part, each, shop) > longest
        else f"what is planed and ripped by machine has to be {say(shortest_fed(shop))} long"
    )
    return finding(
        "H45",
        "blank-longer-than-boards",
        Severity.WARNING,
        f"{part.name}: its blank is planned {say(worst.blank.length)} long, and the longest board "
        f"that fits is {say(longest)}: {why}",
        part.spans[0] if part.spans else None,
        figures={"planned": worst.blank.length, "have": longest},
        notes=tuple(
            Note(f"so it is with the {other.name}", other.spans[0] if other.spans else None)
            for other in (one.blank.part for one in found)
            if other is not part
        ),
        remedy="buy a longer board, or feed this one between two strips of its thickness that run "
        "on past both ends",
    )


def thick(each: Missing, say: Callable[[Fraction], str]) -> str:
    """Return how thick the piece is, with what flattening a panel of them takes."""
    more = each.piece.thickness - each.part.thickness
    own = f"{say(each.part.thickness)} thick"
    return f"{own} and {say(more)} for flattening the panel" if more else own
