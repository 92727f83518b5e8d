"""Cuts with no mate said in other words: what is cut must be named, then where and how large."""

from __future__ import annotations

import re

from dryfit.diagnostics import Hint
from dryfit.notes.mistake import Mistake, Repair
from dryfit.notes.mistakes.stumble import Stumble
from dryfit.notes.names import canonical
from dryfit.notes.reading.near import nearest
from dryfit.notes.reading.words import PHRASES, SPELLINGS

_EXAMPLE = "for example `groove in rails: inside, {6} wide, {9} deep, {12} from top`"
_OF_A_PART = re.compile(r"(.+?)\s+of\s+(?:the\s+)?([^,:]+?)\s*(?:[,:]\s*(.*))?$", re.IGNORECASE)
_LIKE_A_CUT = re.compile(r"\s*([^\W\d_]+(?: [^\W\d_]+)?) (?:in|on) [^:]+:", re.IGNORECASE)
_FROM_FULL = re.compile(
    r"(?:(?:from )?(?:the )?(?:full|whole)(?: (?:width|thickness|size))? )?"
    r"to ([0-9½¼¾][0-9 ./½¼¾]*)",
    re.IGNORECASE,
)
_ADJECTIVES = ("stopped", "through")


def surface_before_part(stumble: Stumble) -> Mistake | None:
    """``chamfer all edges of seat, 3 wide``: the part stands first, then where on it."""
    tokens = stumble.failure.tokens
    if not tokens or stumble.opener != "FEATURE" or "NAME" not in stumble.takes:
        return None
    if any(token.type not in ("_IN", "PLACE") for token in tokens[1:]):
        return None
    start = next((token.start_pos for token in tokens if token.type == "PLACE"), stumble.at)
    assert start is not None
    found = _OF_A_PART.match(stumble.text, start)
    kinds = {kind for kind, _ in PHRASES.get(canonical(stumble.written), ())}
    if not found or not kinds & {"EVERY", "SURFACE", "NOUN", "PLACE"}:
        return None
    where, part, rest = found.group(1), found.group(2), found.group(3)
    written = stumble.text[tokens[0].start_pos : tokens[0].end_pos]
    said = f"{written} on {part}: {where}" + (f", {rest}" if rest else "")
    place = stumble.span(tokens[0].start_pos or 0, len(stumble.text))
    return Mistake(
        "surface-before-part",
        "the part stands first, and behind a colon where on it",
        stumble.span(start, start + len(where)),
        (Repair("write it so", place, said),),
        guess=True,
    )


def cut_of_what(stumble: Stumble) -> Mistake | None:
    """``groove: inside, 6 wide``: it does not say in which part."""
    last = stumble.previous
    if last is None or last.type not in ("FEATURE", "_IN") or stumble.opener != "FEATURE":
        return None
    if stumble.written not in (":", ",", ""):
        return None
    written = stumble.text[: stumble.at].strip()
    return Mistake("cut-of-what", f"`{written}` in which part?", stumble.place, (Hint(_EXAMPLE),))


def unknown_cut(stumble: Stumble) -> Mistake | None:
    """``dovetail in rails: ...``: no cut that can be made without a mate."""
    if stumble.failure.tokens:
        return None
    found = _LIKE_A_CUT.match(stumble.text)
    if not found:
        return None
    start, end = found.span(1)
    adjective, _, cut = found.group(1).partition(" ")
    if adjective.lower() in _ADJECTIVES and canonical(cut) in _cuts():
        place = stumble.span(start, len(stumble.text))
        rest = stumble.text[end:].rstrip()
        moved = Repair("say it behind", place, f"{cut}{rest}, {adjective.lower()}")
        message = f"`{adjective}` stands behind, with how far the cut runs"
        return Mistake("unknown-opener", message, stumble.span(start, end), (moved,), guess=True)
    names = tuple(stumble.name_spellings(stumble.vocabulary.parts))
    known_before = canonical(found.group(1)) in stumble.vocabulary.parts
    if known_before or nearest(found.group(1), (*SPELLINGS["FEATURE"], *names)):
        return None
    known = ", ".join(dict.fromkeys(value for _, value in _cut_meanings()))
    return Mistake(
        "unknown-cut",
        f"`{found.group(1)}` is no cut that these notes can say alone",
        stumble.span(start, end),
        (Hint(f"the cuts are: {known}"),),
    )


def stopped_where(stumble: Stumble) -> Mistake | None:
    """``stopped at left``: it does not say how far from there."""
    last = stumble.previous
    before = stumble.failure.tokens[-2] if len(stumble.failure.tokens) > 1 else None
    if last is None or last.type != "_AT" or before is None or before.type != "STOPPED":
        return None
    written = stumble.written or "left"
    return Mistake(
        "measure-missing",
        f"how far from the {written} does it stop?",
        stumble.place,
        (Hint(f"for example `stopped {{20}} from {written}`"),),
    )


def offset_without_measure(stumble: Stumble) -> Mistake | None:
    """``offset to front 2``: the measure stands first."""
    last = stumble.previous
    if last is None or last.type != "_OFFSET":
        return None
    found = re.match(r"to (?:the )?([^\W\d_]+) ([0-9./½¼¾ ]*[0-9½¼¾])", stumble.rest)
    if not found:
        return None
    place = stumble.span(stumble.at, stumble.at + found.end())
    said = f"{found.group(2).strip()} to {found.group(1)}"
    repair = Repair("write it so", place, said)
    return Mistake("unknown-word", "how far stands first", place, (repair,), guess=True)


def taper_from_what(stumble: Stumble) -> Mistake | None:
    """``full to 40``, ``from the full width to 40``: both sizes of a taper are figures."""
    found = _FROM_FULL.match(stumble.rest)
    if stumble.opener != "FEATURE" or not found:
        return None
    place = stumble.span(stumble.at, stumble.at + found.end())
    return Mistake(
        "measure-missing",
        f"from which size to {found.group(1)}?",
        place,
        (
            Hint(
                f"write the size where the taper begins before `to {found.group(1)}`: "
                "`dryfit parts` prints it, and a wrong one is told"
            ),
        ),
    )


def _cuts() -> frozenset[str]:
    return frozenset(canonical(word) for word in SPELLINGS["FEATURE"])


def _cut_meanings() -> list[tuple[str, str]]:
    return [
        meaning
        for phrase in SPELLINGS["FEATURE"]
        for meaning in PHRASES[canonical(phrase)]
        if meaning[0] == "FEATURE"
    ]


CASES = (
    taper_from_what,
    surface_before_part,
    cut_of_what,
    unknown_cut,
    stopped_where,
    offset_without_measure,
)
