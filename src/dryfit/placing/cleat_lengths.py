"""How long a cleat or batten is that lies across a solid board, where its line does not say.

It ends short of both edges, so that it does not stick out when the board shrinks (TRADE B18).
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from dryfit.joinery.cleats import is_cleat, short_of_board
from dryfit.joinery.screws import BROAD
from dryfit.piece.declared import DeclaredPart
from dryfit.placing.seats import Seat
from dryfit.placing.site import Site


def short_at_each_end(
    site: Site, part: DeclaredPart, hosts: Sequence[Seat], axis: int
) -> Fraction | None:
    """Return how far a cleat without a length ends within its board at each end, mm, or None.

    None for what is no cleat: what is joined to anything else, or does not lie under one broad
    solid board across its grain.
    """
    if not is_cleat(part.name):
        return None
    if axis != part.axes[0] or part.sizes[0] is not None or part.stock == "sheet":
        return None
    names = {host.part for each in site.contacts_of(part.name) for host in each.hosts}
    if len(names) != 1 or len(hosts) != 1 or site.contacts_on(part.name):
        return None
    board = site.part(hosts[0].part)
    wide = site.positions.extent(hosts[0].name, axis)
    if board.stock == "sheet" or board.axes[1] != axis or wide is None or wide <= BROAD:
        return None
    return short_of_board(wide, site.moving(board), site.declared.display)
