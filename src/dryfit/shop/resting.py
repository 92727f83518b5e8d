"""How long wood rests while it is milled, and how much is left for the last pass (TRADE A3.7)."""

from __future__ import annotations

from fractions import Fraction

from dryfit.shop.shop import Shop

MUCH = Fraction(1, 4)
"""Of a board's thickness: where more comes off, it rests before the last pass (TRADE A3.7)."""
LEFT = Fraction(3, 2)
"""mm that are left for the last pass: 1 to 2 (TRADE A3.7)."""


def rest_of(
    thick: Fraction, to: Fraction, shop: Shop, *, straight: bool, known: bool, told: int | None
) -> int:
    """Return how many tenths of a minute wood rests that is planed from one thickness to another.

    It is `told` by the notes, or the longest that it has a reason for: much comes off, it has to
    stay `straight`, its moisture is not `known`.  It does not rest where less comes off before
    than after it.
    """
    if thick - to <= 2 * LEFT:
        return 0
    if told is not None:
        return told
    return max(
        shop.rests.planed if thick - to > MUCH * thick else 0,
        shop.rests.straight if straight else 0,
        0 if known else shop.rests.unknown,
    )


def in_words(tenths: int) -> str:
    """Return how long wood rests, exactly, as a shop file may say it: ``24 h`` or ``90 min``."""
    hours, more = divmod(tenths, 600)
    return f"{tenths / 10:g} min" if more else f"{hours} h"
