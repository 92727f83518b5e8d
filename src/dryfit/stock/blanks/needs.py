"""What rough pieces a whole piece takes: complete ways to make all its parts (TRADE A5, A9)."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import Literal

from dryfit.joinery.resawing import LEAVES
from dryfit.placing.model import Model, Part
from dryfit.placing.strips import milled_parts
from dryfit.shop.shop import Shop
from dryfit.stock.blanks.as_sawn import as_milled
from dryfit.stock.blanks.between_strips import (
    Short,
    cut_short,
    has_snipe,
    wants_short,
    without_snipe,
)
from dryfit.stock.blanks.blank import (
    Blank,
    blank_of,
    gangs_from_boards,
    made_of,
    step_of,
)
from dryfit.stock.blanks.gangs import Gangs, ganged
from dryfit.stock.blanks.leaves import resawn, resawn_where_it_can_be
from dryfit.stock.blanks.panels import by_width, with_free_widths, with_more_staves
from dryfit.stock.blanks.spares import asked_for, if_there_is_room, with_spoiled
from dryfit.stock.blanks.states import in_one_state
from dryfit.stock.blanks.staves import MORE
from dryfit.stock.boards import to_be_resawn

MOST = 20
"""So many ways are offered, and no more: each is laid out by itself (ours)."""


@dataclass(frozen=True, slots=True)
class Needs:
    """One complete way to make all parts: the blanks that have to be found in the wood.

    `model` is the piece made this way: it differs from the one that was placed only where panels
    are glued from other staves.  `why` says in what it differs from the usual way, which says
    nothing.  Blanks stand in the order of the notes; those `if_room` come last.  A part has several
    where its last blank makes fewer pieces than the others; each has `each` times `count` pieces.
    The blanks of one part may be taken from one way, those of another from another.
    """

    model: Model
    blanks: tuple[Blank, ...]
    why: str = ""


def needs_of(model: Model, shop: Shop) -> tuple[Needs, ...]:
    """Return the ways to make all parts, at most about twenty, the usual one first.

    The others are worth a trial where the wood does not hold the first, or where one of them might
    save a board that would be bought.  What the tool makes itself, of scrap, takes no blank.
    """
    found: dict[tuple[Blank, ...], Needs] = {}
    for needs in _ways(model, shop):
        found.setdefault(needs.blanks, needs)
    return tuple(found.values())[:MOST]


def usual_way(model: Model, shop: Shop) -> Needs:
    """Return the first of the ways to make all parts, without working out the others."""
    return next(_ways(model, shop))


TRUE = "planed boards made true as rough ones are"
SHORT = "blanks cut short, and fed through the planer between strips that it bites instead"
WIDE_SHORT = f"wide {SHORT}"
FREE = "each stave as wide as its board gives"
SINGLY = "every part in a blank of its own, where the machines take one so short"
GIVEN_UP = ("one board, but not in sequence", "not out of one board")
"""What the notes want of boards, and what is given up where it cannot be so."""
STAVES = (None, 0, 1)
"""Staves of free widths are as many as cost the least wood, or so many more than equal ones."""
_GANGS: tuple[tuple[Gangs, str], ...] = (
    ("longer", "more short parts in one blank"),
    ("singly", SINGLY),
    ("fewer", "fewer short parts in one blank"),
)


def _ways(model: Model, shop: Shop) -> Iterator[Needs]:
    asked = with_free_widths(model, shop, only_asked=True)
    yield _made(asked, shop)
    for gangs, why in _GANGS:
        yield _made(asked, shop, gangs, why=why)
    if any(part.stock == "sheet" for part in model.parts):
        yield _made(asked, shop, trimmed=False, why="sheets sawn to size, factory edges kept")
    for more in range(1, MORE + 1):
        why = "one stave more in each panel" if more == 1 else f"{more} staves more in each panel"
        yield _made(with_more_staves(model, more, shop), shop, why=why)
    yield _made(asked, shop, work="made true", why=TRUE)
    yield _made(asked, shop, work="resawn", why="thin parts resawn from thick boards")
    for number in STAVES:
        yield _made(with_free_widths(model, shop, more=number), shop, why=FREE)
    if has_snipe(shop):
        yield _made(asked, shop, short="wide", why=WIDE_SHORT)
        yield _made(asked, shop, short="all", why=SHORT)
        true_short = f"{TRUE}; {SHORT}"
        yield _made(asked, shop, short="all", work="made true", why=true_short)
        yield _made(asked, shop, "singly", short="all", why=f"{SHORT}; {SINGLY}")
        bare = without_snipe(shop)
        for number in STAVES:
            free = with_free_widths(model, bare, more=number)
            yield _made(free, shop, short="all", why=f"{FREE}; {SHORT}")
    yield _made(asked, shop, apart="out of sequence", why=GIVEN_UP[0])
    yield _made(asked, shop, apart="out of several boards", why=GIVEN_UP[1])


def _made(
    model: Model,
    shop: Shop,
    gangs: Gangs = "usual",
    *,
    trimmed: bool = True,
    short: Short = "",
    work: Work = "",
    apart: Apart = "",
    why: str = "",
) -> Needs:
    usual = gangs_from_boards(model, shop)
    lines = (*model.stock, *model.yard)
    placed = {part.name for part in model.parts}
    blanks: list[Blank] = []
    for part in milled_parts(tuple(with_spoiled(model)), shop.allowances):
        if part.made:
            continue
        milled = as_milled(part)
        if part.stock == "sheet":
            blank = _of_sheet(milled, model, shop.allowances["sheet_edge"] if trimmed else NONE)
        else:
            blank = ganged(blank_of(milled, model, usual), gangs, model, shop)
        if part.bookmatched:
            blank = resawn(blank, LEAVES, shop)
        elif part.name not in placed:
            # A strip for a lip is thin, and nothing to plane a thick board away for.
            blank = resawn_where_it_can_be(blank, lines, shop, singly=True)
        elif to_be_resawn(part) or work == "resawn":
            blank = resawn_where_it_can_be(blank, lines, shop)
        blank = in_one_state(blank, lines, shop, last=work == "made true")
        if wants_short(blank, short, lines, shop):
            blank = cut_short(blank, shop)
        for own in by_width(_grouped(blank, apart)):
            blanks += _evenly(own, shop)
        blanks += asked_for(blank, shop)
    return Needs(model, (*blanks, *if_there_is_room(blanks, shop)), why)


NONE = Fraction(0)


Work = Literal["", "made true", "resawn"]
"""What more is done than has to be: planed boards made true, thin parts out of thick boards."""


Apart = Literal["", "out of sequence", "out of several boards"]
"""How far what the notes want out of one board is allowed to part, where it cannot be so."""


def _grouped(blank: Blank, apart: Apart) -> Blank:
    """Return the blanks as a group where the notes want them out of one board."""
    part = blank.part
    if not part.one_board or len(blank.pieces) <= blank.each or apart == "out of several boards":
        return blank
    in_sequence = part.in_sequence and not apart
    return replace(blank, group=part.name, rule="in sequence" if in_sequence else "same board")


def _evenly(blank: Blank, shop: Shop) -> tuple[Blank, ...]:
    """Return the blanks with the last, where it makes fewer pieces, as a kind of its own."""
    full, rest = divmod(len(blank.pieces), blank.each)
    if not rest:
        return (replace(blank, count=full),)
    first = replace(blank, count=full, pieces=blank.pieces[: full * blank.each])
    last = replace(
        blank if blank.leaves > 1 else made_of(blank, blank.part, rest, shop),
        count=1,
        each=rest,
        first=blank.first + full,
        pieces=blank.pieces[full * blank.each :],
    )
    return (first, last) if full else (replace(last, first=blank.first),)


def _of_sheet(part: Part, model: Model, edge: Fraction) -> Blank:
    """Return the pieces of a sheet as they are broken down, each edge still to trim (A10).

    With room for that they are whole millimetres, or sixteenths, as one marks them on a sheet.
    """
    names = tuple(copy.name for copy in part.copies)
    long, wide = part.cut_length + 2 * edge, part.width + 2 * edge
    if edge:
        long, wide = -model.display.down(-long), -model.display.down(-wide)
    return Blank(
        subject=part.name,
        part=part,
        pieces=names,
        each=1,
        count=len(names),
        length=long,
        width=wide,
        thickness=part.thickness,
        to_thickness=part.thickness,
        to_width=part.width,
        sawn_width=part.width,
        step=step_of(model.display.unit),
    )
