"""Mistakes in lines of wood on hand and of what the yard sells."""

from __future__ import annotations

import re

from dryfit.diagnostics import Hint
from dryfit.notes.mistake import Mistake, Repair
from dryfit.notes.mistakes.stumble import Stumble
from dryfit.notes.reading.runs import kinds_at

_VOLUME = re.compile(r"(?:board )?(?:feet|foot)\b|(?:cubic|cu) ", re.IGNORECASE)
_TIMBER = re.compile(r"(?!some\b)[^\W\d][^,\d]*(?=,)")
_SHEETS = re.compile(r"(?:ply|plywood|mdf|hardboard|chipboard|particle ?board)$", re.IGNORECASE)
_ACROSS = re.compile(r"(?:across|crosswise|(?:the )?(?:short|other) way)\b", re.IGNORECASE)
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


def kind_of_stock(stumble: Stumble) -> Mistake | None:
    """``buy birch ply, 2440 x 1220 x 18``: in which pieces it comes is not said."""
    start = _of_bought_wood(stumble)
    if "STOCK" in stumble.takes and stumble.opener in ("HAVE", "BUY"):
        start = stumble.at
    found = None if start is None else _TIMBER.match(stumble.text, start)
    if found is None:
        return None
    timber = found.group().removeprefix("of ").rstrip()
    if " of " in timber:
        return None  # "bords of ash": the kind is there, and misspelled
    kind = "sheets" if _SHEETS.search(timber) else "boards"
    place = stumble.span(found.start(), found.start() + len(found.group().rstrip()))
    repair = Repair(f"write `{kind} of {timber}`", place, f"{kind} of {timber}")
    return Mistake("unknown-stock", f"{kind}, offcuts, or in which other pieces?", place, (repair,))


def _of_bought_wood(stumble: Stumble) -> int | None:
    """Return where the name begins of a bought thing that is rough, or sold by the piece."""
    index = stumble.word_at(stumble.at)
    if stumble.opener != "BOUGHT" or stumble.words[0].text != "buy" or index is None:
        return None
    of_wood = {"STATE", "PERUNIT"} & set(kinds_at(stumble.words, index))
    return stumble.words[1].start if of_wood else None


def grain_across(stumble: Stumble) -> Mistake | None:
    """``grain across``: the sizes of a sheet say which way its grain runs."""
    found, last = _ACROSS.match(stumble.rest), stumble.previous
    if found is None or last is None or last.type != "SHEETGRAIN":
        return None
    return Mistake(
        "grain-across",
        "the grain of a sheet runs along the size that is written first",
        stumble.span(last.start_pos or 0, stumble.at + found.end()),
        (Hint("write the size along the grain first, as in `{1220} x {2440} x {18}`"),),
    )


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


CASES = (volume_of_wood, unit_of_line, stock_behind_timber, kind_of_stock, grain_across)
