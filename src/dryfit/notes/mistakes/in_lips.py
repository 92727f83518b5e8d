"""Mistakes in what covers the edges of a sheet."""

from __future__ import annotations

import re

from dryfit.diagnostics import Hint
from dryfit.notes.mistake import Mistake, Repair
from dryfit.notes.mistakes.stumble import Stumble
from dryfit.notes.names import canonical

_BEFORE = re.compile(
    r"(?:with )?(?:an? )?(?P<thick>[0-9][0-9./ ]*\"?(?: ?(?:mm|cm|in))?(?: thick)? )?"
    r"(?:of )?(?P<wood>[a-z ]*?[a-z] )?"
    r"(?P<word>lipping|lipped|edging|edge[ -]banding|edge[ -]banded|banding) ?"
    r"(?P<behind>[^,;]*)",
    re.IGNORECASE,
)
_ALONE = re.compile(
    r"(?:(?P<noun>lips?|(?:solid )?(?:lipping|edging)s?|(?:edge[ -])?banding) "
    r"(?:in|on|to|for|along|of)\b|(?:the )?[a-z][a-z ]*? (?:is |are )?"
    r"(?:lipped|edge[ -]banded|banded)\b).*",
    re.IGNORECASE,
)
_SIDES = ("front", "back", "left", "right", "top", "bottom", "edge", "end")


def wood_before_lipping(stumble: Stumble) -> Mistake | None:
    """``6 oak lipping at front``, ``front edge lipped with oak``: the word stands first."""
    text = stumble.text
    start = max(text.rfind(sign, 0, stumble.at) for sign in ",;") + 1
    start += len(text[start:]) - len(text[start:].lstrip())
    said = _BEFORE.match(text, start)
    if said is None or stumble.at >= said.end() or not (said["thick"] or said["wood"]):
        return None
    word = "edge banded" if "band" in said["word"].lower() else "lipped"
    thick, before = (said["thick"] or "").strip(), (said["wood"] or "").strip()
    behind = said["behind"].strip()
    if any(side in before.split(" ") for side in _SIDES):
        behind, before = f"{behind} at {before}", ""
    wood = before and f"of {before}"
    written = " ".join(each for each in (word, thick, wood, behind) if each)
    place = stumble.span(start, start + len(said.group().rstrip()))
    return Mistake(
        "not-understood",
        f"`{word}` stands first, then how thick, of what, and where",
        place,
        (Repair(f"`{written}`", place, written),),
    )


def on_a_line_of_its_own(stumble: Stumble) -> Mistake | None:
    """``lipping on shelves: front edge``, ``shelves lipped at front``: it is said of a part."""
    said = _ALONE.match(stumble.text)
    if said is None or _is_a_part(stumble, said.group("noun")):
        return None
    return Mistake(
        "not-understood",
        "what covers the edges of a part is said on the part's own line",
        stumble.span(*said.span()),
        (Hint("write it behind its sizes, such as `lipped at front`, or `edge banded all round`"),),
    )


def _is_a_part(stumble: Stumble, noun: str | None) -> bool:
    """Return whether the noun is a part's name in these notes: "lip on shelf: glue"."""
    return noun is not None and canonical(noun) in stumble.vocabulary.parts


CASES = (on_a_line_of_its_own, wood_before_lipping)
