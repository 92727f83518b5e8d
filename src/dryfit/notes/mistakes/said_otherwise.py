"""Plain English that the language says with other words: each with the words to write."""

from __future__ import annotations

import re

from dryfit.diagnostics import Hint
from dryfit.notes.mistake import Mistake, Repair
from dryfit.notes.mistakes.stumble import Stumble
from dryfit.notes.names import canonical
from dryfit.notes.reading.tokens import end_of, start_of

_UP_TO = re.compile(
    r"\bup to (?:the )?(?P<what>top|bottom|floor|[^\W\d][\w ]*?)(?: of (?:the )?piece)?\s*"
    r"(?=[,;:]|$)",
    re.IGNORECASE,
)
_MADE_OF = re.compile(
    r"\b(?:made|built|put together|assembled)(?: up)? (?:of|from|out of) "
    r"(?:(?P<count>\d{1,3})\b(?: (?:boards|staves|strips|pieces|planks))?)?",
    re.IGNORECASE,
)


def up_to(stumble: Stumble) -> Mistake | None:
    """``up to the top``: how far up a part reaches is said by where its top is."""
    found = _around(_UP_TO, stumble)
    if found is None:
        return None
    what = found["what"].lower()
    place = stumble.span(found.start(), found.end())
    repairs: list[Repair | Hint] = []
    if what == "top":
        repairs.append(Repair("as far as the top of the piece", place, "down 0"))
    if canonical(what) in stumble.vocabulary.parts:
        repairs.append(Repair(f"as far as the {what} that lies on it", place, f"under {what}"))
    if not repairs:
        return None
    repairs.append(Hint("`up` is how high the underside is, as in `up {80}`"))
    message = f"`{found.group().strip()}` does not say how far up it is"
    return Mistake("not-understood", message, place, tuple(repairs))


def made_up_of(stumble: Stumble) -> Mistake | None:
    """``made up of 4 boards``: a panel is glued from its staves."""
    found = _around(_MADE_OF, stumble)
    if found is None:
        return None
    place = stumble.span(found.start(), found.end())
    count = found["count"]
    advice: Repair | Hint = Hint("of several boards it is `glued from 4`; a wood is `of oak`")
    if count:
        advice = Repair(
            "a panel of several boards is glued from them", place, f"glued from {count}"
        )
    message = f"`{found.group().strip()}` is said in other words here"
    return Mistake("unknown-word", message, place, (advice,))


def several_woods(stumble: Stumble) -> Mistake | None:
    """``timber cherry, walnut``: the line names one wood, the parts name any other."""
    if stumble.opener != "TIMBER":
        return None
    start, end, last = stumble.at, stumble.failure.end, stumble.failure.tokens[-1]
    if last.type == "_COMMA":
        # Behind a comma may stand how the wood is sawn, but no other wood.
        start, end = start_of(last), end_of(last)
    elif stumble.written not in ("and", "+", "/"):
        return None
    other = stumble.text[end:].strip().removeprefix("and ").removeprefix("of ")
    rest = stumble.span(start, len(stumble.text.rstrip()))
    if not other:
        return None
    return Mistake(
        "stray-sign",
        "this line names one wood, that of all parts whose own lines name none",
        stumble.span(start, end),
        (
            Repair("keep the first", rest, ""),
            Hint(f"and write `of {other}` in the line of each part that is made of it"),
        ),
    )


def _around(words: re.Pattern[str], stumble: Stumble) -> re.Match[str] | None:
    return next(
        (
            found
            for found in words.finditer(stumble.text)
            if found.start() <= stumble.at <= found.end()
        ),
        None,
    )


CASES = (up_to, made_up_of, several_woods)
