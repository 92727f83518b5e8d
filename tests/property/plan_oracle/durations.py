"""Durations and lengths of the shop file, and minutes of the steps document, exact."""

from fractions import Fraction


def minutes(text: str) -> Fraction:
    """A duration of the shop file in minutes."""
    number, unit = text.split()
    return Fraction(number) * {"min": 1, "h": 60}[unit]


def exact(value: float) -> Fraction:
    """A figure with one decimal as it is meant."""
    return Fraction(str(value))


def millimetres(text: str) -> Fraction:
    """A length of the shop file: ``45 mm``, ``3 1/8 in``."""
    *numbers, unit = text.split()
    factor = {"mm": Fraction(1), "in": Fraction(254, 10)}[unit]
    return factor * sum((Fraction(each) for each in numbers), Fraction(0))
