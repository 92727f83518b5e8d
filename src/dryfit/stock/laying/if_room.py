"""Test pieces and spares that nobody asked for: they come out of what falls, or not at all."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from dryfit.cutting import Answer, added
from dryfit.shop.shop import Shop
from dryfit.stock.blanks.blank import Blank
from dryfit.stock.laid_out import StockBoard
from dryfit.stock.laying.job import Sizes, Split, by_line, part_of, sizes_on
from dryfit.stock.laying.outcome import Outcome


def with_what_finds_room(
    outcome: Outcome, wanted: Sequence[Blank], boards: Sequence[StockBoard], shop: Shop
) -> Outcome:
    """Return the outcome with those of the wanted blanks that leftovers of boards on hand hold.

    What is laid out stays where it is.  None comes out of a board that is much too thick for it.
    """
    lines = by_line(boards)
    pairs = list(outcome.pairs)
    for blank in wanted:
        sizes = sizes_on(blank, lines, shop, sparing=True)
        for place, (split, answer) in enumerate(pairs):
            fuller = _with(split, answer, blank, sizes)
            if fuller is not None:
                pairs[place] = fuller
                break
    return Outcome(
        tuple(split for split, _ in pairs), tuple(answer for _, answer in pairs), outcome.none
    )


def _with(split: Split, answer: Answer, blank: Blank, sizes: Sizes) -> tuple[Split, Answer] | None:
    names = {name for name, _ in split.boards}
    sizes = {name: rough for name, rough in sizes.items() if name in names}
    if not sizes or blank.count != 1 or answer.missing:
        return None
    part = part_of(blank, sizes, frozenset(), max)
    found = added(split.job, answer.layouts, part)
    if found is None:
        return None
    job, layouts = found
    fuller = replace(split, blanks=(*split.blanks, blank), job=job, least=None)
    return fuller, replace(answer, layouts=layouts)
