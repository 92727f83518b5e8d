"""Staves of a panel that are not of one width: each is ripped as wide as its board gives (A9.1)."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from dryfit.operations.batch import Batch
from dryfit.operations.boards.blank_deeds import pieces_of
from dryfit.operations.words import listed
from dryfit.plan.operation import Operation
from dryfit.shop.shop import Shop
from dryfit.stock.blanks.blank import Blank
from dryfit.stock.blanks.panels import by_width


def each_width(
    batch: Batch, blank: Blank, width_of: Callable[[Blank, Shop], Operation], shop: Shop
) -> Batch:
    """Return the milling with one rip for each width of the staves, the widest first.

    Every rip waits for what the one waited for, and what waited for it waits for all of them.
    """
    kinds = tuple(by_width(blank))
    if len(kinds) == 1:
        return batch
    name = f"{blank.subject} / width"
    rows = tuple(
        _named(width_of(kind, shop), number, kind) for number, kind in enumerate(kinds, start=1)
    )
    ids = {name: tuple(row.id for row in rows)}
    operations = tuple(
        row for each in batch.operations for row in (rows if each.id == name else (each,))
    )
    rules = tuple(
        replace(rule, before=before, after=after)
        for rule in batch.rules
        for before in ids.get(rule.before, (rule.before,))
        for after in ids.get(rule.after, (rule.after,))
    )
    return replace(batch, operations=operations, rules=rules)


def _named(row: Operation, number: int, kind: Blank) -> Operation:
    sentence = row.sentence.replace(pieces_of(kind), listed(kind.pieces))
    return replace(row, id=f"{row.id} / {number}", sentence=sentence)
