"""Days of the shop: which weekday and date day 1 is, which days are off, what a day is called.

No clock is read: a plan has dates where the shop file or ``--start`` tells the first.
"""

from __future__ import annotations

from datetime import date, timedelta

from dryfit.shop.shop import Shop

WEEK = 7
DAY_NAMES = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")
_MONTHS = (
    "January",
    "February",
    "March",
    "April",
    "May",
    "June",
    "July",
    "August",
    "September",
    "October",
    "November",
    "December",
)
_NUMBERS = ("first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth")
_SHORT = 3
"""Letters of a short name: Wed 9 Dec."""


def first_date(shop: Shop) -> date | None:
    """Return the date of day 1, the first day of work from the start on; None without dates."""
    if not isinstance(shop.start, date):
        return None
    day = shop.start
    while day.weekday() in shop.days_off or day in shop.holidays:
        day += timedelta(days=1)
    return day


def first_weekday(shop: Shop) -> int:
    """Return the weekday of day 1, Monday 0; from a Monday on where nobody told."""
    day = first_date(shop)
    if day is not None:
        return day.weekday()
    told = shop.start if isinstance(shop.start, int) else 0
    week = ((told + step) % WEEK for step in range(WEEK))
    return next((day for day in week if day not in shop.days_off), told)


def single_days_off(shop: Shop) -> frozenset[int]:
    """Return the single days off after day 1, counted from it as 0; none without dates."""
    first = first_date(shop)
    if first is None:
        return frozenset()
    return frozenset((day - first).days for day in shop.holidays if day > first)


def short_name(shop: Shop, day: int) -> str:
    """Return what a day, counted from 1, is called beside its number; empty where nobody told.

    ``Wed 9 Dec`` where the plan has dates, ``Wed`` where only a weekday was told.
    """
    if shop.start is None:
        return ""
    first = first_date(shop)
    if first is None:
        return DAY_NAMES[(first_weekday(shop) + day - 1) % WEEK][:_SHORT]
    then = first + timedelta(days=day - 1)
    return f"{DAY_NAMES[then.weekday()][:_SHORT]} {then.day} {_MONTHS[then.month - 1][:_SHORT]}"


def full_name(shop: Shop, day: int) -> str:
    """Return a day, counted from 1: ``Thursday 17 December 2026``, ``Thursday of the second week``.

    Weeks begin on Mondays; the first is that of day 1.
    """
    first = first_date(shop)
    if first is not None:
        return date_in_words(first + timedelta(days=day - 1))
    weeks, weekday = divmod(first_weekday(shop) + day - 1, WEEK)
    week = f"the {_NUMBERS[weeks]} week" if weeks < len(_NUMBERS) else f"week {weeks + 1}"
    return f"{DAY_NAMES[weekday]} of {week}"


def date_in_words(day: date) -> str:
    """Return a date: ``Thursday 17 December 2026``."""
    return f"{DAY_NAMES[day.weekday()]} {day.day} {_MONTHS[day.month - 1]} {day.year}"
