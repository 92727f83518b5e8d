"""What rough pieces a whole piece takes: complete ways to make all its parts (TRADE A5, A9)."""

from __future__ import annotations

from dataclasses import dataclass, replace

from dryfit.joinery.resawing import LEAVES
from dryfit.placing.model import Model, Part
from dryfit.shop.shop import Shop
from dryfit.stock.as_sawn import as_milled
from dryfit.stock.blanks import Blank, blank_of, gangs_from_boards, step_of
from dryfit.stock.leaves import resawn


@dataclass(frozen=True, slots=True)
class Needs:
    """One complete way to make all parts: the blanks that have to be found in the wood.

    `model` is the piece made this way: it differs from the one that was placed only where panels
    are glued from other staves.  `why` says in what it differs from the usual way, which says
    nothing.  Blanks stand in the order of the notes; those `if_room` come last.  A part has several
    where its last blank makes fewer pieces than the others; each has `each` times `count` pieces.
    """

    model: Model
    blanks: tuple[Blank, ...]
    why: str = ""


def needs_of(model: Model, shop: Shop) -> tuple[Needs, ...]:
    """Return the ways to make all parts, at most about twelve, the usual one first.

    The others are worth a trial where the wood does not hold the first, or where one of them might
    save a board that would be bought.  What the tool makes itself, of scrap, takes no blank.
    """
    return (_usual(model, shop),)


def _usual(model: Model, shop: Shop) -> Needs:
    shop = gangs_from_boards(model, shop)
    parts = (as_milled(part) for part in model.parts if not part.made)
    return Needs(model, tuple(each for part in parts for each in _blanks(part, model, shop)))


def _blanks(part: Part, model: Model, shop: Shop) -> tuple[Blank, ...]:
    if part.stock == "sheet":
        return (_of_sheet(part, model, shop),)
    blank = blank_of(part, model, shop)
    return _evenly(resawn(blank, LEAVES, shop) if part.bookmatched else blank)


def _evenly(blank: Blank) -> tuple[Blank, ...]:
    """Return the blanks with the last, where it makes fewer pieces, as a kind of its own."""
    full, rest = divmod(len(blank.pieces), blank.each)
    if not rest:
        return (replace(blank, count=full),)
    first = replace(blank, count=full, pieces=blank.pieces[: full * blank.each])
    last = replace(
        blank, count=1, each=rest, first=full + 1, pieces=blank.pieces[full * blank.each :]
    )
    return (first, last) if full else (replace(last, first=1),)


def _of_sheet(part: Part, model: Model, shop: Shop) -> Blank:
    """Return the pieces of a sheet as they are broken down, each edge still to trim (A10)."""
    trimmed = 2 * shop.allowances["sheet_edge"]
    names = tuple(copy.name for copy in part.copies)
    return Blank(
        subject=part.name,
        part=part,
        pieces=names,
        each=1,
        count=len(names),
        length=part.cut_length + trimmed,
        width=part.width + trimmed,
        thickness=part.thickness,
        to_thickness=part.thickness,
        to_width=part.width,
        sawn_width=part.width,
        step=step_of(model.display.unit),
    )
