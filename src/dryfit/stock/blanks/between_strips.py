"""Blanks cut short: fed through the planer between strips, which it bites instead (A5.2, A6.1).

A planer bites deeper at both ends of what it planes.  Where the wood is too short for that, strips
of the same thickness are stuck to both edges, so long that they go in first and come out last.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction
from typing import Literal

from dryfit.piece.declared import Have
from dryfit.shop.shop import Shop
from dryfit.stock.blanks.blank import Blank, made_of
from dryfit.stock.blanks.rough_sizes import rough_sizes
from dryfit.stock.board_edges import usable_face
from dryfit.stock.boards import sizes

Short = Literal["", "wide", "all"]
"""Which blanks are cut short: those that have to be, what is wider than half a board, or all."""


def without_snipe(shop: Shop) -> Shop:
    """Return the shop as it is for what is fed between strips."""
    return replace(shop, allowances={**shop.allowances, "snipe": Fraction(0)})


def has_snipe(shop: Shop) -> bool:
    """Return whether a planer of the shop bites anything."""
    return "planer" in shop.stations and shop.allowances["snipe"] > 0


def cut_short(blank: Blank, shop: Shop) -> Blank:
    """Return the blank as it is cut where it is fed between strips; of sheets, as it is."""
    if blank.sheet or not has_snipe(shop):
        return blank
    bare = without_snipe(shop)
    return replace(
        made_of(blank, blank.part, blank.along, bare), each=blank.each, between_strips=True
    )


def wants_short(blank: Blank, short: Short, lines: Sequence[Have], shop: Shop) -> bool:
    """Return whether the blank is cut short: where it has to be, or as `short` says."""
    if short == "all" or _only_short(blank, lines, shop):
        return True
    found = [sizes(line)[1] for line in lines if rough_sizes(blank, line, shop) is not None]
    return short == "wide" and any(2 * blank.width > wide for wide in found)


def _only_short(blank: Blank, lines: Sequence[Have], shop: Shop) -> bool:
    """Return whether a board holds the blank only where it is fed between strips.

    The ends of a board are no use (A5.1); a board without a length is long enough.
    """
    if blank.sheet or not has_snipe(shop):
        return False
    short = cut_short(blank, shop)

    def holds(line: Have, wanted: Blank) -> bool:
        rough, (long, wide) = rough_sizes(wanted, line, shop), usable_face(line, shop)
        return rough is not None and rough.length <= long and rough.width <= wide

    return not any(holds(line, blank) for line in lines) and any(
        holds(line, short) for line in lines
    )
