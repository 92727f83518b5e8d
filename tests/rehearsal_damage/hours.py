"""Working hours of the shipped shop: tenths of a minute since day 1's first, nights counted."""

from dryfit.plan.plan import Moment
from dryfit.shop import Shop, read_shop

SHIPPED, _ = read_shop(None, {})
assert SHIPPED is not None
SHOP: Shop = SHIPPED

DAY = 24 * 60 * 10
WEEK = 7 * DAY
OPEN = SHOP.closes - SHOP.opens


def moment(tenths: int) -> Moment:
    """A moment with its day and its clock."""
    day, clock = divmod(SHOP.opens + tenths, DAY)
    hour, minute = divmod(clock // 10, 60)
    return Moment(tenths, day + 1, f"{hour:02}:{minute:02}")


def opened(at: int) -> int:
    """The first moment from `at` on at which there is time to work."""
    while (at // DAY) % 7 in SHOP.days_off or at % DAY >= OPEN:
        at = (at // DAY + 1) * DAY
    return at


def worked(start: int, tenths: int) -> int:
    """When so much work is done that begins at `start`."""
    at = opened(start) if tenths else start
    while tenths > (left := OPEN - at % DAY):
        tenths -= left
        at = opened(at + left)
    return at + tenths


def between(start: int, end: int) -> int:
    """The working tenths between two moments."""
    total = 0
    for day in range(start // DAY, end // DAY + 1):
        if day % 7 not in SHOP.days_off:
            total += max(0, min(end, day * DAY + OPEN) - max(start, day * DAY))
    return total


def in_one_day(free: int, tenths: int) -> int:
    """The first moment from `free` on at which so much can be done before the evening."""
    at = opened(free)
    return at if at % DAY + tenths <= OPEN else opened(at - at % DAY + OPEN)
