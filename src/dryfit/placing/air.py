"""What the wood holds now and where the piece will stand, and what of it is taken for granted."""

from __future__ import annotations

from fractions import Fraction
from functools import cache
from types import MappingProxyType
from typing import TYPE_CHECKING

from dryfit.piece.declared import AirWords
from dryfit.wood import USUAL_SWING, Moisture, equilibrium_moisture, percent_words

if TYPE_CHECKING:
    from dryfit.placing.site import Site

PLACES = MappingProxyType(
    {
        "unheated": (Fraction(10), Fraction(16)),
        "damp": (Fraction(12), Fraction(18)),
        "outdoors": (Fraction(10), Fraction(19)),
    }
)
"""Percent of moisture, driest and dampest, but for a heated house, which is the usual `Moisture`.

They are ours, after EN 942 (from memory): 12 to 16 in unheated buildings, 12 to 19 for joinery
outdoors, below both of which dry summers go."""


@cache
def moisture_of(air: AirWords) -> Moisture:
    """Return the moisture of the wood: what the notes say, else that of a heated house (G1)."""
    usual = Moisture()
    now = usual.now
    if air.wood is not None:
        now = air.wood
    elif air.shop is not None:
        now = _holds(*air.shop)
    if air.moisture is not None:
        return Moisture(now, *air.moisture, told=True)
    if air.humidity is not None and air.celsius is not None:
        low, high = (_holds(air.celsius, humid) for humid in air.humidity)
        return Moisture(now, low, high, told=True)
    place = PLACES.get(air.place or "")
    if place is not None:
        return Moisture(now, *place, told=True)
    return Moisture(now, usual.driest, usual.dampest)


def _holds(celsius: Fraction, humidity: Fraction) -> Fraction:
    """Return what wood holds in air of that state, to a tenth of a percent."""
    return Fraction(round(10 * equilibrium_moisture(float(celsius), float(humidity))), 10)


def assume_air(site: Site) -> None:
    """List the moisture that nobody told, where it set a size of this piece."""
    air, moisture = site.declared.air, site.moisture
    if not site.moved:
        return
    if air.wood is None and air.shop is None:
        now = percent_words(moisture.now)
        site.assume_line(f"the wood holds {now} of moisture now", None, f"wood at {now}")
    if air.place is None and not moisture.told:
        site.assume_line(
            "the piece stands in a heated house: its wood rises to "
            f"{percent_words(moisture.dampest)} of moisture at most, and moves by {USUAL_SWING} % "
            "in a usual year",
            None,
            "stands in a heated house",
        )
