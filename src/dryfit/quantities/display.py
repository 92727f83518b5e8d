"""The one place where lengths are rounded: how a figure is shown on paper and on screen.

Sizes are shown to the step of the ``units`` line (1/2 mm or 1/32 in when it names none), settings
of fitted joints to 1/10 mm or 1/64 in, as CONTRACTS fixes it.  A figure that the step moves is
marked by `Display.moved`, so that the booklet can say "about".
"""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import Literal

from dryfit.quantities.units import INCH

SIZE_STEP_MM = Fraction(1, 2)
SIZE_STEP_IN = Fraction(1, 32)
FITTED_STEP_MM = Fraction(1, 10)
FITTED_STEP_IN = Fraction(1, 64)

_IN_BRACES = re.compile(r"\{(\d+(?:\.\d+)?)\}")
_EXAMPLE_STEPS = (
    (Fraction(13), Fraction(1, 16)),
    (Fraction(100), Fraction(1, 8)),
    (Fraction(1000), Fraction(1, 2)),
    (Fraction(10_000_000), Fraction(1, 8)),
)
"""Below so many mm, examples in inches go by this step, in inches."""


@dataclass(frozen=True, slots=True)
class Display:
    """How the maker reads lengths: the unit, and the step in that unit.

    `bare` is whether a figure without a unit reads back to the same length in the notes: it does
    not where such figures are centimetres or metres there.  What is said to the maker has its unit
    then, so that every line to write instead can be taken as it stands; `plain` is for tables.
    """

    unit: Literal["mm", "in"] = "mm"
    step: Fraction = SIZE_STEP_MM
    bare: bool = True

    @staticmethod
    def inches(step: Fraction = SIZE_STEP_IN) -> Display:
        """Return the display of a piece in inches; `step` in inches."""
        return Display("in", step)

    @staticmethod
    def of_unit(unit: str) -> Display:
        """Return the display of notes in a unit: mm for what is metric."""
        return Display.inches() if unit == "in" else Display(bare=unit == "mm")

    def shown(self, length: Fraction, *, fitted: bool = False) -> str:
        """Return the length as printed, with ``"`` in inches, and bare in millimetres if `bare`."""
        rounded = _to_step(self._in_unit(length), self._step(fitted=fitted))
        if self.unit == "mm":
            return _decimal(rounded) if self.bare else f"{_decimal(rounded)} mm"
        return f'{mixed(rounded)}"'

    def with_unit(self, length: Fraction, *, fitted: bool = False) -> str:
        """Return the length as said in a sentence, always with its unit."""
        text = self.shown(length, fitted=fitted)
        return f"{text} mm" if self.unit == "mm" and self.bare else text

    @property
    def plain(self) -> Display:
        """Return the same display for tables and drawings, whose heading says the unit."""
        return self if self.bare else replace(self, bare=True)

    def movement(self, length: Fraction) -> str:
        """Return how far wood moves, with its unit: to 1/2 mm or 1/32 in, whatever the step."""
        step = SIZE_STEP_MM if self.unit == "mm" else SIZE_STEP_IN
        rounded = _to_step(self._in_unit(length), step)
        return f"{_decimal(rounded)} mm" if self.unit == "mm" else f'{mixed(rounded)}"'

    def moved(self, length: Fraction, *, fitted: bool = False) -> bool:
        """Return whether rounding for show changed the figure."""
        value = self._in_unit(length)
        return _to_step(value, self._step(fitted=fitted)) != value

    def rounded(self, length: Fraction, *, fitted: bool = False) -> Fraction:
        """Return the shown figure as a length in mm, to add up a chain as it is printed."""
        value = _to_step(self._in_unit(length), self._step(fitted=fitted))
        return value * (INCH if self.unit == "in" else 1)

    def either(self, metric: Fraction, imperial: Fraction) -> Fraction:
        """Return the one of two figures, both in mm, that is usual in the maker's unit."""
        return metric if self.unit == "mm" else imperial

    @property
    def joint_step(self) -> Fraction:
        """Return the step in which sizes of joints are chosen: 1 mm, 1/16 in; in mm."""
        return self.either(Fraction(1), INCH / 16)

    def down(self, length: Fraction) -> Fraction:
        """Return a length, mm, cut off to whole steps of `joint_step`."""
        return length // self.joint_step * self.joint_step

    def example(self, millimetres: Fraction) -> str:
        """Return a round figure near a length in mm, as an example of what a maker may write."""
        if self.unit == "mm":
            return _decimal(millimetres) + ("" if self.bare else " mm")
        step = next(step for most, step in _EXAMPLE_STEPS if millimetres < most)
        return f'{mixed(max(step, _to_step(millimetres / INCH, step)))}"'

    def examples(self, words: str) -> str:
        """Return words with each figure in braces as an `example`.

        ``{12} from top`` is ``12 from top``, and ``1/2" from top`` in notes in inches.
        """
        return _IN_BRACES.sub(lambda found: self.example(Fraction(found[1])), words)

    def _step(self, *, fitted: bool) -> Fraction:
        if not fitted:
            return self.step
        return min(self.step, FITTED_STEP_MM if self.unit == "mm" else FITTED_STEP_IN)

    def _in_unit(self, length: Fraction) -> Fraction:
        return length / INCH if self.unit == "in" else length


def mixed(value: Fraction) -> str:
    """Return a number as a whole and a reduced fraction: 71/4 is ``17 3/4``."""
    sign = "-" if value < 0 else ""
    whole, rest = divmod(abs(value.numerator), value.denominator)
    if rest == 0:
        return f"{sign}{whole}"
    fraction = f"{rest}/{value.denominator}"
    return f"{sign}{whole} {fraction}" if whole else f"{sign}{fraction}"


def exact(length: Fraction, unit: str = "mm") -> str:
    """Return the contract's exact spelling: a whole or reduced fraction with its unit."""
    return f"{length} {unit}"


def _to_step(value: Fraction, step: Fraction) -> Fraction:
    # Halves go away from zero, as a maker rounds; round() would go to the even neighbour.
    steps = abs(value) / step
    whole = (2 * steps.numerator + steps.denominator) // (2 * steps.denominator)
    return step * whole * (-1 if value < 0 else 1)


def _decimal(value: Fraction) -> str:
    # A step is a decimal fraction in metric files; anything else would need more digits.
    digits = 0
    while (value * 10**digits).denominator != 1 and digits < _MOST_DIGITS:
        digits += 1
    scaled = round(value * 10**digits)
    if digits == 0:
        return str(scaled)
    sign = "-" if scaled < 0 else ""
    whole, rest = divmod(abs(scaled), 10**digits)
    return f"{sign}{whole}.{rest:0{digits}d}"


_MOST_DIGITS = 3
