"""Blanks that go through the planer between strips, which it bites at their ends instead (A6.1)."""

from __future__ import annotations

from dataclasses import replace

from dryfit.operations.batch import Batch
from dryfit.operations.boards.out_of_boards import OutOfBoards
from dryfit.operations.machine_limits import PLANER
from dryfit.operations.minutes import tenths, worked
from dryfit.plan.operation import Detail, Operation
from dryfit.shop.shop import Shop


def fed_between(batch: Batch, out: OutOfBoards | None, shop: Shop) -> Batch:
    """Return the milling with strips beside what is planed, where a blank is cut short for it."""
    if out is None or not out.between_strips:
        return batch
    rows = tuple(
        _with_strips(row, out, shop) if row.station == PLANER else row for row in batch.operations
    )
    return replace(batch, operations=rows)


def _with_strips(row: Operation, out: OutOfBoards, shop: Shop) -> Operation:
    bitten = shop.allowances["snipe"]
    how: Detail = (
        (
            "The blanks are cut short. Stick a strip of scrap, as thick as the blank, to each of "
            "its edges, so that it runs "
        ),
        bitten,
        " past both ends: the planer bites the strips, and nothing of the blank",
    )
    more = tenths(worked(shop, "strips for the planer", each=out.blank.count))
    return replace(row, tenths=row.tenths + more, details=(*row.details, how), between_strips=True)
