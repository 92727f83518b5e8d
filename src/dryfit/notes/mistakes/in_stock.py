"""Mistakes in lines of wood on hand and of what the yard sells."""

from __future__ import annotations

import re

from dryfit.diagnostics import Hint
from dryfit.notes.mistake import Mistake, Repair
from dryfit.notes.mistakes.stumble import Stumble
from dryfit.notes.reading.runs import kinds_at

_VOLUME = re.compile(r"(?:board )?(?:feet|foot)\b|(?:cubic|cu) ", re.IGNORECASE)
_UNIT = re.compile(r"in (?:inches|inch|mm|cm)\b", re.IGNORECASE)


def stock_behind_timber(stumble: Stumble) -> Mistake | None:
    """``have 2 ash boards``: what it is stands before the timber."""
    if "STOCK" not in stumble.takes or stumble.opener not in ("HAVE", "BUY"):
        return None
    first = stumble.word_at(stumble.at)
    if first is None:
        return None
    last = first + 1
    while last < len(stumble.words) and stumble.words[last].follows:
        if "STOCK" in kinds_at(stumble.words, last) and not _goes_on(stumble, last + 1):
            start, end = stumble.at, stumble.words[last].end
            timber = stumble.text[start : stumble.words[last - 1].end]
            kind = stumble.text[stumble.words[last].start : end]
            place = stumble.span(start, end)
            repair = Repair(f"write `{kind} of {timber}`", place, f"{kind} of {timber}")
            return Mistake("of-missing", "the timber stands behind `of`", place, (repair,))
        last += 1
    return None


def _goes_on(stumble: Stumble, index: int) -> bool:
    return index < len(stumble.words) and stumble.words[index].text == "of"


def volume_of_wood(stumble: Stumble) -> Mistake | None:
    """``have 20 board feet of ash``: how much there is, but not of which sizes."""
    last = stumble.previous
    if stumble.opener != "HAVE" or last is None or not _VOLUME.match(stumble.rest):
        return None
    if last.type not in ("HAVE", "INT", "STOCK"):
        return None
    return Mistake(
        "unknown-stock",
        "how much wood there is does not say what comes out of it",
        stumble.place,
        (Hint("write each board with its sizes: `have 1 board of ash, {2400} x {160} x {34}`"),),
    )


def unit_of_line(stumble: Stumble) -> Mistake | None:
    """``have in inches 3 boards``: the unit of a line stands in brackets."""
    found = _UNIT.match(stumble.rest)
    if "_LPAR" not in stumble.takes or stumble.opener not in ("HAVE", "BUY") or found is None:
        return None
    unit = found.group().split(" ")[1].lower()
    short = "in" if unit.startswith("in") else unit
    place = stumble.span(stumble.at, stumble.at + found.end())
    return Mistake(
        "unknown-stock",
        "the unit of one line stands in brackets",
        place,
        (Repair(f"write `({short})`", place, f"({short})"),),
    )


CASES = (volume_of_wood, unit_of_line, stock_behind_timber)
