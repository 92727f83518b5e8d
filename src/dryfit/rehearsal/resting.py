"""Which wood is to rest before it is planed true (TRADE A3.7)."""

from __future__ import annotations

from fractions import Fraction

from dryfit.plan.sawing import SawnBoard
from dryfit.rehearsal.goal import WantedPart
from dryfit.shop.shop import Shop

MUCH = Fraction(1, 4)
"""Of a board's thickness: what loses more of it rests (TRADE A3.7)."""
LEFT = Fraction(3, 2)
"""mm that stand over while it rests: 1 to 2 (TRADE A3.7); what loses less than twice that has no
room for it."""


def wanted_rest(
    part: WantedPart, board: SawnBoard | None, thick: Fraction, to: Fraction, shop: Shop
) -> int:
    """Return how many tenths a piece of a part rests that was sawn so thick; 0 where it need not.

    Out of no board that is known it rests where the notes say so alone.
    """
    if thick - to <= 2 * LEFT:
        return 0
    if part.rested is not None or board is None:
        return part.rested or 0
    reasons = (
        (thick - to > MUCH * thick, shop.rests.planed),
        (part.stays_straight, shop.rests.straight),
        (board.damp, shop.rests.unknown),
    )
    return max(rest for holds, rest in (*reasons, (True, 0)) if holds)
