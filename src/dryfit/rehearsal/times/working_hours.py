"""The working hours of the shop: clock time and work time, days off left out (TRADE F5).

Clock time are tenths of a minute since the opening of day 1, nights counted; work time stands still
while the shop is closed.  Day 1 is a working day: the first from the start on, from a Monday on
where nobody told one.
"""

from __future__ import annotations

from bisect import bisect_left
from dataclasses import dataclass
from datetime import date, timedelta
from itertools import count

from dryfit.shop.shop import Shop

MINUTE = 10
HOUR = 60 * MINUTE
DAY = 24 * HOUR
WEEK = 7


@dataclass(frozen=True, slots=True)
class Hours:
    """`opens` tenths after midnight, `long` tenths of a working day, `working` days from day 1.

    `shut` are the days off besides, counted from day 1 as 0, in order.
    """

    opens: int
    long: int
    working: tuple[bool, ...]
    shut: tuple[int, ...] = ()

    def works_on(self, day: int) -> bool:
        """Return whether a day, counted from 0, is a working day."""
        return self.working[day % WEEK] and day not in self.shut

    def worked(self, clock: int) -> int:
        """Return the work time that has passed at a clock time."""
        day, of_day = divmod(clock, DAY)
        return self._days(day) * self.long + (min(of_day, self.long) if self.works_on(day) else 0)

    def _days(self, day: int) -> int:
        """Return how many working days lie before a day."""
        weeks, weekday = divmod(day, WEEK)
        in_weeks = weeks * sum(self.working) + sum(self.working[:weekday])
        return in_weeks - bisect_left(self.shut, day)

    def between(self, start: int, end: int) -> int:
        """Return the work time from one clock time to another, negative if they are reversed."""
        return self.worked(end) - self.worked(start)

    def begins(self, worked: int) -> int:
        """Return the clock time of a work time as a beginning: in the morning, not at closing."""
        days, of_day = divmod(worked, self.long)
        day = days // sum(self.working) * WEEK
        while self._days(day + 1) <= days:
            day += 1
        return day * DAY + of_day

    def opened(self, clock: int) -> int:
        """Return the first clock time from this one on at which the shop is open."""
        return max(clock, self.begins(self.worked(clock)))

    def is_open(self, clock: int) -> bool:
        """Return whether a clock time lies in the hours, the minute of closing with them."""
        day, of_day = divmod(clock, DAY)
        return clock >= 0 and self.works_on(day) and of_day <= self.long

    def day_and_clock(self, clock: int) -> tuple[int, str]:
        """Return the day, counted from 1, and the time of day, as ``(2, "08:00")``."""
        day, of_day = divmod(self.opens + clock, DAY)
        return day + 1, f"{of_day // HOUR:02}:{of_day % HOUR // MINUTE:02}"


def hours_of(shop: Shop) -> Hours:
    """Return the hours of a shop; ValueError when it is never open."""
    if len(set(shop.days_off)) >= WEEK or shop.closes <= shop.opens:
        raise ValueError("the shop is never open")
    off = frozenset(shop.days_off)
    shut: tuple[int, ...] = ()
    if isinstance(shop.start, date):
        dates = (shop.start + timedelta(days=days) for days in count())
        first = next(day for day in dates if day.weekday() not in off and day not in shop.holidays)
        weekday = first.weekday()
        later = (day for day in shop.holidays if day > first and day.weekday() not in off)
        shut = tuple(sorted((day - first).days for day in later))
    else:
        weekday = next(day % WEEK for day in count(shop.start or 0) if day % WEEK not in off)
    working = tuple((weekday + day) % WEEK not in off for day in range(WEEK))
    return Hours(shop.opens, shop.closes - shop.opens, working, shut)


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
