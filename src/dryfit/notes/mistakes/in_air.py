"""Mistakes in what is said of moisture and of the place where the piece will stand."""

from __future__ import annotations

import re

from dryfit.diagnostics import Hint
from dryfit.notes.mistake import Mistake, Repair
from dryfit.notes.mistakes.stumble import Stumble

_STANDS_IN = re.compile(r"(?:it |the piece )?(?:will )?stands? in\b\s*", re.IGNORECASE)
_OF_THE_AIR = frozenset({"MOIST", "SHOPAIR", "_STANDSAT"})


def percent_missing(stumble: Stumble) -> Mistake | None:
    """``wood at 9``: the sign that makes it a moisture is not there."""
    last = stumble.previous
    if stumble.opener not in _OF_THE_AIR or "_PERCENT" not in stumble.takes or last is None:
        return None
    if "SCALE" in stumble.takes and stumble.opener == "SHOPAIR":
        message, repair = "is it the temperature or the humidity?", ("18 C", "60 % humidity")
        hint = Hint(f"write both with their signs: `shop at {repair[0]}, {repair[1]}`")
        return Mistake("line-unfinished", message, stumble.place, (hint,))
    assert last.end_pos is not None
    at = stumble.span(last.end_pos, last.end_pos)
    return Mistake(
        "line-unfinished",
        "a moisture stands in percent, and the sign for it is missing",
        at,
        (Repair("write it behind the figure", at, " %"),),
    )


def unknown_place_to_stand(stumble: Stumble) -> Mistake | None:
    """``stands in the wine store``: the words that are known for how damp a place is."""
    found = _STANDS_IN.match(stumble.text)
    if stumble.failure.tokens or found is None:
        return None
    return Mistake(
        "unknown-opener",
        "no table tells how damp it is there",
        stumble.span(0, len(stumble.text.rstrip())),
        (
            Hint(
                "write `stands in a heated house`, `in an unheated room`, `in a damp place` or "
                "`outdoors`, or what the air does there: `stands at 40 to 65 % humidity`"
            ),
        ),
    )


CASES = (percent_missing, unknown_place_to_stand)
