"""How many people it takes to lift a thing: by its weight and its length."""

from __future__ import annotations

from fractions import Fraction

ONE_PERSON = Fraction(25)
"""kg: the UK HSE's guideline figure for one man who lifts close to the body (from memory)."""

LONG = Fraction(1800)
"""What is longer than this takes two, whatever it weighs (common practice)."""


def hands_needed(kilograms: Fraction, longest: Fraction) -> int:
    """Return how many people lift a thing: one for each 25 kg, two where its `longest` mm ask."""
    by_weight = -(-kilograms // ONE_PERSON)
    return max(1, by_weight, 2 if longest > LONG else 1)
