"""Reading one value of a shop file: from what TOML gives to exact lengths, tenths and names."""

from __future__ import annotations

import re
from collections.abc import Mapping
from datetime import date, datetime
from fractions import Fraction
from itertools import pairwise

from dryfit.quantities.kinds import LENGTH, TIME, Kind
from dryfit.quantities.read import UnreadableQuantityError, read_of_kind

FORMAT = "dryfit-shop/1"
TENTHS = 10
"""Tenths in a minute."""

WEEKDAYS = ("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday")
CUTTER_KINDS = ("blade", "set", "bit", "drill", "chisel")

_CLOCK = r"([01]?\d|2[0-4]):([0-5]\d)"
_HOURS = re.compile(rf"\s*{_CLOCK}\s*-\s*{_CLOCK}\s*", re.ASCII)
_DATE = re.compile(r"2\d{3}-\d{2}-\d{2}", re.ASCII)
_A_DATE = 'write year, month and day: "2026-12-05"'
_WIDTHS = re.compile(r"(.+?)\s+to\s+(.+?)\s+by\s+(.+)")
_PERCENT = re.compile(r"\s*(\d{1,3})\s*%\s*", re.ASCII)
_EXAMPLES = {LENGTH: '"3.2 mm" or "1/8 in"', TIME: '"1.5 min" or "24 h"'}


class WrongValueError(ValueError):
    """The value does not fit its key; the message completes "`key`: ...", the hint is an action."""

    def __init__(self, message: str, hint: str, code: str = "shop-wrong-value") -> None:
        super().__init__(message)
        self.hint = hint
        self.code = code


def file_format(value: object) -> str:
    """Return the format; WrongValueError unless it is the one that this version reads."""
    if value != FORMAT:
        raise WrongValueError(
            "not a format that this version reads",
            f'write format = "{FORMAT}"',
            "shop-wrong-format",
        )
    return FORMAT


def words(value: object) -> str:
    """Return a text that is not empty."""
    if not isinstance(value, str) or not value.strip():
        raise WrongValueError("a text belongs here", 'write it in quotes, such as "white glue"')
    return value


def truth(value: object) -> bool:
    """Return true or false."""
    if not isinstance(value, bool):
        raise WrongValueError("true or false belongs here", "write true or false, without quotes")
    return value


def count(value: object) -> int:
    """Return a whole number from 1."""
    if not isinstance(value, int) or isinstance(value, bool) or not 1 <= value <= 999:
        hint = (
            "write it without quotes" if isinstance(value, str) else "1 is the least, 999 the most"
        )
        raise WrongValueError("a whole number from 1 to 999 belongs here", hint)
    return value


def length(value: object) -> Fraction:
    """Return millimetres."""
    return _of_kind(value, LENGTH)


def positive_length(value: object) -> Fraction:
    """Return millimetres, more than 0."""
    millimetres = _of_kind(value, LENGTH)
    if not millimetres:
        raise WrongValueError(
            "0 is no width", f"write what you measured, such as {_EXAMPLES[LENGTH]}"
        )
    return millimetres


def tenths(value: object) -> int:
    """Return a time in whole tenths of a minute."""
    exact = rate(value)
    if exact.denominator != 1:
        raise WrongValueError("finer than a tenth of a minute", 'round it, such as "1.5 min"')
    return exact.numerator


def rate(value: object) -> Fraction:
    """Return a time in exact tenths of a minute, perhaps not whole."""
    return _of_kind(value, TIME) * TENTHS


def hours(value: object) -> tuple[int, int]:
    """Return the begin and the end of the working day in tenths after midnight."""
    match = _HOURS.fullmatch(value) if isinstance(value, str) else None
    if match is None:
        raise WrongValueError("not the hours of a day", 'write them as "08:00-16:00"')
    opens, closes = ((60 * int(match[hour]) + int(match[hour + 1])) * TENTHS for hour in (1, 3))
    if not opens < closes <= 24 * 60 * TENTHS:
        raise WrongValueError("the day must end after it begins", 'write it as "08:00-16:00"')
    return opens, closes


def days_off(value: object) -> tuple[tuple[int, ...], tuple[date, ...]]:
    """Return days of the week, Monday 0, and single days, each in order."""
    if not isinstance(value, list):
        raise WrongValueError("a list of days belongs here", 'write ["Saturday", "Sunday"]')
    days = {_day(each) for each in value}
    week = tuple(sorted(day for day in days if isinstance(day, int)))
    if len(week) == len(WEEKDAYS):
        raise WrongValueError("no day is left to work on", "leave out a day")
    return week, tuple(sorted(day for day in days if isinstance(day, date)))


