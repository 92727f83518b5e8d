"""Test pieces and spares that nobody asked for: they come out of what falls, or not at all."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from dryfit.cutting import Answer, added
from dryfit.shop.shop import Shop
from dryfit.stock.blanks import Blank
from dryfit.stock.job import Split, part_of
from dryfit.stock.outcome import Outcome
from dryfit.stock.rough_sizes import rough_sizes


def with_what_finds_room(outcome: Outcome, wanted: Sequence[Blank], shop: Shop) -> Outcome:
    """Return the outcome with those of the wanted blanks that leftovers of boards on hand hold.

    What is laid out stays where it is.
    """
    pairs = list(outcome.pairs)
    for blank in wanted:
        for place, (split, answer) in enumerate(pairs):
            fuller = _with(split, answer, blank, shop)
            if fuller is not None:
                pairs[place] = fuller
                break
    return Outcome(
        tuple(split for split, _ in pairs), tuple(answer for _, answer in pairs), outcome.none
    )


def _with(split: Split, answer: Answer, blank: Blank, shop: Shop) -> tuple[Split, Answer] | None:
    sizes = {
        name: rough
        for name, alike in split.boards
        if alike[0].on_hand and (rough := rough_sizes(blank, alike[0].line, shop)) is not None
    }
    if not sizes or blank.count != 1 or answer.missing:
        return None
    part = part_of(blank, sizes, frozenset(), max)
    found = added(split.job, answer.layouts, part)
    if found is None:
        return None
    job, layouts = found
    fuller = replace(split, blanks=(*split.blanks, blank), job=job, least=None)
    return fuller, replace(answer, layouts=layouts)
