"""Reading one exact quantity from a string: ``1 1/2 in``, ``79 mm``, ``1 h 30 min``, ``0.25 min``.

This is the strict form that files use, where every value carries its unit.
"""

from __future__ import annotations

import re
from fractions import Fraction

from dryfit.quantities.kinds import Kind, Quantity
from dryfit.quantities.units import UNITS


class UnreadableQuantityError(ValueError):
    """The text is no quantity with a unit; the message is fit to be shown."""


# 12 digits are a million kilometres of wood, and bound the work on a hostile file.
_NUMBER = r"\d{1,12}[ -]\d{1,12}/\d{1,12}|\d{1,12}/\d{1,12}|\d{1,12}\.\d{1,12}|\d{1,12}"
_TERM = re.compile(rf"\s*({_NUMBER})\s*([^\W\d_]+|''|[\"'°])", re.ASCII)
_LONE_NUMBER = re.compile(rf"\s*({_NUMBER})\s*", re.ASCII)


def read_quantity(text: str) -> Quantity:
    """Return the exact quantity: terms of one kind, each with its unit, added up.

    Raises
    ------
    UnreadableQuantityError
        No number, no unit, an unknown unit, a division by nothing, or terms of two kinds.
    """
    if _LONE_NUMBER.fullmatch(text):
        raise UnreadableQuantityError("the unit is missing")
    total, kind, end = Fraction(0), None, 0
    while match := _TERM.match(text, end):
        term = _term(match[1], match[2])
        if kind is not None and term.kind != kind:
            raise UnreadableQuantityError(f"{kind.words()} and {term.kind.words()} cannot be added")
        total, kind, end = total + term.value, term.kind, match.end()
    if kind is None or text[end:].strip():
        raise UnreadableQuantityError(_why_not(text))
    return Quantity(total, kind)


def read_of_kind(text: str, kind: Kind) -> Fraction:
    """Return the value in mm, minutes or degrees; UnreadableQuantityError when of another kind."""
    quantity = read_quantity(text)
    if quantity.kind != kind:
        raise UnreadableQuantityError(f"{quantity.kind.words()} where {kind.words()} belongs")
    return quantity.value


def _term(number: str, unit: str) -> Quantity:
    known = UNITS.get(unit) or UNITS.get(unit.lower())
    if known is None:
        raise UnreadableQuantityError(f"`{unit}` is no unit")
    try:
        value = sum((Fraction(part) for part in re.split("[ -]", number)), Fraction(0))
    except ZeroDivisionError:
        raise UnreadableQuantityError(f"`{number}` divides by 0") from None
    return Quantity(value * known.size, known.kind)


def _why_not(text: str) -> str:
    if re.search(r"\d,\d", text):
        return "a decimal point is written `.`, as in `3.2 mm`"
    if text.lstrip().startswith("-"):
        return "it cannot be less than nothing"
    return "a number with its unit belongs here, as in `3.2 mm`, `1 1/2 in` or `1.5 min`"
