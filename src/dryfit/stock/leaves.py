"""Strips that are resawn into leaves: how thick they have to be (TRADE A8.1)."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from dryfit.joinery.resawing import resaw_kerf, sawn_leaf, thickness_for
from dryfit.shop.shop import Shop
from dryfit.stock.blanks import Blank


def resawn(blank: Blank, leaves: int, shop: Shop) -> Blank:
    """Return the blanks of a panel's staves as strips of which each is sawn into so many leaves.

    A strip is as long and wide as a leaf; a last one may become fewer leaves.
    """
    strip = thickness_for(
        leaves, sawn_leaf(blank.part.thickness, shop), Fraction(0), resaw_kerf(shop)
    )
    count = -(-len(blank.pieces) // leaves)
    return replace(blank, each=leaves, count=count, leaves=leaves, strip=strip, thickness=strip)
