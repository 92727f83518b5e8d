"""Rows of holes for shelf pins in words: where a row stands, where it begins, how it is bored."""

from __future__ import annotations

from fractions import Fraction

from dryfit.joinery.feature import Feature
from dryfit.kinds.roles import PIN_HOLE
from dryfit.operations.cut import Site
from dryfit.plan.operation import Detail

_TEMPLATE = (
    "Bore all rows through one template, with the same end of it at R of every part: a shelf on "
    "rows that were measured from unlike ends rocks"
)


def row_details(site: Site) -> tuple[Detail, ...]:
    """Return where the row of a hole stands on its part, and how all rows are made alike (B19).

    A row is the run of holes around this one: a grid above a fixed shelf is told by itself.
    """
    own = site.feature
    hand = site.copies[0].hand
    row = _run(
        sorted(
            {
                _middle(each)
                for each in site.part.features
                if (each.role, each.surface, each.across, each.span)
                == (PIN_HOLE, own.surface, own.across, own.span)
                and hand in each.hands
            }
        ),
        _middle(own),
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


def _middle(hole: Feature) -> Fraction:
    return (hole.along[0] + hole.along[1]) / 2


def _run(places: list[Fraction], own: Fraction) -> list[Fraction]:
    """Return the evenly spaced places around `own`: those of one line of the notes, in one run.

    Each line has a grid of its own, so above and below a fixed shelf the holes are two runs.
    """
    run: list[Fraction] = []
    for place in places:
        if len(run) > 1 and place - run[-1] != run[1] - run[0]:
            if own <= run[-1]:
                return run
            run = []
        run.append(place)
    return run
