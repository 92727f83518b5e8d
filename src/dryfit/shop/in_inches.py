"""What boards are ripped wider than the parts, in the unit of the notes."""

from __future__ import annotations

from dataclasses import replace

from dryfit.quantities.units import INCH
from dryfit.shop.shop import Shop

_STEP = INCH / 16
_FOR_RIPPING = ("rough_width", "rough_width_band_saw", "hit_and_miss_width", "planed_width")


def rips_marked_in(shop: Shop, unit: str) -> Shop:
    """Return the shop with what is left for ripping up to a sixteenth of an inch in inch notes.

    A part of 3 in is then ripped to 3 1/4 in, and not to 3 in and 5 mm, to which nobody sets a
    fence; a quarter of an inch is what inch shops leave (TRADE A5, common practice).  In other
    units it is left as the shop's file says.
    """
    if unit != "in":
        return shop
    room = shop.allowances
    up = {name: -(-room[name] // _STEP) * _STEP for name in _FOR_RIPPING}
    return replace(shop, allowances={**room, **up})
