"""The place, the way in and the wall said in other words."""

from __future__ import annotations

import re

from dryfit.diagnostics import Hint
from dryfit.notes.mistake import Mistake, Repair
from dryfit.notes.mistakes.stumble import Stumble

_EXAMPLES = {
    "PLACED": "place {2398} to {2404} wide, ceiling {2400}, skirting {60} x {15}, floor {8} out",
    "_SCRIBE": "scribe {30} at left and right",
    "_WAYIN": "way in {720} wide, {1980} high, turn {900}",
    "HANGS": "hangs on a stud wall, {1400} up",
    "FIXED": "fixed to the wall",
}
_OF_THE_ROOM = re.compile(r" *(ceiling|skirting|baseboard)(?: board)? +(?=[0-9½¼¾])", re.IGNORECASE)
_OUTSIDE = ("garden", "terrace", "balcony", "outside", "porch")


def stops_too_early(stumble: Stumble) -> Mistake | None:
    """``place``, ``way in``: the line has not begun to say anything."""
    if stumble.opener not in _EXAMPLES or len(stumble.failure.tokens) > 1 or stumble.written:
        return None
    return Mistake(
        "line-unfinished",
        f"the line stops after `{stumble.text.strip()}`",
        stumble.span(0, len(stumble.text.rstrip())),
        (Hint(f"for example `{_EXAMPLES[stumble.opener]}`"),),
    )


def room_without_place(stumble: Stumble) -> Mistake | None:
    """``ceiling 2400``: the ceiling is told with the place."""
    found = _OF_THE_ROOM.match(stumble.text)
    if not found or stumble.opener not in ("", "NAME", "VALUE") or _has_more(stumble):
        return None
    repair = Repair("write `place` first", stumble.span(found.start(1), found.start(1)), "place ")
    return Mistake(
        "not-of-a-place",
        f"`{found.group(1)}` is told on the line of the place",
        stumble.span(*found.span(1)),
        (repair,),
    )


def _has_more(stumble: Stumble) -> bool:
    return len(stumble.failure.tokens) > 1


def scribe_without_at(stumble: Stumble) -> Mistake | None:
    """``scribe 30 left``, ``scribe 30 on left``: at left."""
    if stumble.opener != "_SCRIBE" or "_AT" not in stumble.takes or not stumble.written:
        return None
    if stumble.written.lower() in ("on", "from", "to", "along"):
        repair = stumble.replacing("write `at`", "at")
    else:
        repair = stumble.inserting("write `at`", stumble.at, "at ")
    message = "where it is scribed stands behind `at`"
    return Mistake("place-alone", message, stumble.place, (repair,), guess=True)


def said_of_the_place(stumble: Stumble) -> Mistake | None:
    """``place in the garden``, ``way in through the hall``: an example says how it is said."""
    example = _EXAMPLES.get(stumble.opener)
    if example is None:
        return None
    advice: list[Hint | Repair] = [Hint(f"for example `{example}`")]
    if stumble.opener == "PLACED" and any(word.text in _OUTSIDE for word in stumble.words):
        whole = stumble.span(0, len(stumble.text))
        advice.insert(0, Repair("in rain and sun?", whole, "place outdoors", stands_alone=True))
    what = f"`{stumble.written}`" if stumble.written else "the end of the line"
    return Mistake(
        "not-of-a-place",
        f"{what} does not fit here",
        stumble.place,
        tuple(advice),
    )


START_CASES = (stops_too_early, room_without_place)
CASES = (scribe_without_at, said_of_the_place)
