"""The piece with its panels glued from other staves, and staves of several widths as blanks."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from dryfit.placing.model import Model, Part
from dryfit.shop.shop import Shop
from dryfit.stock.blanks.as_sawn import as_milled, trimmed
from dryfit.stock.blanks.blank import Blank, blank_of
from dryfit.stock.blanks.staves import as_boards_give, more_of


def with_more_staves(model: Model, more: int, shop: Shop) -> Model:
    """Return the piece with so many staves more in each panel whose number the notes leave open."""
    parts = tuple(
        part if other is None else replace(part, staves=other)
        for part in model.parts
        for other in [more_of(part, more, shop)]
    )
    return model if parts == model.parts else replace(model, parts=parts)


def with_free_widths(
    model: Model, shop: Shop, *, only_asked: bool = False, more: int | None = None
) -> Model:
    """Return the piece with staves as wide as the boards give; `only_asked` where the notes say so.

    The boards are those on hand, and what the yard sells.  There are as many staves as cost the
    least wood, or so many `more` than equal ones would be.
    """
    parts = tuple(
        _as_boards_give(part, model, shop, more) if part.free_widths or not only_asked else part
        for part in model.parts
    )
    return model if parts == model.parts else replace(model, parts=parts)


def _as_boards_give(part: Part, model: Model, shop: Shop, more: int | None) -> Part:
    if part.staves is None or part.stock == "sheet":
        return part
    blank = blank_of(as_milled(part), model, shop)
    lines = (*model.stock, *model.yard)
    staves = as_boards_give(blank, lines, model.display.unit, shop, more)
    return part if staves is None else replace(part, staves=staves.wider(-trimmed(part, "width")))


def by_width(blank: Blank) -> Iterator[Blank]:
    """Yield the blanks of a panel for each width of its staves, the widest first; others whole."""
    staves = blank.part.staves
    if staves is None or not staves.widths:
        yield blank
        return
    first = 1
    for width in sorted(set(staves.widths), reverse=True):
        own = tuple(
            name
            for index, name in enumerate(blank.pieces)
            if staves.widths[index % staves.count] == width
        )
        less = blank.to_width - width
        yield replace(
            blank,
            pieces=own,
            count=len(own),
            first=first,
            width=blank.width - less,
            to_width=width,
            sawn_width=blank.sawn_width - less,
        )
        first += len(own)
