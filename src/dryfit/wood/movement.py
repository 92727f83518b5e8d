"""Moisture of wood in the air of a room, and the movement across the grain that comes of it.

Along the grain wood keeps its length: 0.1 to 0.2 % from green to ovendry (American Wood Council,
FAQ "Where can I find information on wood shrinkage", read).
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

LOWEST_VALID = Fraction(6)
HIGHEST_VALID = Fraction(14)
"""Moisture contents in percent between which `movement` holds: title of Table 13-5 (read)."""

USUAL_SWING = Fraction(4)
"""Percent of moisture between dry and damp season in a heated house: common practice."""


@dataclass(frozen=True, slots=True)
class Moisture:
    """Moisture contents in percent: in the shop now, and the extremes where the piece will stand.

    The values here are those of a heated house, and of a shop nobody has measured: common practice.
    """

    now: Fraction = Fraction(8)
    driest: Fraction = Fraction(6)
    dampest: Fraction = Fraction(11)

    @property
    def rise(self) -> Fraction:
        """Percent that the wood may still take up."""
        return self.dampest - self.now

    @property
    def fall(self) -> Fraction:
        """Percent that the wood may still lose."""
        return self.now - self.driest


def movement(
    size: Fraction, coefficient: Fraction, moisture_from: Fraction, moisture_to: Fraction
) -> Fraction:
    """Return the change in mm of a size across the grain, negative when it shrinks.

    *Wood Handbook* FPL-GTR-190, equation 13-2: size times coefficient times change of moisture
    content in percent.  It holds from `LOWEST_VALID` to `HIGHEST_VALID`.
    """
    return size * coefficient * (moisture_to - moisture_from)


def equilibrium_moisture(celsius: float, humidity_percent: float) -> float:
    """Return the moisture content in percent that wood comes to in air of that state.

    Equation of *Wood Handbook* FPL-GTR-190 chapter 4 with the metric constants of W. T. Simpson,
    FPL-RN-0268 (1998), read second hand; within 0.06 of the handbook's Table 4-2 from 30 to 140 F.
    """
    t = celsius
    w = 349 + 1.29 * t + 0.0135 * t**2
    k = 0.805 + 0.000736 * t - 0.00000273 * t**2
    k1 = 6.27 - 0.00938 * t - 0.000303 * t**2
    k2 = 1.91 + 0.0407 * t - 0.000293 * t**2
    kh = k * humidity_percent / 100
    hydrated = (k1 * kh + 2 * k1 * k2 * kh**2) / (1 + k1 * kh + k1 * k2 * kh**2)
    return 1800 / w * (kh / (1 - kh) + hydrated)
