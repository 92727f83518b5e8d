"""The place, the way in and the wall said in other words."""

from __future__ import annotations

from dryfit.diagnostics import Hint
from dryfit.notes.mistake import Mistake, Repair
from dryfit.notes.mistakes.stumble import Stumble

_EXAMPLES = {
    "PLACED": "place 2398 to 2404 wide, ceiling 2400, skirting 60 x 15, floor 8 out",
    "_SCRIBE": "scribe 30 at left and right",
    "_WAYIN": "way in 720 wide, 1980 high, turn 900",
    "HANGS": "hangs on a stud wall, 1400 up",
    "FIXED": "fixed to the wall",
}
_OUTSIDE = ("garden", "terrace", "balcony", "outside", "porch")


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


CASES = (said_of_the_place,)
