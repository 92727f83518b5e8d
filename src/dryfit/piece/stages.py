"""Glue-up lines and order wishes with their names resolved."""

from __future__ import annotations

from dryfit.notes.tree import Act, GlueLine, OrderLine
from dryfit.piece.declared import Stage, StageItem, WishAct, WishWords
from dryfit.piece.names import Names
from dryfit.piece.sums import Sums


def stage_of(line: GlueLine, sums: Sums, names: Names) -> Stage:
    """Return a glue-up; items that name nothing are left out with a finding."""
    items = tuple(
        StageItem(item.count, item.reference.name, item.reference.places, item.span)
        for item in line.items
        if names.is_part_or_stage(item.reference)
    )
    cure = sums.minutes(line.cure) if line.cure is not None else None
    return Stage(line.name, line.count, items, cure, line.name_span, line.span)


def wish_of(line: OrderLine, names: Names) -> list[WishWords]:
    """Return the wishes of a line, one for each pair that it orders."""
    firsts = [act for each in line.first if (act := _act(each, names))]
    thens = [act for each in line.then if (act := _act(each, names))]
    return [WishWords(first, then, line.span) for first in firsts for then in thens]


def _act(act: Act, names: Names) -> WishAct | None:
    if act.reference is None:
        return WishAct(act.verb, None, act.span)
    if not names.is_part_or_stage(act.reference):
        return None
    return WishAct(act.verb, act.reference.name, act.span)
