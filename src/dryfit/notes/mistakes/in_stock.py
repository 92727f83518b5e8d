"""Mistakes in lines of wood on hand and of what the yard sells."""

from __future__ import annotations

import re
from fractions import Fraction

from dryfit.diagnostics import Hint
from dryfit.notes.mistake import Mistake, Repair
from dryfit.notes.mistakes.stumble import Stumble
from dryfit.notes.reading.runs import kinds_at
from dryfit.quantities.display import mixed

_VOLUME = re.compile(r"(?:board )?(?:feet|foot)\b|(?:cubic|cu) ", re.IGNORECASE)
_TIMBER = re.compile(r"(?!some\b)[^\W\d][^,\d]*(?=,)")
_SHEETS = re.compile(r"(?:ply|plywood|mdf|hardboard|chipboard|particle ?board)$", re.IGNORECASE)
_ACROSS = re.compile(r"(?:across|crosswise|(?:the )?(?:short|other) way)\b", re.IGNORECASE)
_DRIED = re.compile(
    r"(?:kiln|air|oven)?(?: |-)?(?:dried|dry|seasoned)\b|k\.?d\.?\b|a\.?d\.?\b", re.IGNORECASE
)
_QUARTERS = re.compile(r"([1-9]\d?)/4(?=[ ,]|$)(?: (?=of\b))?(?:of )?")
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
        (
            Hint(
                "leave these words out and write the size along the grain first, as in "
                "`{1220} x {2440} x {18}` for grain that runs the short way"
            ),
        ),
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


def dried(stumble: Stumble) -> Mistake | None:
    """``kiln dried``: how moist the wood is counts as a figure, and that is none."""
    found = _DRIED.match(stumble.rest)
    if stumble.opener not in ("HAVE", "BUY") or found is None:
        return None
    return Mistake(
        "not-understood",
        f"`{found.group()}` gives no figure that could be reckoned with",
        stumble.span(stumble.at, stumble.at + found.end()),
        (Hint("take it out, and write behind the sizes what the meter reads, such as `at 8 %`"),),
    )


def percent_alone(stumble: Stumble) -> Mistake | None:
    """``have 1 board of ash, 2400 x 160 x 27, 12 %``: of what."""
    last = stumble.previous
    if stumble.opener not in ("HAVE", "BUY") or last is None or last.type != "_PERCENT":
        return None
    if "MARK" not in stumble.takes or len(stumble.failure.tokens) < 2:
        return None
    start, end = stumble.failure.tokens[-2].start_pos or 0, last.end_pos or 0
    repair = Repair("if it is how moist the wood is, write `at`", stumble.span(start, start), "at ")
    return Mistake("not-understood", "a share of what?", stumble.span(start, end), (repair,))


def quarters(stumble: Stumble) -> Mistake | None:
    """``have 1 board of 5/4 ash, 96 x 6``: the thickness stands behind the width.

    A board of five quarters is 1 1/4 in thick as it comes from the saw (*common practice*).
    """
    found = _QUARTERS.match(stumble.rest)
    if stumble.opener not in ("HAVE", "BUY") or found is None:
        return None
    inches = Fraction(int(found.group(1)), 4)
    return Mistake(
        "not-understood",
        "how thick a board is stands behind its width",
        stumble.span(stumble.at, stumble.at + len(found.group().rstrip())),
        (Hint(f'take it out, and write `x {mixed(inches)}"` behind length and width'),),
    )


CASES = (
    dried,
    percent_alone,
    quarters,
    volume_of_wood,
    unit_of_line,
    stock_behind_timber,
    kind_of_stock,
    grain_across,
)
