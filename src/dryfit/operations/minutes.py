"""Minutes of attended work: rates of the shop file times amounts, in tenths of a minute.

The form of the sum is TRADE F1 (common practice); every rate is the shop file's.
"""

from __future__ import annotations

from fractions import Fraction

from dryfit.shop.shop import Shop

METRE = Fraction(1000)
SQUARE_METRE = Fraction(1_000_000)


def worked(shop: Shop, kind: str, **amounts: Fraction | int) -> Fraction:
    """Return the exact tenths of a minute that a kind of work takes.

    `amounts` are named as in the shop file: ``each`` items, ``per_metre`` metres,
    ``per_square_metre`` square metres, ``per_plunge``, ``per_joint``, ...; a word that the kind
    has no rate for adds nothing.
    """
    rates = shop.minutes[kind]
    parts = (rates.get(word, Fraction(0)) * amount for word, amount in amounts.items())
    return sum(parts, Fraction(0))


def tenths(exact: Fraction) -> int:
    """Return whole tenths of a minute, halves up: the one rounding of an operation's minutes."""
    return (2 * exact.numerator + exact.denominator) // (2 * exact.denominator)


def in_minutes(tenths_of: Fraction | int) -> str:
    """Return tenths of a minute in words: ``9.5 min``, ``2 min``."""
    whole, rest = divmod(round(tenths_of), 10)
    return f"{whole}.{rest} min" if rest else f"{whole} min"
