"""Exact quantities with a kind, so that a length is never added to a time."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction


@dataclass(frozen=True, slots=True)
class Kind:
    """Exponents of length, time and angle; all zero is a plain number."""

    length: int = 0
    time: int = 0
    angle: int = 0

    def words(self) -> str:
        """Return the kind in plain English with its article, as a message says it."""
        return _KIND_WORDS.get(self, "a quantity of no use here")


NUMBER = Kind()
LENGTH = Kind(length=1)
AREA = Kind(length=2)
TIME = Kind(time=1)
ANGLE = Kind(angle=1)

_KIND_WORDS = {
    NUMBER: "a plain number",
    LENGTH: "a length",
    AREA: "an area",
    TIME: "a time",
    ANGLE: "an angle",
}


class KindError(ValueError):
    """Two quantities of kinds that cannot be combined; the text is fit to be shown."""


@dataclass(frozen=True, slots=True)
class Quantity:
    """An exact value in millimetres, minutes, degrees or products of these."""

    value: Fraction
    kind: Kind

    def plus(self, other: Quantity) -> Quantity:
        """Return the sum; raises KindError when the kinds differ."""
        if self.kind != other.kind:
            raise KindError(f"{self.kind.words()} and {other.kind.words()} cannot be added")
        return Quantity(self.value + other.value, self.kind)

    def minus(self, other: Quantity) -> Quantity:
        """Return the difference; raises KindError when the kinds differ."""
        if self.kind != other.kind:
            raise KindError(f"{other.kind.words()} cannot be taken from {self.kind.words()}")
        return Quantity(self.value - other.value, self.kind)

    def times(self, other: Quantity) -> Quantity:
        """Return the product, its exponents added."""
        return Quantity(self.value * other.value, _combined(self.kind, other.kind, 1))

    def over(self, other: Quantity) -> Quantity:
        """Return the quotient; raises KindError when the divisor is nothing."""
        if other.value == 0:
            raise KindError("nothing can be divided by 0")
        return Quantity(self.value / other.value, _combined(self.kind, other.kind, -1))


def _combined(first: Kind, second: Kind, sign: int) -> Kind:
    return Kind(
        first.length + sign * second.length,
        first.time + sign * second.time,
        first.angle + sign * second.angle,
    )
