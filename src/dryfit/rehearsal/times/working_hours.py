"""The working hours of the shop: clock time and work time, days off left out (TRADE F5).

Clock time are tenths of a minute since the opening of day 1, nights counted; work time stands still
while the shop is closed.  Day 1 is a working day: the first that the shop is open from a Monday on.
"""

from __future__ import annotations

from dataclasses import dataclass

from dryfit.shop.shop import Shop

MINUTE = 10
HOUR = 60 * MINUTE
DAY = 24 * HOUR
WEEK = 7


@dataclass(frozen=True, slots=True)
class Hours:
    """`opens` tenths after midnight, `long` tenths of a working day, `working` days from day 1."""

    opens: int
    long: int
    working: tuple[bool, ...]

    def worked(self, clock: int) -> int:
        """Return the work time that has passed at a clock time."""
        day, of_day = divmod(clock, DAY)
        weeks, weekday = divmod(day, WEEK)
        days = weeks * sum(self.working) + sum(self.working[:weekday])
        return days * self.long + (min(of_day, self.long) if self.working[weekday] else 0)

    def between(self, start: int, end: int) -> int:
        """Return the work time from one clock time to another, negative if they are reversed."""
        return self.worked(end) - self.worked(start)

    def begins(self, worked: int) -> int:
        """Return the clock time of a work time as a beginning: in the morning, not at closing."""
        days, of_day = divmod(worked, self.long)
        weeks, nth = divmod(days, sum(self.working))
        weekday = [day for day in range(WEEK) if self.working[day]][nth]
        return (weeks * WEEK + weekday) * DAY + of_day

    def opened(self, clock: int) -> int:
        """Return the first clock time from this one on at which the shop is open."""
        return max(clock, self.begins(self.worked(clock)))

    def is_open(self, clock: int) -> bool:
        """Return whether a clock time lies in the hours, the minute of closing with them."""
        day, of_day = divmod(clock, DAY)
        return clock >= 0 and self.working[day % WEEK] and of_day <= self.long

    def day_and_clock(self, clock: int) -> tuple[int, str]:
        """Return the day, counted from 1, and the time of day, as ``(2, "08:00")``."""
        day, of_day = divmod(self.opens + clock, DAY)
        return day + 1, f"{of_day // HOUR:02}:{of_day % HOUR // MINUTE:02}"


def hours_of(shop: Shop) -> Hours:
    """Return the hours of a shop; ValueError when it is never open."""
    days = [day for day in range(WEEK) if day not in shop.days_off]
    if not days or shop.closes <= shop.opens:
        raise ValueError("the shop is never open")
    working = tuple((days[0] + day) % WEEK in days for day in range(WEEK))
    return Hours(shop.opens, shop.closes - shop.opens, working)


def spoken(tenths: int) -> str:
    """Return a duration in words: ``12 h``, ``1 h 30 min``, ``7.5 min``."""
    hours, rest = divmod(tenths, HOUR)
    minutes = f"{rest // MINUTE}" + (f".{rest % MINUTE}" if rest % MINUTE else "")
    if not hours:
        return f"{minutes} min"
    return f"{hours} h {minutes} min" if rest else f"{hours} h"


def moment_in_words(clock: int, hours: Hours) -> str:
    """Return a moment as the maker reads it: ``day 2, 08:00``."""
    day, time = hours.day_and_clock(clock)
    return f"day {day}, {time}"
