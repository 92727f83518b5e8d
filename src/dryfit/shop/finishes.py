"""What is known of a finish: from the shop file, or taken for granted where it does not name it."""

from __future__ import annotations

from dryfit.shop.shop import FinishProduct, Shop

HOUR = 60 * 10
USUAL_COATS = 2
"""TRADE D5 (common practice)."""
USUAL_RECOAT = 24 * HOUR
"""TRADE D5 (common practice)."""
USUAL_DUST_FREE = 8 * HOUR
"""TRADE D7 (common practice)."""


def finish_named(shop: Shop, name: str) -> FinishProduct:
    """Return the finish of that name; one that the shop file does not name is a usual one."""
    known = shop.finishes.get(name)
    return known or FinishProduct(name, USUAL_COATS, USUAL_RECOAT, USUAL_DUST_FREE)


def dust_free(shop: Shop, name: str, recoat: int) -> int:
    """Return the tenths of a minute for which a coat takes up dust, in a plan that waits `recoat`.

    What may be coated again is dry, so that an unknown finish takes up dust no longer than that.
    """
    finish = finish_named(shop, name)
    return finish.dust_free if name in shop.finishes else min(finish.dust_free, recoat)
