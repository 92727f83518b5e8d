"""The number at a place of a line, as what the parser can take there: count, number or measure."""

from __future__ import annotations

import re
from collections.abc import Container

from lark import Token

from dryfit.notes.reading import numbers
from dryfit.notes.reading.numbers import Spelled
from dryfit.notes.reading.tokens import Fault, token

DIGITS = frozenset("0123456789")
_SIGN = re.compile(r"(?<=°)[cf]\b|(?:kg|lbs?|eur|gbp|usd|chf|kr)\b", re.IGNORECASE)
"""What may stand right behind a number, and is no unit of length, time or angle."""


def begins_number(text: str, at: int) -> bool:
    """Return whether a digit, a fraction or a decimal point stands at the place."""
    return text[at] in DIGITS or text[at] in numbers.GLYPHS or _is_decimal_point(text, at)


def is_size_sign(text: str, at: int) -> bool:
    """Return whether an x stands between sizes: "40 x 40", "40x40"."""
    before, after = text[at - 1 : at], text[at + 1 : at + 2]
    return before in DIGITS or before in numbers.GLYPHS or after in DIGITS


def spelled_at(text: str, at: int, *, decimal_comma: bool) -> Spelled | None:
    """Return the measure or number that is spelled at the place, or None."""
    return numbers.measure(text, at, decimal_comma=decimal_comma) or numbers.bare(
        text, at, decimal_comma=decimal_comma
    )


def number_at(
    text: str, at: int, takes: frozenset[str], words: Container[int], *, decimal_comma: bool
) -> Token | Fault | None:
    """Return the number at the place, or None where the parser can take none such.

    `words` are the places at which words of the line begin.
    """
    spelled: Spelled | None = None
    terminal = ""
    if "MEASURE" in takes:
        terminal, spelled = "MEASURE", numbers.measure(text, at, decimal_comma=decimal_comma)
    if spelled is None and "NUMBER" in takes:
        spelled = numbers.bare(text, at, decimal_comma=decimal_comma)
        whole = spelled is not None and spelled.whole and "INT" in takes
        terminal = "INT" if whole else "NUMBER"
    if spelled is None and "INT" in takes:
        terminal, spelled = "INT", numbers.count(text, at)
    if spelled is None:
        return None
    if spelled.fault:
        return Fault(spelled.end, spelled.fault)
    if _runs_on(text, spelled.end, words):
        return None
    return token(terminal, spelled, at, spelled.end)


def _is_decimal_point(text: str, at: int) -> bool:
    return text[at] == "." and text[at + 1 : at + 2] in DIGITS


def _runs_on(text: str, end: int, words: Container[int]) -> bool:
    # Letters or a comma and digits right behind a number: "22mn", "6O", "12,5"; but "65°F", "6kg".
    if _SIGN.match(text, end):
        return False
    if end in words or text[end : end + 1].isalpha():
        return text[end] not in "xX"
    return text[end : end + 1] == "," and text[end + 1 : end + 2] in DIGITS
