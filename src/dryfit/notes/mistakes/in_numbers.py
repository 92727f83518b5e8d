"""Numbers that are none: a comma or a letter inside, an unknown unit, nothing below the line."""

from __future__ import annotations

import re

from dryfit.diagnostics import Hint
from dryfit.notes.mistake import Mistake, Repair
from dryfit.notes.mistakes.stumble import Stumble
from dryfit.notes.reading.near import nearest
from dryfit.notes.reading.numbers import GLYPHS, MOST_DIGITS

_WITH_COMMA = re.compile(r"([0-9]+),([0-9]+)")
_WITH_LETTERS = re.compile(r"[0-9]+[0-9OolI]*[OolI][0-9OolI]*(?![^\W_])")
_WITH_UNIT = re.compile(rf"([0-9./ {''.join(GLYPHS)}-]*[0-9{''.join(GLYPHS)}])([^\W\d_]+)")
_AS_DIGITS = str.maketrans({"O": "0", "o": "0", "l": "1", "I": "1"})
_LENGTHS = ("mm", "cm", "m", "in", "inch", "inches", "ft", "feet")
_TIMES = ("min", "h", "hours", "days")


def faulty_number(stumble: Stumble) -> Mistake | None:
    """A fraction over 0, or more digits than any length of wood has."""
    if stumble.failure.fault == "zero-denominator":
        return Mistake("zero-denominator", "a fraction cannot have 0 below the line", stumble.place)
    if stumble.failure.fault == "number-too-long":
        return Mistake(
            "number-too-long",
            f"a number can have at most {MOST_DIGITS} digits",
            stumble.place,
        )
    return None


def comma_in_number(stumble: Stumble) -> Mistake | None:
    """``12,5``: decimal sign, thousands mark or list."""
    found = _WITH_COMMA.match(stumble.text, stumble.at)
    if not found:
        return None
    whole, part = found.groups()
    span = stumble.span(*found.span())
    readings = [
        Repair("as a decimal number", span, f"{whole}.{part}"),
        Repair("as two numbers", span, f"{whole}, {part}"),
    ]
    if len(part) == 3:
        readings.insert(0, Repair("as thousands", span, f"{whole}{part}"))
    return Mistake(
        "comma-in-number",
        f"the comma in `{found.group()}` can be read in {_COUNTS[len(readings)]} ways",
        span,
        (*readings, Hint("or switch the decimal comma on for the file: `units mm, decimal comma`")),
    )


def letter_in_number(stumble: Stumble) -> Mistake | None:
    """``6O``: a letter where a digit belongs."""
    found = _WITH_LETTERS.match(stumble.text, stumble.at)
    if not found:
        return None
    span = stumble.span(*found.span())
    digits = found.group().translate(_AS_DIGITS)
    letter = next(sign for sign in found.group() if sign in "OolI")
    return Mistake(
        "letter-in-number",
        f"`{found.group()}` has the letter {letter} where a digit belongs",
        span,
        (Repair(f"write `{digits}`", span, digits, stands_alone=True),),
    )


def unknown_unit(stumble: Stumble) -> Mistake | None:
    """``22mn``: letters right behind a number that are no unit."""
    found = _WITH_UNIT.match(stumble.text, stumble.at)
    if not found:
        return None
    letters = found.group(2)
    span = stumble.span(*found.span(2))
    units = _TIMES if stumble.opener in ("GLUEUP", "FINISH") else _LENGTHS
    near = [Repair(f"did you mean `{unit}`?", span, unit) for unit in nearest(letters, units)]
    return Mistake(
        "unknown-unit",
        f"`{letters}` is not a unit",
        span,
        (*near, Hint("lengths are in mm, cm, m, in or ft, times in min, h or days")),
    )


_COUNTS = {2: "two", 3: "three"}
CASES = (faulty_number, comma_in_number, letter_in_number, unknown_unit)
