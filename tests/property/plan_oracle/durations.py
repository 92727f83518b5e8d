"""Durations of the shop file and of the steps document, exact."""

from fractions import Fraction


def minutes(text: str) -> Fraction:
    """A duration of the shop file in minutes."""
    number, unit = text.split()
    return Fraction(number) * {"min": 1, "h": 60}[unit]


def exact(value: float) -> Fraction:
    """A figure with one decimal as it is meant."""
    return Fraction(str(value))
