"""How many leaves come out of a slab, and how thick it has to be for them (TRADE A8.1); mm."""

from __future__ import annotations

from fractions import Fraction

from dryfit.shop.shop import Shop

WARP = Fraction(2)
"""What truing one face of a rough slab takes at least (TRADE A8.1)."""

RESAWN_FACE = Fraction(1)
"""What planing takes from the one sawn face of a leaf (TRADE A8.1)."""

RESAWN_FACES = Fraction(3, 2)
"""The same of both faces of a leaf from between two others (TRADE A8.1)."""

LEAVES = 2
"""How many leaves are sawn out of a strip of the slab: a pair, opened like a book (TRADE A8.4)."""

SCARCE = Fraction(1, 2)
"""With less to spare than this a saw that drifts spoils a leaf (common practice)."""

_KERF = Fraction(13, 10)
"""The kerf of a hand saw, about that of a band saw, where the shop has none (common practice)."""


def thickness_for(leaves: int, leaf: Fraction, planing: Fraction, kerf: Fraction) -> Fraction:
    """Return how thick a trued slab is for so many leaves: n (leaf + planing) + (n - 1) kerf."""
    return leaves * (leaf + planing) + (leaves - 1) * kerf


def thickest_leaf(trued: Fraction, leaves: int, planing: Fraction, kerf: Fraction) -> Fraction:
    """Return how thick leaves can be, planed, out of a slab that is so thick when it is trued."""
    return (trued - (leaves - 1) * kerf) / leaves - planing


def sawn_leaf(finished: Fraction, shop: Shop) -> Fraction:
    """Return how thick a leaf is sawn for a panel that is so thick when it is flattened."""
    return leaf_for(finished + shop.allowances["panel_flattening"], LEAVES, shop)


def leaf_for(planed: Fraction, leaves: int, shop: Shop) -> Fraction:
    """Return how thick each of so many leaves is sawn that is planed to a thickness.

    The shop's allowances for facing and for its machines hold where they are more than A8.1's.
    """
    faces = RESAWN_FACE if leaves == LEAVES else RESAWN_FACES
    return planed + max(faces, shop.allowances["facing"] + shop.allowances["hand_margin"])


def resaw_kerf(shop: Shop) -> Fraction:
    """Return what the band saw's blade takes, or about as much by hand."""
    blade = next(iter(shop.cutters_at("band saw")), None)
    return _KERF if blade is None else blade.widest
