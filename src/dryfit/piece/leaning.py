"""Sums that lean on sizes which only the placed piece knows: a constant plus factors of figures."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from dryfit.piece.declared import Lean
from dryfit.quantities import LENGTH, Quantity


class NotLinearError(ValueError):
    """Two sizes that are not known yet are multiplied, or one of them divides."""


@dataclass(frozen=True, slots=True)
class LinearForm:
    """``2 * bay.width - 4``: a quantity, plus factors of figures that are known only later.

    The kind is that of `constant`, nothing though it may be.  Each figure stands once in `leans`,
    with a factor that is not nothing.
    """

    constant: Quantity
    leans: tuple[Lean, ...] = ()

    def plus(self, other: LinearForm) -> LinearForm:
        """Return the sum; raises KindError when the kinds differ."""
        return _merged(self.constant.plus(other.constant), (*self.leans, *other.leans))

    def minus(self, other: LinearForm) -> LinearForm:
        """Return the difference; raises KindError when the kinds differ."""
        turned = _scaled(other.leans, Fraction(-1))
        return _merged(self.constant.minus(other.constant), (*self.leans, *turned))

    def times(self, other: LinearForm) -> LinearForm:
        """Return the product; raises NotLinearError when both lean."""
        if self.leans and other.leans:
            raise NotLinearError
        constant = self.constant.times(other.constant)
        by_other = _scaled(self.leans, other.constant.value)
        return _merged(constant, (*by_other, *_scaled(other.leans, self.constant.value)))

    def over(self, other: LinearForm) -> LinearForm:
        """Return the quotient; raises NotLinearError when the divisor leans, or KindError."""
        if other.leans:
            raise NotLinearError
        constant = self.constant.over(other.constant)
        return _merged(constant, _scaled(self.leans, 1 / other.constant.value))

    def most_bits(self) -> int:
        """Return the length of the longest numerator or denominator, in bits."""
        numbers = (self.constant.value, *(lean.factor for lean in self.leans))
        return max(max(n.numerator.bit_length(), n.denominator.bit_length()) for n in numbers)


def of_figure(subject: str, dimension: str) -> LinearForm:
    """Return the sum that is one figure, such as the width of bay."""
    return LinearForm(Quantity(Fraction(0), LENGTH), (Lean(Fraction(1), subject, dimension),))


def _scaled(leans: tuple[Lean, ...], factor: Fraction) -> tuple[Lean, ...]:
    return tuple(Lean(lean.factor * factor, lean.subject, lean.dimension) for lean in leans)


def _merged(constant: Quantity, leans: tuple[Lean, ...]) -> LinearForm:
    factors: dict[tuple[str, str], Fraction] = {}
    for lean in leans:
        key = (lean.subject, lean.dimension)
        factors[key] = factors.get(key, Fraction(0)) + lean.factor
    return LinearForm(
        constant, tuple(Lean(factor, *key) for key, factor in factors.items() if factor)
    )
