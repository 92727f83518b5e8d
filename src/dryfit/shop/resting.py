"""Which wood comes to rest before it is planed true: what loses much of its thickness (A3.7)."""

from __future__ import annotations

from fractions import Fraction

from dryfit.shop.shop import Shop

MUCH = Fraction(1, 4)
"""Of a board's thickness: where more comes off, it rests before the last pass (TRADE A3.7)."""
LEFT = Fraction(3, 2)
"""mm that are left for the last pass: 1 to 2 (TRADE A3.7)."""


def rests(thick: Fraction, to: Fraction, shop: Shop) -> bool:
    """Return whether wood planed from one thickness to another, in mm, rests on the way.

    It does not in a shop without a rest, nor where less comes off before than after it.
    """
    off = thick - to
    return shop.rest > 0 and off > MUCH * thick and off > 2 * LEFT


def in_words(tenths: int) -> str:
    """Return how long wood rests, exactly, as a shop file may say it: ``24 h`` or ``90 min``."""
    hours, more = divmod(tenths, 600)
    return f"{tenths / 10:g} min" if more else f"{hours} h"