def first_day(value: object) -> date | int:
    """Return a date, or a day of the week, Monday 0."""
    return _day(value)


def _day(value: object) -> date | int:
    # TOML has dates of its own; one with a time of day is none.
    if isinstance(value, date) and not isinstance(value, datetime):
        value = value.isoformat()
    text = value.strip().lower() if isinstance(value, str) else ""
    if text in WEEKDAYS:
        return WEEKDAYS.index(text)
    if _DATE.fullmatch(text):
        try:
            return date.fromisoformat(text)
        except ValueError:
            raise WrongValueError(f"there is no {text} in the calendar", _A_DATE) from None
    said = f"`{value}`" if isinstance(value, str) else "this"
    raise WrongValueError(f"{said} is no day", 'write "Saturday", or a date as "2026-12-05"')


def names(value: object) -> tuple[str, ...]:
    """Return a list of texts, in lower case."""
    if not isinstance(value, list) or not all(isinstance(name, str) for name in value):
        raise WrongValueError("a list of texts belongs here", 'write it as ["height", "fence"]')
    return tuple(name.lower() for name in value)


def grits(value: object) -> tuple[str, ...]:
    """Return grits of sandpaper, coarse to fine."""
    rows = names(value)
    if not rows or not all(row.isascii() and row.isdigit() for row in rows):
        raise WrongValueError("a list of grits belongs here", 'write it as ["120", "180"]')
    if any(int(first) >= int(then) for first, then in pairwise(rows)):
        raise WrongValueError("a coarser grit after a finer one", "write the coarsest first")
    return rows


def share(value: object) -> Fraction:
    """Return a share of 1, from a percentage."""
    match = _PERCENT.fullmatch(value) if isinstance(value, str) else None
    if match is None or int(match[1]) > 100:
        raise WrongValueError("a share from 0 % to 100 % belongs here", 'write it as "50 %"')
    return Fraction(int(match[1]), 100)


def cutter_kind(value: object) -> str:
    """Return one of `CUTTER_KINDS`."""
    if value not in CUTTER_KINDS:
        kinds = ", ".join(CUTTER_KINDS)
        raise WrongValueError("no kind of cutter", f"write one of {kinds}, in quotes")
    return str(value)


def one_width(value: object) -> tuple[Fraction, Fraction, Fraction]:
    """Return narrowest, widest and step of a cutter with one width."""
    width = positive_length(value)
    return width, width, Fraction(0)


def widths(value: object) -> tuple[Fraction, Fraction, Fraction]:
    """Return narrowest, widest and step of a set, from "6 mm to 20 mm by 0.1 mm"."""
    match = _WIDTHS.fullmatch(value) if isinstance(value, str) else None
    if match is None:
        raise WrongValueError("not a range of widths", 'write it as "6 mm to 20 mm by 0.1 mm"')
    narrowest, widest, step = (positive_length(part) for part in match.groups())
    if narrowest > widest:
        raise WrongValueError("the widest comes first", "write the narrowest width first")
    return narrowest, widest, step


def between(value: object) -> tuple[tuple[str, str, int], ...]:
    """Return rows (from, to, tenths) of a list of `{ from, to, change }`."""
    rows = value if isinstance(value, list) else [None]
    return tuple(_between_row(row) for row in rows)


def _between_row(row: object) -> tuple[str, str, int]:
    if not isinstance(row, Mapping) or set(row) != {"from", "to", "change"}:
        raise WrongValueError(
            "not a list of costs between cutters",
            'write it as [{ from = "*", to = "dado", change = "8 min" }]',
        )
    return words(row["from"]), words(row["to"]), tenths(row["change"])


def _of_kind(value: object, kind: Kind) -> Fraction:
    example = _EXAMPLES[kind]
    if isinstance(value, int | float) and not isinstance(value, bool):
        hint = f"write it in quotes with its unit, such as {example}"
        raise WrongValueError("the unit is missing", hint, "shop-no-unit")
    if not isinstance(value, str):
        raise WrongValueError(
            f"{kind.words()} belongs here", f"write it in quotes, such as {example}"
        )
    try:
        return read_of_kind(value, kind)
    except UnreadableQuantityError as problem:
        raise WrongValueError(str(problem), f"write {kind.words()}, such as {example}") from None
