"""Every spelling of a number: whole, decimal, mixed, with glyphs, with a unit, feet and inches."""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache

from dryfit.quantities import UNITS, Quantity

MOST_DIGITS = 9

GLYPHS = {
    "½": Fraction(1, 2),
    "⅓": Fraction(1, 3),
    "⅔": Fraction(2, 3),
    "¼": Fraction(1, 4),
    "¾": Fraction(3, 4),
    "⅕": Fraction(1, 5),
    "⅖": Fraction(2, 5),
    "⅗": Fraction(3, 5),
    "⅘": Fraction(4, 5),
    "⅙": Fraction(1, 6),
    "⅚": Fraction(5, 6),
    "⅛": Fraction(1, 8),
    "⅜": Fraction(3, 8),
    "⅝": Fraction(5, 8),
    "⅞": Fraction(7, 8),
}
COUNT_WORDS = {
    word: number
    for number, word in enumerate(
        [
            "one",
            "two",
            "three",
            "four",
            "five",
            "six",
            "seven",
            "eight",
            "nine",
            "ten",
            "eleven",
            "twelve",
        ],
        start=1,
    )
}

_GLYPH = f"[{''.join(GLYPHS)}]"
_PART = rf"(?:[0-9]+/[0-9]+|{_GLYPH})"
_VALUE = (
    rf"(?:[0-9]+(?:[ ]+|-)[0-9]+/[0-9]+|[0-9]+(?:[ ]*|-){_GLYPH}|{_PART}"
    r"|[0-9]*\.[0-9]+|[0-9]+)"
)
_FEET = r"(?:'(?!')|ft\b|foot\b|feet\b)"
_INCHES = r"(?:\"|''|in\b|inch\b|inches\b)"
_WORDS = "|".join(sorted((word for word in UNITS if word.isalpha()), key=len, reverse=True))
_UNIT = rf"(?:\"|''|'|°|(?:{_WORDS})(?![^\W_]))"

_FEET_AND_INCHES = re.compile(
    rf"({_VALUE})[ ]*{_FEET}[ ]*-?[ ]*({_VALUE})[ ]*{_INCHES}", re.IGNORECASE
)
_HOURS_AND_MINUTES = re.compile(
    rf"({_VALUE})[ ]*(?:h|hours?|hrs?)\b[ ]*({_VALUE})[ ]*(?:min|mins|minutes?)\b", re.IGNORECASE
)
_MEASURE = re.compile(rf"({_VALUE})[ ]*({_UNIT})", re.IGNORECASE)
_BARE = re.compile(_VALUE)
_COMMA_MEASURE = re.compile(rf"([0-9]+,[0-9]+)[ ]*({_UNIT})", re.IGNORECASE)
_COMMA_VALUE = re.compile(r"[0-9]+,[0-9]+")
_WHOLE = re.compile(r"[0-9]+")
_HYPHENATED = re.compile(rf"[0-9]+-{_PART}")


@dataclass(frozen=True, slots=True)
class Spelled:
    """A number in the text: where it ends, its bare value and what it measures, if a unit stands.

    `value` is None when the fraction has 0 below the line or the digits are too many: `fault`
    then says which (``zero-denominator`` or ``number-too-long``).
    """

    end: int
    value: Fraction | None
    quantity: Quantity | None
    whole: bool
    hyphenated: bool = False
    fault: str | None = None

    def __str__(self) -> str:
        """Return a word for the parser's token, which is a string with this as its value."""
        return "number"


@lru_cache(maxsize=4096)
def _bare(text: str) -> Fraction | None:
    if text[-1] in GLYPHS:
        whole = text[:-1].rstrip(" -")
        return (Fraction(whole) if whole else Fraction(0)) + GLYPHS[text[-1]]
    parts = re.split(r"[ ]+|-", text)
    if parts[-1].endswith(tuple("0123456789")) and "/" in parts[-1]:
        above, below = parts[-1].split("/")
        if int(below) == 0:
            return None
        return (Fraction(parts[0]) if len(parts) > 1 else Fraction(0)) + Fraction(
            int(above), int(below)
        )
    return Fraction(text)


def measure(text: str, at: int, *, decimal_comma: bool) -> Spelled | None:
    """Return the number with its unit that stands at the place, or None."""
    both = _FEET_AND_INCHES.match(text, at)
    if both:
        feet, inches = both.group(1), both.group(2)
        return _spelled(both.end(), (feet, "ft"), (inches, "in"))
    times = _HOURS_AND_MINUTES.match(text, at)
    if times:
        return _spelled(times.end(), (times.group(1), "h"), (times.group(2), "min"))
    if decimal_comma:
        comma = _COMMA_MEASURE.match(text, at)
        if comma:
            return _spelled(comma.end(), (comma.group(1).replace(",", "."), comma.group(2)))
    one = _MEASURE.match(text, at)
    return _spelled(one.end(), (one.group(1), one.group(2))) if one else None


def bare(text: str, at: int, *, decimal_comma: bool) -> Spelled | None:
    """Return the number without any unit that stands at the place, or None."""
    comma = _COMMA_VALUE.match(text, at) if decimal_comma else None
    if comma:
        return _spelled(comma.end(), (comma.group().replace(",", "."), ""))
    one = _BARE.match(text, at)
    return _spelled(one.end(), (one.group(), "")) if one else None


def count(text: str, at: int) -> Spelled | None:
    """Return the whole number that stands at the place, or None."""
    digits = _WHOLE.match(text, at)
    return _spelled(digits.end(), (digits.group(), "")) if digits else None


def _spelled(end: int, *parts: tuple[str, str]) -> Spelled:
    total = Fraction(0)
    hyphenated = False
    for text, word in parts:
        if any(len(digits) > MOST_DIGITS for digits in re.findall(r"[0-9]+", text)):
            return Spelled(end, None, None, whole=False, fault="number-too-long")
        value = _bare(text)
        if value is None:
            return Spelled(end, None, None, whole=False, fault="zero-denominator")
        hyphenated = hyphenated or bool(_HYPHENATED.match(text))
        total += value * UNITS[word.lower()].size if word else value
    text, last = parts[-1]
    if not last:
        return Spelled(end, total, None, whole=text.isdigit(), hyphenated=hyphenated)
    unit = UNITS[last.lower()]
    quantity = Quantity(total, unit.kind)
    return Spelled(end, total / unit.size, quantity, whole=False, hyphenated=hyphenated)
