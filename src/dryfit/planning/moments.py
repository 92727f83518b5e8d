"""Days and clock times of a plan."""

from __future__ import annotations

from dryfit.plan.plan import Moment
from dryfit.shop.days import short_name
from dryfit.shop.shop import Shop

DAY = 24 * 60 * 10
HOUR = 60 * 10
MINUTE = 10


def moment(tenths: int, shop: Shop) -> Moment:
    """Return the moment that many tenths of a minute after the opening of day 1, nights counted."""
    day, of_day = divmod(shop.opens + tenths, DAY)
    hours, rest = divmod(of_day, HOUR)
    name = short_name(shop, day + 1)
    return Moment(tenths, day + 1, f"{hours:02}:{rest // MINUTE:02}", name)
