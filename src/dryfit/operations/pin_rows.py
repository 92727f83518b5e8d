"""Rows of holes for shelf pins in words: where a row stands, where it begins, how it is bored."""

from __future__ import annotations

from dryfit.kinds.roles import PIN_HOLE
from dryfit.operations.cut import Site
from dryfit.plan.operation import Detail

_TEMPLATE = (
    "Bore all rows through one template, with the same end of it at R of every part: a shelf on "
    "rows that were measured from unlike ends rocks"
)


def row_details(site: Site) -> tuple[Detail, ...]:
    """Return where the row of a hole stands on its part, and how all rows are made alike (B19)."""
    own = site.feature
    hand = site.copies[0].hand
    row = sorted(
        (each.along[0] + each.along[1]) / 2
        for each in site.part.features
        if (each.role, each.surface, each.across) == (PIN_HOLE, own.surface, own.across)
        and hand in each.hands
    )
    across = (own.across[0] + own.across[1]) / 2
    of_hand = f", hand {hand}" if len(site.part.hands()) > 1 else ""
    line: Detail = (
        f"Row in face {own.surface}{of_hand}: ",
        across,
        " from E, ",
        f"{len(row)} holes",
    )
    if len(row) > 1:
        line = (*line, ", the first ", row[0], " from R, one each ", row[1] - row[0])
    return (
        (*line, ", ", own.depth, " deep"),
        (_TEMPLATE,),
    )
