"""Signs in the wrong place, and brackets that do not pair."""

from __future__ import annotations

from dryfit.diagnostics import Hint
from dryfit.notes.mistake import Mistake, Repair
from dryfit.notes.mistakes.stumble import Stumble

_MEANT = {
    "@": "at",
    "[": "(",
    "{": "(",
    "]": ")",
    "}": ")",
    "!": "",
    "?": "",
    "%": "",
    "|": ",",
    "\\": "/",
    "•": "",
}
_AT_LINE_END = ".!?:"


def bracket(stumble: Stumble) -> Mistake | None:
    """A bracket that is never closed, or closed without being open."""
    before = stumble.text[: stumble.at]
    still_open = before.count("(") - before.count(")")
    if stumble.written == ")" and still_open <= 0:
        return Mistake(
            "bracket-extra",
            "this `)` has no `(` before it",
            stumble.place,
            (stumble.replacing("take it out", ""),),
        )
    if still_open > 0 and "_RPAR" in stumble.takes:
        opened = _last_open(before)
        return Mistake(
            "bracket-open",
            "this bracket is never closed",
            stumble.span(opened, opened + 1),
            (stumble.inserting("close it here", len(before.rstrip(" ,")), ")"),),
        )
    return None


def stray_sign(stumble: Stumble) -> Mistake | None:
    """A sign that means nothing, or nothing at this place."""
    sign = stumble.written
    if len(sign) != 1 or sign.isalnum():
        return None
    if stumble.rest in _AT_LINE_END:
        return Mistake(
            "stray-sign",
            f"a line does not end in `{sign}`",
            stumble.place,
            (stumble.replacing("take it out", ""),),
        )
    if sign in _MEANT:
        meant = _MEANT[sign]
        advice = f"write `{meant}`" if meant else "take it out"
        return Mistake(
            "stray-sign",
            f"the sign `{sign}` has no meaning here",
            stumble.place,
            (stumble.replacing(advice, meant, stands_alone=True),),
        )
    if sign == "-" and stumble.rest[1:].lstrip()[:1].isdigit():
        return _less_than_nothing(stumble)
    return Mistake(
        "stray-sign",
        f"the sign `{sign}` does not fit here",
        stumble.place,
        (
            stumble.replacing("take it out", ""),
            Repair("write a comma", stumble.place, ","),
            Hint("a remark begins with #"),
        ),
    )


def _less_than_nothing(stumble: Stumble) -> Mistake:
    last = stumble.previous
    before = stumble.text[last.start_pos : last.end_pos] if last is not None else ""
    other = {"up": "down", "down": "up"}.get(before.lower())
    if other is None:
        hint = Hint("say the direction in words, such as `{5} from front` or `set in {5} across`")
    else:
        end = "bottom" if before.lower() == "up" else "top"
        hint = Hint(
            f"`{before}` is measured from the {end} of the piece, `{other}` from the other end"
        )
    return Mistake(
        "stray-sign",
        "a distance cannot be less than nothing",
        stumble.place,
        (hint, stumble.replacing("without the sign the line reads so", "")),
    )


def _last_open(text: str) -> int:
    depth = 0
    for at in range(len(text) - 1, -1, -1):
        depth += {")": 1, "(": -1}.get(text[at], 0)
        if depth < 0:
            return at
    return 0
