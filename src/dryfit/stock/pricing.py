"""What one board of a ``buy`` line costs, by the unit of its price."""

from __future__ import annotations

from fractions import Fraction

from dryfit.piece.declared import Have
from dryfit.quantities.units import INCH

METRE = Fraction(1000)
FOOT = 12 * INCH
BOARD_FOOT = FOOT * FOOT * INCH


def price_of(line: Have) -> Fraction | None:
    """Return the price of one board as its line has its sizes; None where that cannot be said.

    A yard counts the sizes that a board is sold by, not what is left of it.
    """
    if line.price is None:
        return None
    long, wide, thick = line.sizes
    amount, per = line.price.amount, line.price.per
    if per == "piece":
        return amount
    units = {"metre": METRE, "foot": FOOT}
    if per in units:
        return None if long is None else amount * long / units[per]
    units = {"square metre": METRE**2, "square foot": FOOT**2}
    if per in units:
        return None if long is None or wide is None else amount * long * wide / units[per]
    if long is None or wide is None or thick is None:
        return None
    return amount * long * wide * thick / {"cubic metre": METRE**3, "board foot": BOARD_FOOT}[per]


def in_hundredths(price: Fraction) -> int:
    """Return a price in hundredths of the money, rounded up: what a layout counts in."""
    return -(-price * 100).__floor__()
