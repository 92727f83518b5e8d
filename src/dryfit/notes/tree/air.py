"""What the notes say of moisture: of the wood now, of the shop's air, of the place to be."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from dryfit.diagnostics import Span


@dataclass(frozen=True, slots=True)
class MoistLine:
    """``wood at 9 %``: what the wood holds now, in percent of its dry weight."""

    percent: Fraction
    span: Span


@dataclass(frozen=True, slots=True)
class ShopAirLine:
    """``shop at 18 C, 60 % humidity``: the air in which the wood has lain; None as not said."""

    celsius: Fraction | None
    humidity: Fraction
    span: Span


@dataclass(frozen=True, slots=True)
class StandsAtLine:
    """``stands at 40 to 65 % humidity``: the extremes where the piece will stand, in percent.

    `kind` is humidity, of the air, or moisture, of the wood itself.
    """

    celsius: Fraction | None
    low: Fraction
    high: Fraction
    kind: str
    span: Span
