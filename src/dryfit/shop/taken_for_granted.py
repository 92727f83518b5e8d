"""What a plan takes for granted about the shop, as sentences for the booklet."""

from __future__ import annotations

from dryfit.diagnostics import Assumption
from dryfit.shop.shop import Shop

_DAYS = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")


def shop_assumptions(shop: Shop) -> tuple[Assumption, ...]:
    """Return the assumptions: the shop itself, sets built to a width, the first day.

    A dado set is named because many shops cannot mount one, and it decides how laps are cut.
    """
    said = [
        Assumption(
            f"the shop is {shop.name}, read from {' and '.join(shop.files)}",
            None,
            "--shop FILE, with a shop file that names what differs",
            "shop file",
        )
    ]
    said += [
        Assumption(
            f"the {cutter.station} can mount the {cutter.name}",
            None,
            f"in the shop file under [cutter]: {cutter.name} = false",
            "shop file",
        )
        for cutter in shop.cutters
        if cutter.narrowest != cutter.widest
    ]
    first = next((day for number, day in enumerate(_DAYS) if number not in shop.days_off), "Monday")
    off = " and ".join(_DAYS[number] for number in sorted(shop.days_off)) or "no day"
    said.append(
        Assumption(
            f"day 1 is a {first}; free is {off}",
            None,
            'in the shop file: days_off = ["Sunday"]',
            "shop file",
        )
    )
    return tuple(said)
