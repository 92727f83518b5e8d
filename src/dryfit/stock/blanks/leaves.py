"""Strips that are resawn into leaves: how thick they have to be (TRADE A8.1)."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction

from dryfit.joinery.resawing import LEAVES, leaf_for, resaw_kerf, thickness_for
from dryfit.piece.declared import Have
from dryfit.shop.shop import Shop
from dryfit.stock.blanks.blank import Blank, made_of
from dryfit.stock.blanks.rough_sizes import rough_sizes
from dryfit.stock.boards import to_be_resawn

MOST_LEAVES = 3
"""More are not sawn out of a strip: each cut begins on a face made true again (ours)."""


def resawn(blank: Blank, leaves: int, shop: Shop) -> Blank:
    """Return the blanks of a part as strips of which each is sawn into so many leaves.

    A strip is as long and wide as a leaf, which is no longer than the part asks for; a last one may
    become fewer leaves.
    """
    leaf = leaf_for(blank.to_thickness, leaves, shop)
    strip = thickness_for(leaves, leaf, Fraction(0), resaw_kerf(shop))
    along = min(blank.each, -(-len(blank.pieces) // leaves))
    if along < blank.each:
        blank = made_of(blank, blank.part, along, shop)
    return replace(
        blank,
        each=along * leaves,
        count=-(-len(blank.pieces) // (along * leaves)),
        leaves=leaves,
        strip=strip,
        thickness=strip,
    )


def resawn_where_it_can_be(
    blank: Blank, lines: Sequence[Have], shop: Shop, *, singly: bool = False
) -> Blank:
    """Return the blanks as strips, where the notes ask for that or else the wood is thick enough.

    There are as many leaves as the thickest board gives.  What the notes do not ask for is resawn
    at a band saw that takes the strip on its edge (A8.3).  A part of which there is one is only
    with `singly`: a leaf is left over then.
    """
    asked, several = to_be_resawn(blank.part), singly or len(blank.pieces) > 1
    if blank.sheet or not several or not (asked or _fits_the_saw(blank, lines, shop)):
        return blank
    for leaves in range(min(MOST_LEAVES, max(LEAVES, len(blank.pieces))), 1, -1):
        strips = resawn(blank, leaves, shop)
        if any(rough_sizes(strips, line, shop) is not None for line in lines):
            return strips
    return resawn(blank, LEAVES, shop) if asked else blank


def _fits_the_saw(blank: Blank, lines: Sequence[Have], shop: Shop) -> bool:
    """Return whether the band saw takes the strip out of any of the boards, on its edge."""
    saw = shop.stations.get("band saw")
    if saw is None:
        return False
    widths = [one.width for line in lines if (one := rough_sizes(blank, line, shop)) is not None]
    return max(widths, default=blank.width) <= saw.limits.get("depth", max(widths, default=0))
