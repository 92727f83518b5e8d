"""Lines that stop too early, and lines that go on after they are complete."""

from __future__ import annotations

import re

from dryfit.diagnostics import Hint
from dryfit.notes.mistake import Mistake, Repair
from dryfit.notes.mistakes.expected import expected_words
from dryfit.notes.mistakes.stumble import Stumble
from dryfit.notes.reading.grammar import END

_STOPS = {
    "BY": ("size-unfinished", "a size stops after"),
    **dict.fromkeys(
        ("_PLUS", "_MINUS", "_STAR", "_SLASH"), ("sum-unfinished", "a sum stops after")
    ),
    **dict.fromkeys(("_EQ", "_IS"), ("value-missing", "there is no value after")),
}
_EXAMPLES = {
    "PIECE": "piece Boot bench",
    "NOTE": "note the top is left loose",
    "UNITS": "units mm",
    "OVERALL": "overall {420} wide, {300} deep, {240} high",
    "TIMBER": "timber ash",
    "HAVE": "have 1 board of ash, {2400} x {160} x {34}, rough",
    "BUY": "buy boards of ash, {2400} x {160} x {34}, rough, 48.00 each",
    "INVENTORY": "stock from offcuts.dryfit",
    "GLUEUP": "glue up base: side frames, long rails",
    "FINISH": "finish hard wax oil, 2 coats, 8 h apart",
    "FEATURE": "groove in aprons: inside, {6} wide, {9} deep, {12} from top",
    "_LET": "let overhang = {15}",
    "BOUGHT": "bought 4 casters, {108} high, under bottom at corners",
    "BARE": "no finish on runners",
    "MEASURED": "measured leg.thickness = {39.6}",
    "DONE": "done: post / end lap",
    "SPOILED": "spoiled: 1 long rail",
    "PATTERN": "pattern box with width, depth, height, board = 12 mm",
    "_ATMOST": "at most {620} high, the window sill",
    "_ATLEAST": "at least {500} wide, two crates",
}


def unfinished(stumble: Stumble) -> Mistake | None:
    """The line ends where something must still come."""
    last = stumble.previous
    twice = last is not None and last.type == "BY" and stumble.written.lower() == "x"
    if last is None or not (twice or stumble.rest[:1] in ("", ",")):
        return None
    assert last.start_pos is not None
    assert last.end_pos is not None
    start, end = last.start_pos, last.end_pos
    place, written = stumble.span(start, end), stumble.text[start:end]
    before = len(stumble.text[:start].rstrip(" " if stumble.rest else " ,"))
    drop = Repair("take it out", stumble.span(before, end), "")
    if last.type in _STOPS:
        code, message = _STOPS[last.type]
        return Mistake(code, f"{message} `{written}`", place, (drop,))
    if last.type == "ORDER":
        return Mistake("order-unfinished", f"{written} what?", place, (Hint(_ORDER_EXAMPLE),))
    if last.type == "PREP":
        return Mistake(
            "joint-without-host",
            f"the line does not say what it goes {written}",
            place,
            (Hint(f"name the part: `{written} legs`"),),
        )
    if stumble.rest:
        return None
    if re.search(r"\bspread (?:up|down|upward)$", stumble.text[:end], re.IGNORECASE):
        place = stumble.span(start, end)
        return Mistake(
            "line-unfinished",
            f"after `{written}` something is missing: spread which way?",
            place,
            (Repair("say it with both words", place, "up and down"),),
        )
    if len(stumble.failure.tokens) == 1:
        return _opener_alone(stumble)
    return Mistake(
        "line-unfinished",
        f"after `{written}` something is missing{expected_words(stumble.takes)}",
        stumble.span(end, end),
        (drop,) if last.type.startswith("_") else (),
    )


def rest_of_line(stumble: Stumble) -> Mistake | None:
    """The line was complete before this."""
    if END not in stumble.takes or not stumble.written:
        return None
    last = stumble.previous
    before = last.end_pos if last is not None and last.end_pos else 0
    stuff = _SHEETS.match(stumble.text[stumble.at :])
    remedies = [Repair("if it is a remark, put # before it", stumble.span(before, before), "  #")]
    if stuff is not None:
        place = stumble.span(before, stumble.at + stuff.end())
        remedies = [Repair("say what it is made of", place, f", of {stuff.group()}")]
    elif "," in stumble.rest:
        # What goes on after a comma is no remark: its words would be lost.
        remedies = []
    return Mistake(
        "rest-of-line",
        f"the line is complete before `{stumble.rest.strip()[:40]}`",
        stumble.span(stumble.at, len(stumble.text)),
        tuple(remedies) or (Hint(_BY_ITSELF),),
    )


_SHEETS = re.compile(r"(?:\w+ )?(?:ply|plywood|mdf|hardboard)\b", re.IGNORECASE)
_BY_ITSELF = "say it in words of `dryfit help language`, or begin a remark with #"


def _opener_alone(stumble: Stumble) -> Mistake:
    place = stumble.span(0, len(stumble.text))
    written = stumble.text.strip()
    if stumble.opener == "INT":
        message = "a count needs the name of a part after it"
        return Mistake("name-missing", message, place, (Hint(f"`{written} legs, upright`"),))
    example = _EXAMPLES.get(stumble.opener)
    if example:
        hint = Hint(f"for example `{example}`")
        return Mistake("line-unfinished", f"nothing stands after `{written}`", place, (hint,))
    return Mistake(
        "line-unfinished",
        f"the line stops after `{written}`",
        place,
        (Hint(f"a part needs its count in front, a joint its host: `{written} onto legs`"),),
    )


_ORDER_EXAMPLE = "for example `finish seat before glue up base`"
