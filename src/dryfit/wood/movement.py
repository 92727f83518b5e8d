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

MOST = Fraction(30)
"""Percent above which wood swells no more: text before equation 13-3 (read)."""

USUAL_SWING = Fraction(4)
"""Percent of moisture between dry and damp season in a heated house: common practice."""


@dataclass(frozen=True, slots=True)
class Moisture:
    """Moisture contents in percent: in the shop now, and the extremes where the piece will stand.

    The values here are those of a heated house, and of a shop nobody has measured: common practice
    (TRADE G1).  `told` says that the notes tell where it will stand: then the wood is taken to
    move between both extremes, else by `USUAL_SWING`, as it does in most years.
    """

    now: Fraction = Fraction(8)
    driest: Fraction = Fraction(6)
    dampest: Fraction = Fraction(11)
    told: bool = False

    @property
    def rise(self) -> Fraction:
        """Percent that the wood may still take up; nothing where it is damper now."""
        return max(self.dampest - self.now, Fraction(0))

    @property
    def fall(self) -> Fraction:
        """Percent that the wood may still lose."""
        return max(self.now - self.driest, Fraction(0))

    @property
    def middle(self) -> Fraction:
        """Percent at which the wood will be for most of the time where it stands."""
        return (self.driest + self.dampest) / 2


def movement(
    size: Fraction, coefficient: Fraction, moisture_from: Fraction, moisture_to: Fraction
) -> Fraction:
    """Return the change in mm of a size across the grain, negative when it shrinks.

    *Wood Handbook* FPL-GTR-190: from `LOWEST_VALID` to `HIGHEST_VALID` equation 13-2, size times
    coefficient times change of moisture content in percent.  Beyond it equation 13-3 (from memory):
    size times change over (3000/S - 30 + moisture before), where the shrinkage S is that which
    gives the coefficient at 10 %: 3000/S = 1/C + 20.  Above 30 % wood swells no more.
    """
    start, end = min(moisture_from, MOST), min(moisture_to, MOST)
    if min(start, end) >= LOWEST_VALID and max(start, end) <= HIGHEST_VALID:
        return size * coefficient * (end - start)
    return size * (end - start) / (1 / coefficient - 10 + start)


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
